import { solveCircle } from "../../../src/plan/rotation/solve-circle.ts";
import type { Answer, Ask, Family } from "./family.ts";
import { type HoistFile, readHoistFile } from "./hoist-file.ts";
import { leastPeriod, loneliestPeriod, readHoist } from "./read-hoist.ts";
import { until } from "./rotation.ts";

/** A line with one hoist: the least period, or at a period given the fewest pieces in progress, both proven. */
export const hoist: Family = {
  format: "hoist",
  reads: (file, text) => file.endsWith(".json") && text.includes('"cyclic-single-hoist"'),
  solve(text, ask) {
    const file = readHoistFile(text);
    return ask.period === null ? findLeastPeriod(file, ask) : findFewest(file, ask.period, ask);
  },
};

/** Tries one whole period after the other: where none fits below, the first that fits is the least. */
function findLeastPeriod(file: HoistFile, ask: Ask): Answer {
  const end = until(ask);
  let rounds = 0;
  const most = loneliestPeriod(file);
  for (let period = leastPeriod(file); period <= most; period++) {
    const before = rounds;
    const answer = solveCircle(readHoist(file, period), {
      stop: (nodes) => end(before + nodes),
      anySpan: true,
    });
    rounds += answer.nodes;
    if (answer.starts !== null) {
      return {
        status: "optimal",
        objective: period,
        bound: period,
        rounds,
        starts: removals(answer.starts, period),
      };
    }
    if (answer.status === "unknown") {
      return { status: "unknown", objective: null, bound: period, rounds, starts: null };
    }
  }
  return { status: "infeasible", objective: null, bound: null, rounds, starts: null };
}

function findFewest(file: HoistFile, period: number, ask: Ask): Answer {
  const answer = solveCircle(readHoist(file, period), { stop: until(ask), wholePeriods: true });
  const pieces = (span: number): number => Math.ceil(span / period);
  return {
    status: answer.status,
    objective: answer.span === null ? null : pieces(answer.span),
    bound: answer.status === "infeasible" ? null : pieces(answer.bound),
    rounds: answer.nodes,
    starts: answer.starts === null ? null : removals(answer.starts, period),
  };
}

/** When a piece is taken from each position, in the time of the cycle. */
function removals(starts: readonly number[], period: number): number[] {
  return starts.map((start) => start % period);
}
