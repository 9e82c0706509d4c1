import type { HoistFile } from "../../bench/plan/hoist-file.ts";

/**
 * The twelve-tank line of L. W. Phillips and P. S. Unger, Mathematical programming solution of a hoist scheduling
 * program, AIIE Transactions 8(2), 1976, 219-225; numbers as restated in the data of M. Wallace and N. Yorke-Smith for
 * the MiniZinc Challenge 2020.
 */
export const phillipsUnger: HoistFile = {
  kind: "cyclic-single-hoist",
  stages: [
    [150, 200],
    [90, 120],
    [120, 180],
    [90, 125],
    [30, 40],
    [60, 120],
    [60, 120],
    [45, 75],
    [130, null],
    [120, null],
    [90, 120],
    [30, 60],
  ].map(([min, max], index) => ({ position: index + 1, min: min ?? 0, max: max ?? null })),
  loadedMove: [31, 22, 22, 22, 25, 23, 22, 22, 22, 47, 27, 22, 30],
  emptyMove: [
    "0 11 14 16 14 19 22 24 26 29 6 8 10",
    "11 0 2 5 2 8 10 13 15 17 10 3 1",
    "14 2 0 2 0 5 8 10 13 15 12 6 3",
    "16 5 2 0 2 3 5 8 10 13 15 8 6",
    "14 2 0 2 0 5 8 10 13 15 12 6 3",
    "19 8 5 3 5 0 3 5 7 10 18 11 9",
    "22 10 8 5 8 3 0 2 5 7 20 14 11",
    "24 13 10 8 10 5 2 0 2 5 23 16 14",
    "26 15 13 10 13 7 5 2 0 2 25 19 16",
    "29 17 15 13 15 10 7 5 2 0 27 21 19",
    "6 10 12 15 12 18 20 23 25 27 0 7 9",
    "8 3 6 8 6 11 14 16 19 21 7 0 2",
    "10 1 3 6 3 9 11 14 16 19 9 2 0",
  ].map((row) => row.split(" ").map(Number)),
};

/**
 * Everything about removal times that breaks a hoist line, move by move over four periods and straight from the words
 * of the problem; it shares no code with the solver. Empty: the schedule holds.
 */
export function checkHoist(line: HoistFile, period: number, removals: readonly number[]): string[] {
  const { stages, loadedMove, emptyMove } = line;
  const wrong: string[] = [];
  const starts = unrolled(line, period, removals);
  if (removals[0] !== 0) wrong.push("the first move does not begin the cycle");
  const moves = removals
    .flatMap((at, move) => [0, 1, 2, 3].map((turn) => ({ move, at: at + turn * period })))
    .sort((one, other) => one.at - other.at);
  for (const [index, { move, at }] of moves.entries()) {
    const next = moves[index + 1];
    if (next === undefined) continue;
    const arrives = at + (loadedMove[move] ?? 0);
    const walk = emptyMove[(move + 1) % loadedMove.length]?.[next.move] ?? 0;
    if (next.at < arrives + walk) wrong.push(`move ${next.move} at ${next.at} comes too soon after ${move}`);
  }
  for (const [index, { min, max }] of stages.entries()) {
    const arrives = (starts[index] ?? 0) + (loadedMove[index] ?? 0);
    const leaves = starts[index + 1] ?? 0;
    const stays = leaves - arrives;
    if (stays < min || (max !== null && stays > max)) wrong.push(`tank ${index + 1} holds a piece ${stays}`);
    if (leaves >= arrives + period) wrong.push(`tank ${index + 1} is not empty when the next piece comes`);
  }
  return wrong;
}

/** Pieces off the load station at once, at the most. */
export function piecesInProgress(line: HoistFile, period: number, removals: readonly number[]): number {
  const starts = unrolled(line, period, removals);
  const back = (starts.at(-1) ?? 0) + (line.loadedMove.at(-1) ?? 0);
  return Math.ceil((back - (starts[0] ?? 0)) / period);
}

/** When one piece is taken from each position: the first removal there after it has been in long enough. */
function unrolled({ stages, loadedMove }: HoistFile, period: number, removals: readonly number[]): number[] {
  const starts = [removals[0] ?? 0];
  for (const [index, { min }] of stages.entries()) {
    const ready = (starts[index] ?? 0) + (loadedMove[index] ?? 0) + min;
    const at = removals[index + 1] ?? 0;
    starts.push(at + period * Math.ceil((ready - at) / period));
  }
  return starts;
}
