import type { PlanPiece, PlanWindow, Problem, Task, Wait } from "../../src/plan/problem.ts";
import { usualPrices } from "../../src/plan/score.ts";

const piece: PlanPiece = {
  release: 0,
  due: null,
  weight: 1,
  cure: 0,
  begun: false,
  underLimit: false,
  hook: null,
};

const task: Task = {
  piece: 0,
  minutes: 10,
  station: null,
  setUp: null,
  release: 0,
  waits: [],
  mayStop: false,
  hook: null,
  gives: [],
  looks: [],
  running: false,
  ended: null,
};

/** A bench with one pair of hands, open for 180 min from minute 0 and again each day; only what is said differs. */
export function smallProblem(
  tasks: readonly Partial<Task>[],
  pieces: readonly Partial<PlanPiece>[] = [{}],
  more: Partial<Problem> = {},
): Problem {
  return {
    origin: 0,
    horizon: 14 * 1440,
    sessions: Array.from({ length: 14 }, (_, day) => ({ opens: day * 1440, closes: day * 1440 + 180 })),
    hands: 1,
    stations: [],
    setUps: [],
    places: [],
    apart: [],
    air: [],
    looks: [],
    mostOut: null,
    prices: usualPrices,
    pieces: pieces.map((one) => ({ ...piece, ...one })),
    tasks: tasks.map((one) => ({ ...task, ...one })),
    ...more,
  };
}

/** A wait for another task: windows as `[opens, shuts]`; a third number is the minutes of preparation asked for. */
export function waitFor(
  on: number,
  windows: readonly (readonly [number, number | null, number?])[],
  mend: number | null = null,
): Wait {
  return {
    on,
    windows: windows.map(
      ([opens, shuts, minutes]): PlanWindow => ({
        opens,
        shuts,
        preparation: minutes === undefined ? null : { minutes, settles: 0, gives: [] },
      }),
    ),
    mend,
  };
}
