import type { Circle } from "../../../src/plan/rotation/circle.ts";
import type { HoistFile } from "./hoist-file.ts";

/**
 * A hoist line as the solver's problem: each move is a task of the one pair of hands, the walk between two moves with
 * nothing in hand keeps them apart, and the time in a tank is a wait. Moves count from the start of one to the next.
 *
 * @param longestPeriod above `period`: for the question whether any period from that one to this will do
 */
export function readHoist(file: HoistFile, period: number, longestPeriod = period): Circle {
  const { stages, loadedMove, tankCapacity = 1 } = file;
  const moves = loadedMove.map((_, move) => move);
  const apart = moves.map((one) => moves.map((other) => apartMoves(file, one, other)));
  const last = moves.length - 1;
  return {
    period,
    longestPeriod,
    hands: 1,
    sessions: [{ opens: 0, closes: longestPeriod }],
    tasks: loadedMove.map((minutes, move) => ({
      minutes,
      stays: minutes,
      setUp: null,
      fixed: move === 0 ? 0 : null,
    })),
    lags: stages.map(({ min, max }, index) => {
      const carried = loadedMove[index] ?? 0;
      // The tank is empty before the next piece comes, a whole period after this one.
      const empty = tankCapacity * longestPeriod - (apart[index + 1]?.[index] ?? 0);
      return {
        from: index,
        to: index + 1,
        least: carried + min,
        most: max === null ? empty : Math.min(empty, carried + max),
      };
    }),
    apart,
    apartFromSetUp: apart,
    setUps: [],
    holds: [],
    room: [],
    pieces: [{ begins: [0], ends: [{ task: last, minutes: loadedMove[last] ?? 0 }] }],
  };
}

/** Least period that the load of the hoist and the time in each tank allow. */
export function leastPeriod(file: HoistFile): number {
  const { stages, loadedMove, emptyMove } = file;
  const hoist = loadedMove.reduce((sum, minutes, move) => {
    const to = (move + 1) % loadedMove.length;
    // It either walks to another position, or waits here until the piece it brought may be taken out again.
    const walks = loadedMove.flatMap((_, other) =>
      other === move ? [] : [other === to ? (stages[move]?.min ?? 0) : (emptyMove[to]?.[other] ?? 0)],
    );
    return sum + minutes + Math.min(...walks);
  }, 0);
  const tanks = stages.map(
    ({ min }, index) => (loadedMove[index] ?? 0) + min + apartMoves(file, index + 1, index),
  );
  return Math.max(hoist, ...tanks.map((minutes) => Math.ceil(minutes / (file.tankCapacity ?? 1))));
}

/** A period at which one piece after the other goes through alone. */
export function loneliestPeriod({ stages, loadedMove, loadStationMin = 0 }: HoistFile): number {
  const sum = (all: readonly number[]): number => all.reduce((one, other) => one + other, 0);
  return sum(loadedMove) + sum(stages.map(({ min }) => min)) + loadStationMin;
}

/** From the start of a move to that of another after it: its length and the empty walk. */
function apartMoves(
  { loadedMove, emptyMove, loadStationMin = 0 }: HoistFile,
  one: number,
  other: number,
): number {
  const to = (one + 1) % loadedMove.length;
  const walk = emptyMove[to]?.[other] ?? 0;
  return (loadedMove[one] ?? 0) + (to === 0 && other === 0 ? Math.max(walk, loadStationMin) : walk);
}
