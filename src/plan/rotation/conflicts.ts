import { NO_PATH } from "./longest-paths.ts";
import { OPEN, type Relaxation } from "./relaxation.ts";

/** Where every task starts: its minute of the circle, and its turn. */
export interface Placing {
  readonly minutes: Int32Array;
  readonly turns: Int32Array;
}

/** One way to go on; false: it contradicts what is known. */
export type Choice = (relaxation: Relaxation) => boolean;

/** The earliest minutes and turns that the networks leave. It keeps to them; what else it breaks is a conflict. */
export function placeEarliest(relaxation: Relaxation): Placing {
  const { size, circle } = relaxation;
  const minutes = new Int32Array(size);
  const turns = new Int32Array(size);
  for (let task = 0; task < size; task++) minutes[task] = relaxation.minutes.least(size, task);
  for (const { begins } of circle.pieces) {
    const [first = 0] = begins;
    for (let task = 0; task < size; task++) {
      const turn = relaxation.turns.least(first, task);
      if (turn > NO_PATH) turns[task] = turn;
    }
  }
  return { minutes, turns };
}

/**
 * The choices, one of which every solution makes, that settle something the placing breaks; null: it breaks nothing.
 * The most constrained is taken first ("fail first").
 */
export function findConflict(relaxation: Relaxation, placing: Placing): readonly Choice[] | null {
  return (
    findTurnConflict(relaxation, placing) ??
    findSetUpConflict(relaxation, placing) ??
    findOrderConflict(relaxation, placing)
  );
}

/** A lag that is broken because it is open how many turns lie between its tasks. */
function findTurnConflict(relaxation: Relaxation, { minutes, turns }: Placing): readonly Choice[] | null {
  const { circle } = relaxation;
  let fewest = Number.POSITIVE_INFINITY;
  let choices: readonly Choice[] | null = null;
  for (const { from, to, least, most } of circle.lags) {
    const low = relaxation.turns.least(from, to);
    const high = -relaxation.turns.least(to, from);
    if (low === high || high - low >= fewest) continue;
    const between =
      (minutes[to] as number) -
      (minutes[from] as number) +
      circle.period * ((turns[to] as number) - (turns[from] as number));
    if (between >= least && (most === null || between <= most)) continue;
    fewest = high - low;
    choices = [
      (into) => into.raiseTurn(to, from, -low),
      (into) => into.raiseTurn(from, to, low + 1),
    ];
  }
  return choices;
}

function findSetUpConflict(relaxation: Relaxation, { minutes }: Placing): readonly Choice[] | null {
  const { circle, size } = relaxation;
  for (let task = 0; task < size; task++) {
    const setUp = relaxation.setUpOf(task);
    if (setUp === null || relaxation.setUps[task] !== OPEN) continue;
    void minutes;
    const choices: Choice[] = [];
    for (let host = 0; host < size; host++) {
      if (circle.tasks[host]?.setUp !== circle.tasks[task]?.setUp) continue;
      if (host !== task) choices.push((into) => into.letStand(task, host, false));
      if (setUp.putAway === 0) choices.push((into) => into.letStand(task, host, true));
    }
    choices.push((into) => into.makeSetUp(task));
    return choices;
  }
  return null;
}

/** Two tasks that hinder each other and lie too near, with the least freedom. */
function findOrderConflict(relaxation: Relaxation, { minutes }: Placing): readonly Choice[] | null {
  const { size, circle } = relaxation;
  let least = Number.POSITIVE_INFINITY;
  let choices: readonly Choice[] | null = null;
  for (let one = 0; one < size; one++) {
    for (let other = one + 1; other < size; other++) {
      if (relaxation.isBefore(one, other) || relaxation.isBefore(other, one)) continue;
      const there = relaxation.apart(one, other);
      const back = relaxation.apart(other, one);
      if (there === null || back === null) continue;
      const between = (minutes[other] as number) - (minutes[one] as number);
      if (between >= there && between <= circle.period - back) continue;
      if (between <= -back && between >= there - circle.period) continue;
      const oneFirst = -relaxation.minutes.least(other, one) - there;
      const otherFirst = -relaxation.minutes.least(one, other) - back;
      const freedom = Math.min(oneFirst, otherFirst);
      if (freedom >= least) continue;
      least = freedom;
      const before: Choice = (into) => into.setBefore(one, other);
      const behind: Choice = (into) => into.setBefore(other, one);
      choices = oneFirst >= otherFirst ? [before, behind] : [behind, before];
    }
  }
  return choices;
}
