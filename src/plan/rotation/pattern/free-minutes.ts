import type { Minutes } from "../../../time/instant.ts";
import { firstFit } from "../../fit-minutes.ts";
import { LOOK } from "../../problem.ts";
import type { Occupied } from "./occupied.ts";
import type { Route } from "./route.ts";

/** A slot at which a task cannot start. */
export const NEVER = -1;

/**
 * By task and slot: the minutes of set-up that starting it then takes, or NEVER, with regard to the
 * pieces that are there. Of set-ups that another task of the same piece may leave standing it is hopeful.
 */
export interface FreeMinutes {
  readonly costs: readonly Int16Array[];
  /** Where other pieces are in the way of a task whose set-up stands; and of one whose set-up is made, if it has any. */
  readonly hindered: readonly Uint8Array[];
  readonly hinderedMade: readonly Uint8Array[];
}

export function freeMinutes(occupied: Occupied, tables: ApartTables): FreeMinutes {
  const { circle, looks } = occupied.route;
  const { time } = occupied.route;
  const hindered = circle.tasks.map(() => new Uint8Array(time.size));
  const hinderedMade = circle.tasks.map(({ setUp }) => new Uint8Array(setUp === null ? 0 : time.size));
  for (const { starts, made } of occupied.pieces) {
    for (const [other, start] of starts.entries()) {
      for (const [task, marks] of hindered.entries()) {
        const there = tables.standing(other, task);
        const back = made[other] ? tables.made(task, other) : tables.standing(task, other);
        // With two pairs of hands one may hinder the other and not the other way round.
        if (there < 0 && back < 0) continue;
        const from = start + 1 - Math.max(1, back);
        time.mark(marks, from, start + Math.max(1, there));
        const markedMade = hinderedMade[task] as Uint8Array;
        if (markedMade.length > 0) time.mark(markedMade, from, start + Math.max(1, tables.made(other, task)));
      }
    }
  }
  const isLook = new Set(looks.flatMap((own) => own.map(({ task }) => task)));
  const costs = circle.tasks.map((_, task) => {
    return isLook.has(task)
      ? new Int16Array(0)
      : costsOf(occupied, task, hindered, hinderedMade[task] as Uint8Array);
  });
  return { costs, hindered, hinderedMade };
}

/**
 * By task and slot: how many minutes of the other tasks a task that starts there newly takes from further pieces by
 * what it leaves in the air, each counted `price`.
 */
export function harmOf(
  { costs, hindered }: FreeMinutes,
  { circle, time }: Route,
  tables: ApartTables,
  price: number,
): Float64Array[] {
  const { tasks, period } = circle;
  const free = tables.kinds.map(({ task }) => countFree(hindered[task] as Uint8Array));
  return costs.map((own, task) => {
    const harm = new Float64Array(time.size);
    if (own.length === 0) return harm;
    for (const [kind, { task: other, count }] of tables.kinds.entries()) {
      const there = tables.standing(task, other);
      const back = tables.standing(other, task);
      const inAir = there > (tasks[task]?.minutes ?? 0) || back > (tasks[other]?.minutes ?? 0);
      if (there < 0 || !inAir) continue;
      const sum = free[kind] as Int32Array;
      for (let slot = 0; slot < own.length; slot++) {
        if (own[slot] === NEVER) continue;
        const minute = time.minuteOf[slot] as number;
        // The bench is shut about minute 0, so that the end of the circle need not be looked over.
        const from = time.slotsBefore[Math.max(0, minute - back + 1)] as number;
        const until = time.slotsBefore[Math.min(period, minute + there)] as number;
        (harm[slot] as number) += price * count * ((sum[until] as number) - (sum[from] as number));
      }
    }
    return harm;
  });
}

/** By slot (and the end of the last): how many before it are unhindered. */
function countFree(hindered: Uint8Array): Int32Array {
  const sum = new Int32Array(hindered.length + 1);
  for (let slot = 0; slot < hindered.length; slot++) {
    sum[slot + 1] = (sum[slot] as number) + (hindered[slot] === 0 ? 1 : 0);
  }
  return sum;
}

/** The two tables of a circle, less than 0 for none; `made` counts to the start after a set-up is made. */
export class ApartTables {
  readonly #size: number;
  readonly #standing: Int32Array;
  readonly #made: Int32Array;
  /** Tasks that are kept apart from the same others for as long: one of each kind, and how many there are. */
  readonly kinds: readonly { readonly task: number; readonly count: number }[];

