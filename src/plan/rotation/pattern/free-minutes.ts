import type { Minutes } from "../../../time/instant.ts";
import { firstFit } from "../../fit-minutes.ts";
import { LOOK } from "../../problem.ts";
import type { ApartTables } from "./apart-tables.ts";
import type { Occupied } from "./occupied.ts";
import type { Route } from "./route.ts";
import type { Space } from "./space.ts";

/** A slot at which a task cannot start. */
export const NEVER = -1;

/**
 * By task and slot: the minutes of set-up that starting it then takes, or NEVER, with regard to the
 * pieces that are there. Of set-ups that another task of the same piece may leave standing it is hopeful.
 */
export interface FreeMinutes {
  readonly setUps: readonly Int16Array[];
  /** Where other pieces are in the way of a task whose set-up stands; and of one whose set-up is made, if it has any. */
  readonly hindered: readonly Uint8Array[];
  readonly hinderedMade: readonly Uint8Array[];
}

export function freeMinutes(occupied: Occupied, tables: ApartTables, space: Space): FreeMinutes {
  const { time } = occupied.route;
  const { hindered, hinderedMade, setUps } = space;
  for (const marks of [...hindered, ...hinderedMade]) marks.fill(0);
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
  for (const [task, costs] of setUps.entries()) {
    if (costs.length > 0) fillCosts(costs, occupied, task, hindered, hinderedMade[task] as Uint8Array);
  }
  return space;
}

function fillCosts(
  costs: Int16Array,
  occupied: Occupied,
  task: number,
  hindered: readonly Uint8Array[],
  hinderedMade: Uint8Array,
): void {
  const { circle, lasts } = occupied.route;
  const { time } = occupied.route;
  costs.fill(NEVER);
  const { setUp, minutes, unfit = [] } = circle.tasks[task] as Route["circle"]["tasks"][number];
  const head = circle.setUps[setUp ?? -1]?.minutes ?? 0;
  const mayLeave = setUp !== null && circle.tasks.some((other, at) => at !== task && other.setUp === setUp);
  const own = hindered[task] as Uint8Array;
  const looked = looksHindered(occupied, task, hindered);
  const { uses } = occupied;
  const isAlone = setUp === null && !uses.isApart(task);
  for (const [session, { opens, closes }] of time.spans.entries()) {
    const owed = owedWith(occupied, session, task);
    if ((occupied.lastEnd[session] as number) > (circle.sessions[session]?.closes ?? 0) - owed) continue;
    const latest = closes - owed - (lasts[task] as number);
    if (isAlone && occupied.hands.length === 0 && unfit.length === 0) {
      for (let slot = opens; slot <= latest; slot++) {
        if (own[slot] === 0 && (looked === undefined || looked[slot] === 0)) costs[slot] = 0;
      }
      continue;
    }
    let changes = 0;
    let [fitsMade, fitsStanding] = [true, true];
    for (let slot = opens; slot <= latest; slot++) {
      if (looked !== undefined && looked[slot] === 1) continue;
      if (own[slot] === 1 && setUp === null) continue;
      const minute = time.minuteOf[slot] as number;
      if (unfit.length > 0 && firstFit(unfit, minutes, minute) > minute) continue;
      if (!isAlone && minute >= changes) {
        fitsMade = uses.fitsBefore(task, minute, true);
        fitsStanding = uses.fitsBefore(task, minute, false);
        changes = uses.fitsUntil(task, minute);
      }
      const standing = own[slot] === 0 && (setUp === null || mayLeave || uses.stands(task, minute));
      if (standing && handsFree(occupied, minute, minute + minutes)) costs[slot] = 0;
      else if (setUp === null || slot - head < opens || hinderedMade[slot] === 1) continue;
      else if (handsFree(occupied, minute - head, minute + minutes)) costs[slot] = head;
      if (!(mayLeave || !standing ? fitsMade : fitsStanding)) costs[slot] = NEVER;
    }
  }
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
