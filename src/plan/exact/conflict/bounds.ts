/**
 * The bounds of whole-number variables, with the history of how each came to be: what a search by conflict needs to
 * ask "why?" and to go back.
 *
 * Every variable has two sides. Side `2 * v` is the lower bound of `v`; side `2 * v + 1` is the lower bound of `-v`,
 * so that every bound only ever rises and one rule serves both directions. A literal `[side >= value]` is negated as
 * `[side ^ 1 >= 1 - value]`. A yes-or-no variable is one of 0..1.
 */
export class Bounds {
  /** The bound of each side now. */
  readonly now: Int32Array;
  /** The newest entry of each side in the history. */
  readonly newest: Int32Array;
  /** The history, in order of time: the first entries are the bounds at the beginning, side by side. */
  side: Int32Array;
  value: Int32Array;
  /** The entry before of the same side; -1: none. */
  before: Int32Array;
  /** Why, as one of the WHY figures, and of what. */
  why: Int32Array;
  of: Int32Array;
  size = 0;
  /** Where in the history each decision stands, the first at 1; 0 is the beginning. */
  readonly levels: number[] = [0];
  /** Literals that explain entries with WHY.NOTED: a count, then side and value of each. */
  notes: Int32Array = new Int32Array(1024);
  noted = 0;
  readonly #notedAt: number[] = [0];
  /** The bound that could not be raised, as it would have met its other side. A side of -1: the notes alone clash. */
  readonly clash = { side: -1, value: 0, why: 0, of: 0 };

  /** @param first the bounds at the beginning, by side */
  constructor(first: readonly number[]) {
    this.now = Int32Array.from(first);
    this.newest = new Int32Array(first.length).fill(-1);
    const room = Math.max(256, first.length * 4);
    this.side = new Int32Array(room);
    this.value = new Int32Array(room);
    this.before = new Int32Array(room);
    this.why = new Int32Array(room);
    this.of = new Int32Array(room);
    for (const [side, bound] of first.entries()) this.#write(side, bound, WHY.GIVEN, 0);
  }

  /** How many decisions stand. */
  get level(): number {
    return this.levels.length - 1;
  }

  isTrue(side: number, value: number): boolean {
    return (this.now[side] as number) >= value;
  }

  isFalse(side: number, value: number): boolean {
    return (this.now[side ^ 1] as number) > -value;
  }

  isFixed(variable: number): boolean {
    return (this.now[2 * variable] as number) + (this.now[2 * variable + 1] as number) === 0;
  }

  /**
   * Raises a bound.
   *
   * @returns false when it would pass its other side; the clash is then kept in `clash`
   */
  raise(side: number, value: number, why: number, of: number): boolean {
    if (value <= (this.now[side] as number)) return true;
    if (value + (this.now[side ^ 1] as number) > 0) {
      this.clash.side = side;
      this.clash.value = value;
      this.clash.why = why;
      this.clash.of = of;
      return false;
    }
    this.now[side] = value;
    this.#write(side, value, why, of);
    return true;
  }

  /** Begins a new level with a bound that nothing forces. It must be open: neither true nor false. */
  decide(side: number, value: number): void {
    this.levels.push(this.size);
    this.#notedAt.push(this.noted);
    this.raise(side, value, WHY.DECIDED, 0);
  }

  /** Undoes all that came after a level. */
  goBack(level: number): void {
    if (level >= this.level) return;
    const size = this.levels[level + 1] as number;
    for (let entry = this.size - 1; entry >= size; entry--) {
      const side = this.side[entry] as number;
      const before = this.before[entry] as number;
      this.newest[side] = before;
      this.now[side] = this.value[before] as number;
    }
    this.size = size;
    this.noted = this.#notedAt[level + 1] as number;
    this.levels.length = level + 1;
    this.#notedAt.length = level + 1;
  }

  /** @returns the entry that first made a true literal true */
  firstTrue(side: number, value: number): number {
    let entry = this.newest[side] as number;
    for (;;) {
      const before = this.before[entry] as number;
      if (before < 0 || (this.value[before] as number) < value) return entry;
      entry = before;
    }
  }

  /** @returns what the bound of a side is whatever is decided */
  firmBound(side: number): number {
    return this.level === 0 ? (this.now[side] as number) : this.boundBefore(side, this.levels[1] as number);
  }

  /** @returns what the bound of a side was just before an entry */
  boundBefore(side: number, entry: number): number {
    let earlier = this.newest[side] as number;
    while (earlier >= entry) earlier = this.before[earlier] as number;
    return this.value[earlier] as number;
  }

  /** Opens a note of literals, all true now; to be filled with `note`. @returns its place, for `raise` */
  beginNote(): number {
    this.#makeRoomForNotes(1);
    const place = this.noted++;
    this.notes[place] = 0;
    return place;
  }

  note(place: number, side: number, value: number): void {
    this.#makeRoomForNotes(2);
    this.notes[this.noted++] = side;
    this.notes[this.noted++] = value;
    this.notes[place] = (this.notes[place] as number) + 1;
  }

  /** Says that the literals of a note cannot all be true. @returns false */
  failBecause(place: number): false {
    this.clash.side = -1;
    this.clash.why = WHY.NOTED;
    this.clash.of = place;
    return false;
  }

  #makeRoomForNotes(more: number): void {
    if (this.noted + more > this.notes.length) this.notes = grown(this.notes);
  }

  #write(side: number, value: number, why: number, of: number): void {
    const entry = this.size++;
    if (entry === this.side.length) {
      this.side = grown(this.side);
      this.value = grown(this.value);
      this.before = grown(this.before);
      this.why = grown(this.why);
      this.of = grown(this.of);
    }
    this.side[entry] = side;
    this.value[entry] = value;
    this.before[entry] = this.newest[side] as number;
    this.why[entry] = why;
    this.of[entry] = of;
    this.newest[side] = entry;
  }
}

/** Why a bound rose. */
export const WHY = {
  /** So from the beginning. */
  GIVEN: 0,
  /** Tried by the search. */
  DECIDED: 1,
  /** `of` is an arc whose tail rose. */
  ARC: 2,
  /** `of` is an arc that could not hold, so its condition is false. */
  CONDITION: 3,
  /** `of` is a learned clause, all of whose other literals are false. */
  CLAUSE: 4,
  /** `of` is the place of a note. */
  NOTED: 5,
} as const;

function grown(list: Int32Array): Int32Array {
  const larger = new Int32Array(list.length * 2);
  larger.set(list);
  return larger;
}
