import type { ApartTables } from "./apart-tables.ts";
import { type FreeMinutes, NEVER } from "./free-minutes.ts";
import type { Route } from "./route.ts";

/** What a task that leaves something in the air takes from the tasks of one kind. */
interface Harm {
  readonly kind: number;
  /** By slot at which it starts: the slots from one to before another are taken. */
  readonly from: Int32Array;
  readonly until: Int32Array;
}

/** Tasks that do the same harm to all kinds. */
interface Alike {
  readonly tasks: readonly number[];
  readonly harms: readonly Harm[];
  readonly sum: Float64Array;
}

/** What each task takes from further pieces by what it leaves in the air. */
export class Harms {
  readonly #kinds: ApartTables["kinds"];
  readonly #alike: readonly Alike[];
  /** By kind and slot (and the end of the last): how many before it are unhindered. */
  readonly #free: readonly Int32Array[];
  /** By task. */
  readonly #sums: Float64Array[] = [];
  readonly #slots: Int32Array;

  constructor(route: Route, tables: ApartTables) {
    const { size } = route.time;
    this.#kinds = tables.kinds;
    this.#free = tables.kinds.map(() => new Int32Array(size + 1));
    this.#slots = new Int32Array(size);
    const alike = new Map<string, { tasks: number[]; harms: Harm[]; sum: Float64Array }>();
    for (const task of route.circle.tasks.keys()) {
      if (tables.isLook.has(task)) continue;
      const reaches = reachesOf(task, route, tables);
      const key = JSON.stringify(reaches);
      const known = alike.get(key) ?? {
        tasks: [],
        harms: reaches.map(([kind, there, back]) => ({ kind, ...takenFrom(route, there, back) })),
        sum: new Float64Array(size),
      };
      known.tasks.push(task);
      alike.set(key, known);
      this.#sums[task] = known.sum;
    }
    this.#alike = [...alike.values()];
  }

  /**
   * By task and slot: how many minutes of the other tasks a task that starts there newly takes from further pieces, each
   * counted `price`. Good until asked again.
   */
  of({ setUps, hindered }: FreeMinutes, price: number): readonly Float64Array[] {
    for (const [kind, { task }] of this.#kinds.entries()) {
      countFree(hindered[task] as Uint8Array, this.#free[kind] as Int32Array);
    }
    for (const { tasks, harms, sum } of this.#alike) {
      sum.fill(0);
      if (harms.length === 0) continue;
      const own = tasks.map((task) => setUps[task] as Int16Array);
      const slots = this.#slots.subarray(0, this.#canStart(own));
      for (const { kind, from, until } of harms) {
        const each = price * (this.#kinds[kind]?.count ?? 0);
        const free = this.#free[kind] as Int32Array;
        for (let index = 0; index < slots.length; index++) {
          const slot = slots[index] as number;
          const taken = (free[until[slot] as number] as number) - (free[from[slot] as number] as number);
          (sum[slot] as number) += each * taken;
        }
      }
    }
    return this.#sums;
  }

  /** Lists the slots at which one of some tasks can start. @returns how many there are */
  #canStart(setUps: readonly Int16Array[]): number {
    let count = 0;
    for (let slot = 0; slot < this.#slots.length; slot++) {
      for (let index = 0; index < setUps.length; index++) {
        if ((setUps[index] as Int16Array)[slot] === NEVER) continue;
        this.#slots[count++] = slot;
        break;
      }
    }
    return count;
  }
}

/** Each kind that a task keeps waiting by what one of the two leaves in the air, and for how long there and back. */
function reachesOf(
  task: number,
  { circle: { tasks } }: Route,
  tables: ApartTables,
): (readonly [kind: number, there: number, back: number])[] {
  return tables.kinds.flatMap(({ task: other }, kind) => {
    const there = tables.standing(task, other);
    const back = tables.standing(other, task);
    const inAir = there > (tasks[task]?.minutes ?? 0) || back > (tasks[other]?.minutes ?? 0);
    return there < 0 || !inAir ? [] : [[kind, there, back] as const];
  });
}

/** The bench is shut about minute 0, so that the end of the circle need not be looked over. */
function takenFrom(
  { circle: { period }, time: { minuteOf, slotsBefore } }: Route,
  there: number,
  back: number,
): Pick<Harm, "from" | "until"> {
  return {
    from: minuteOf.map((minute) => slotsBefore[Math.max(0, minute - back + 1)] as number),
    until: minuteOf.map((minute) => slotsBefore[Math.min(period, minute + there)] as number),
  };
}

function countFree(hindered: Uint8Array, sum: Int32Array): void {
  let count = 0;
  for (let slot = 0; slot < hindered.length; slot++) {
    sum[slot] = count;
    if (hindered[slot] === 0) count++;
  }
  sum[hindered.length] = count;
}