  constructor({ circle, looks }: Route) {
    const { tasks, apart, apartFromSetUp, setUps } = circle;
    this.#size = tasks.length;
    this.#standing = Int32Array.from(apart.flat(), (least) => least ?? -1);
    this.#made = Int32Array.from(apartFromSetUp.flat(), (least, index) => {
      const head = setUps[tasks[index % tasks.length]?.setUp ?? -1]?.minutes ?? 0;
      return least === null ? -1 : least + head;
    });
    const isLook = new Set(looks.flatMap((own) => own.map(({ task }) => task)));
    const kinds = new Map<string, { task: number; count: number }>();
    for (const task of tasks.keys()) {
      if (isLook.has(task)) continue;
      const { minutes } = tasks[task] as (typeof tasks)[number];
      const kind = tasks.map((other, at) => [
        this.standing(at, task) - other.minutes,
        this.standing(task, at) - minutes,
      ]);
      const key = JSON.stringify(kind);
      kinds.set(key, { task, count: (kinds.get(key)?.count ?? 0) + 1 });
    }
    this.kinds = [...kinds.values()];
  }

  standing(from: number, to: number): Minutes {
    return this.#standing[from * this.#size + to] as number;
  }

  made(from: number, to: number): Minutes {
    return this.#made[from * this.#size + to] as number;
  }
}

function costsOf(
  occupied: Occupied,
  task: number,
  hindered: readonly Uint8Array[],
  hinderedMade: Uint8Array,
): Int16Array {
  const { circle, lasts } = occupied.route;
  const { time } = occupied.route;
  const costs = new Int16Array(time.size).fill(NEVER);
  const { setUp, minutes, unfit = [] } = circle.tasks[task] as Route["circle"]["tasks"][number];
  const head = circle.setUps[setUp ?? -1]?.minutes ?? 0;
  const mayLeave = setUp !== null && circle.tasks.some((other, at) => at !== task && other.setUp === setUp);
  const own = hindered[task] as Uint8Array;
  const looked = looksHindered(occupied, task, hindered);
  const isAlone = setUp === null && !occupied.uses.isApart(task);
  for (const [session, { opens, closes }] of time.spans.entries()) {
    const room = (circle.sessions[session]?.closes ?? 0) - owedWith(occupied, session, task);
    if ((occupied.lastEnd[session] as number) > room) continue;
    const latest = closes - ((circle.sessions[session]?.closes ?? 0) - room) - (lasts[task] as number);
    for (let slot = opens; slot <= latest; slot++) {
      if (looked !== undefined && looked[slot] === 1) continue;
      const minute = time.minuteOf[slot] as number;
      if (unfit.length > 0 && firstFit(unfit, minutes, minute) > minute) continue;
      const standing = own[slot] === 0 && (setUp === null || mayLeave || occupied.uses.stands(task, minute));
      if (standing && handsFree(occupied, minute, minute + minutes)) costs[slot] = 0;
      else if (setUp === null || slot - head < opens || hinderedMade[slot] === 1) continue;
      else if (handsFree(occupied, minute - head, minute + minutes)) costs[slot] = head;
      if (!isAlone && !occupied.uses.fitsBefore(task, minute, mayLeave || !standing)) costs[slot] = NEVER;
    }
  }
  return costs;
}

/** By slot, whether a look after a task that starts there meets other work; undefined: the task has none. */
function looksHindered(
  occupied: Occupied,
  task: number,
  hindered: readonly Uint8Array[],
): Uint8Array | undefined {
  const { looks, time } = occupied.route;
  const own = looks[task] ?? [];
  if (own.length === 0) return undefined;
  const met = new Uint8Array(time.size);
  for (const look of own) {
    const marks = hindered[look.task] as Uint8Array;
    for (let slot = look.after; slot < time.size; slot++) {
      const minute = time.minuteOf[slot] as number;
      if (marks[slot] === 1 || !handsFree(occupied, minute, minute + LOOK)) met[slot - look.after] = 1;
    }
  }
  return met;
}

/** Minutes of putting away that a session owes at its end with one task more in it. */
function owedWith({ owed, route }: Occupied, session: number, task: number): Minutes {
  const { station = -1, putAway = 0 } = route.circle.setUps[route.circle.tasks[task]?.setUp ?? -1] ?? {};
  return (owed[session] ?? []).reduce(
    (sum, minutes, at) => sum + (at === station ? Math.max(minutes, putAway) : minutes),
    0,
  );
}

/** Whether a pair of hands is free from one minute to before another; with one pair the tables say so. */
export function handsFree({ hands, route }: Occupied, from: Minutes, until: Minutes): boolean {
  const most = route.circle.hands;
  for (let minute = from; minute < until && hands.length > 0; minute++) {
    if ((hands[minute] as number) >= most) return false;
  }
  return true;
}
