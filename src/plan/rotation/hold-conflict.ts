import type { CircleHold } from "./circle.ts";
import type { Choice } from "./find-conflict.ts";
import { MADE } from "./known-set-up.ts";
import type { Placing } from "./placing.ts";
import type { Relaxation } from "./relaxation.ts";

/** A hold as it is placed: `from` to before `until`, counted from minute 0 of its piece's first turn. */
interface Held {
  readonly hold: CircleHold;
  readonly from: number;
  readonly until: number;
}

/**
 * A moment at which more is held than there is room for. It is the beginning of some hold; in every solution fewer of
 * the others last then, or (where it goes on for longer than a period) fewer of its own.
 */
export function findHoldConflict(relaxation: Relaxation, placing: Placing): readonly Choice[] | null {
  const { circle } = relaxation;
  for (const [kind, room] of [...circle.room, circle.hands].entries()) {
    if (kind === circle.room.length && circle.hands === 1) continue;
    const holds =
      kind < circle.room.length ? circle.holds.filter(({ of }) => of === kind) : handsAsHolds(relaxation);
    const held = holds.map((hold) => place(relaxation, placing, hold));
    for (const one of held) {
      const counts = held.map((other) => countAt(one.from, other, circle.period));
      if (counts.reduce((sum, count) => sum + count, 0) <= room) continue;
      return held.flatMap((other, index) => {
        const count = counts[index] as number;
        if (count === 0) return [];
        return one === other
          ? shorten(one.hold, count, circle.period)
          : [...endBefore(other, one, count, relaxation), ...freeBefore(other, one, count, relaxation)];
      });
    }
  }
  return null;
}

/** Least minutes that a hold lasts. */
export function leastHeld({ starts }: Relaxation, { task, after, minutes, freedBy }: CircleHold): number {
  return freedBy === null ? minutes : Math.max(0, Math.min(minutes, starts.least(task, freedBy) - after));
}

/** What more than one pair of hands has in it: work with its set-up. */
function handsAsHolds({ circle, setUps }: Relaxation): CircleHold[] {
  return circle.tasks.map(({ minutes, setUp }, task) => {
    const head = setUps[task] === MADE && setUp !== null ? (circle.setUps[setUp]?.minutes ?? 0) : 0;
    return { of: circle.room.length, task, after: -head, minutes: minutes + head, freedBy: null };
  });
}

function place({ circle }: Relaxation, { minutes, turns }: Placing, hold: CircleHold): Held {
  const start = (task: number): number => (minutes[task] as number) + (turns[task] as number) * circle.period;
  const from = start(hold.task) + hold.after;
  const freed = hold.freedBy === null ? Number.POSITIVE_INFINITY : start(hold.freedBy);
  return { hold, from, until: Math.max(from, Math.min(from + hold.minutes, freed)) };
}

/** How many copies of a hold, one each period, last at a moment. */
function countAt(moment: number, { from, until }: Held, period: number): number {
  return Math.floor((moment - from) / period) - Math.floor((moment - until) / period);
}

/** A hold gives way to the next copies of itself by being freed sooner. */
function shorten({ task, after, freedBy }: CircleHold, count: number, period: number): Choice[] {
  if (freedBy === null || count < 2) return [];
  return [(into) => into.raiseStart(freedBy, task, -(after + (count - 1) * period))];
}

/** The hold begins so long before the moment that by its length one copy less lasts. */
function endBefore(
  { hold: other }: Held,
  { hold: one }: Held,
  count: number,
  { circle, minutes }: Relaxation,
): Choice[] {
  const { period } = circle;
  const least = other.minutes - (count - 1) * period;
  const choices: Choice[] = [];
  for (let turn = -2; turn <= 2; turn++) {
    const low = turn * period + Math.max(0, least) + other.after - one.after;
    const high = (turn + 1) * period - 1 + other.after - one.after;
    if (low > high || low > -minutes.least(one.task, other.task)) continue;
    if (high < minutes.least(other.task, one.task)) continue;
    choices.push(
      (into) => into.raiseMinute(other.task, one.task, low) && into.raiseMinute(one.task, other.task, -high),
    );
  }
  return choices;
}

/** The piece is worked again so early that one copy of the hold less lasts at the moment. */
function freeBefore(
  { hold: other }: Held,
  { hold: one }: Held,
  count: number,
  { circle, turns }: Relaxation,
): Choice[] {
  const { freedBy } = other;
  if (freedBy === null) return [];
  const { period } = circle;
  const choices: Choice[] = [];
  const most = -turns.least(freedBy, other.task);
  for (let turn = turns.least(other.task, freedBy); turn <= most; turn++) {
    for (let shift = -2; shift <= 2; shift++) {
      const low = period * (turn - (count - 1) - shift) - one.after;
      const high = period * (1 - shift) + other.after - one.after - 1;
      choices.push(
        (into) =>
          into.raiseTurn(freedBy, other.task, -turn) &&
          into.raiseTurn(other.task, freedBy, turn) &&
          into.raiseMinute(freedBy, one.task, low) &&
          into.raiseMinute(one.task, other.task, -high),
      );
    }
  }
  return choices;
}
