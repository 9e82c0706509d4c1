import type { Minutes } from "../../../time/instant.ts";
import type { Circle, CircleSetUp } from "../circle.ts";
import { mod } from "./mod.ts";
import type { OpenTime } from "./open-time.ts";

/** One use of a set-up on the circle. */
export interface Use {
  readonly minute: Minutes;
  readonly task: number;
  /** The piece it is of. */
  readonly piece: number;
  readonly made: boolean;
}

/** The uses of every station in the order of the circle, and what they mean for one more. */
export class StationUses {
  readonly #circle: Circle;
  readonly #time: OpenTime;
  readonly #uses: Use[][];
  /** By set-up: the minutes at which tasks start that may not come between two that share it. */
  readonly #between: Minutes[][];
  /** By task: the set-ups it is apart from while they stand. */
  readonly #apartFrom: readonly (readonly number[])[];
  readonly #setUps: readonly (CircleSetUp | null)[];

  /** @param circle of one piece */
  constructor(circle: Circle, time: OpenTime) {
    const stations = circle.setUps.reduce((most, { station }) => Math.max(most, station + 1), 0);
    this.#circle = circle;
    this.#time = time;
    this.#uses = Array.from({ length: stations }, () => []);
    this.#between = circle.setUps.map(() => []);
    this.#apartFrom = circle.tasks.map((_, task) =>
      [...circle.setUps.keys()].filter((number) => circle.setUps[number]?.apartFrom.includes(task)),
    );
    this.#setUps = circle.tasks.map(({ setUp }) => circle.setUps[setUp ?? -1] ?? null);
  }

  get all(): readonly (readonly Use[])[] {
    return this.#uses;
  }

  /** Whether some set-up may not stand while a task is worked. */
  isApart(task: number): boolean {
    return (this.#apartFrom[task] as number[]).length > 0;
  }

  add(use: Use): void {
    for (const number of this.#apartFrom[use.task] as number[]) this.#between[number]?.push(use.minute);
    const uses = this.#usesFor(use.task);
    if (uses === null) return;
    const place = uses.findIndex(({ minute }) => minute > use.minute);
    uses.splice(place < 0 ? uses.length : place, 0, use);
  }

  remove({ task, minute, piece }: Use): void {
    for (const number of this.#apartFrom[task] as number[]) {
      const minutes = this.#between[number] as Minutes[];
      minutes.splice(minutes.indexOf(minute), 1);
    }
    const uses = this.#usesFor(task);
    const place =
      uses?.findIndex((use) => use.minute === minute && use.task === task && use.piece === piece) ?? -1;
    if (place >= 0) uses?.splice(place, 1);
  }

  /** Changes whether the set-up of a use is made for it. */
  settle(use: Use, made: boolean): Use {
    const uses = this.#usesFor(use.task) ?? [];
    const changed = { ...use, made };
    uses[uses.indexOf(use)] = changed;
    return changed;
  }

  /** Whether what a task needs stands at a minute from the use before it. */
  stands(task: number, minute: Minutes): boolean {
    const setUp = this.#setUpOf(task);
    const uses = this.#usesFor(task);
    if (setUp === null || uses === null) return false;
    const { keeps, putAway } = setUp;
    // Only what is loaded stands from a turn ago of itself.
    if (uses.length === 0) return keeps.way === "load" && putAway === 0 && this.#free(task, minute, minute);
    const before = this.#placeBefore(uses, minute);
    const host = uses[before] as Use;
    if (this.#circle.tasks[host.task]?.setUp !== this.#circle.tasks[task]?.setUp) return false;
    if (
      putAway > 0 &&
      (host.minute > minute || this.#time.sessionAt(host.minute) !== this.#time.sessionAt(minute))
    )
      return false;
    if (!this.#free(task, host.minute, minute)) return false;
    const { period } = this.#circle;
    if (keeps.way === "load") return true;
    if (keeps.way === "heat") {
      return mod(minute - host.minute, period) - this.#minutesOf(host.task) <= keeps.minutes;
    }
    const cup = this.#cup(uses, before);
    if (cup === null || cup.served >= keeps.serves) return false;
    return mod(minute - cup.mixed, period) + this.#minutesOf(task) <= keeps.minutes;
  }

  /** The first minute after one at which `fitsBefore` may answer otherwise: where a use begins, or has begun. */
  fitsUntil(task: number, minute: Minutes): Minutes {
    let until = Number.POSITIVE_INFINITY;
    const look = (uses: readonly Use[]): void => {
      for (const { minute: begins } of uses) {
        if (begins >= minute) until = Math.min(until, begins > minute ? begins : begins + 1);
      }
    };
    look(this.#usesFor(task) ?? []);
    for (const number of this.#apartFrom[task] as number[])
      look(this.#uses[this.#circle.setUps[number]?.station ?? -1] ?? []);
    return until;
  }

  /** Whether the uses after it stay as they are when a task is put in at a minute. */
  fitsBefore(task: number, minute: Minutes, made: boolean): boolean {
    for (const number of this.#apartFrom[task] as number[]) {
      const uses = this.#uses[this.#circle.setUps[number]?.station ?? -1] ?? [];
      const next = uses[this.#placeAfter(uses, minute)];
      const shares = next !== undefined && !next.made && this.#circle.tasks[next.task]?.setUp === number;
      if (shares && (uses.length > 1 || next.minute !== minute)) return false;
    }
    const uses = this.#usesFor(task);
    if (uses === null || uses.length === 0) return true;
    const after = this.#placeAfter(uses, minute);
    const next = uses[after] as Use;
    if (next.made) return true;
    if (this.#circle.tasks[next.task]?.setUp !== this.#circle.tasks[task]?.setUp) return false;
    const keeps = this.#setUpOf(task)?.keeps;
    if (keeps?.way !== "mix" || made) return true;
    const before = this.#cup(uses, this.#placeBefore(uses, minute));
    if (before === null) return false;
    let served = before.served + 1;
    for (let index = 0; index < uses.length; index++) {
      if (uses[(after + index) % uses.length]?.made) break;
      served++;
    }
    return served <= keeps.serves;
  }

  /** How many a cup serves up to a use, and when it was mixed; null: it never is. */
  #cup(uses: readonly Use[], last: number): { served: number; mixed: Minutes } | null {
    for (let back = 0; back < uses.length; back++) {
      const use = uses[(last - back + uses.length) % uses.length] as Use;
      if (use.made) return { served: back + 1, mixed: use.minute };
    }
    return null;
  }

  /** Nothing that the set-up of a task is apart from starts between two moments. */
  #free(task: number, from: Minutes, until: Minutes): boolean {
    const { period, tasks } = this.#circle;
    const reach = mod(until - from, period) || period;
    return (this.#between[tasks[task]?.setUp ?? -1] ?? []).every((minute) => {
      const after = mod(minute - from, period);
      return after === 0 || after >= reach;
    });
  }

  #placeBefore(uses: readonly Use[], minute: Minutes): number {
    for (let place = uses.length - 1; place >= 0; place--)
      if ((uses[place] as Use).minute < minute) return place;
    return uses.length - 1;
  }

  #placeAfter(uses: readonly Use[], minute: Minutes): number {
    for (let place = 0; place < uses.length; place++) if ((uses[place] as Use).minute > minute) return place;
    return 0;
  }

  #usesFor(task: number): Use[] | null {
    const setUp = this.#setUpOf(task);
    return setUp === null ? null : (this.#uses[setUp.station] ?? null);
  }

  #setUpOf(task: number): CircleSetUp | null {
    return this.#setUps[task] as CircleSetUp | null;
  }

  #minutesOf(task: number): Minutes {
    return this.#circle.tasks[task]?.minutes ?? 0;
  }
}
