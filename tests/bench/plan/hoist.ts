import { solveCircle } from "../../../src/plan/rotation/solve-circle.ts";
import type { Answer, Ask, Family } from "./family.ts";
import { type HoistFile, readHoistFile } from "./hoist-file.ts";
import { leastPeriod, loneliestPeriod, readHoist } from "./read-hoist.ts";
import { until } from "./rotation.ts";

/** How many ranges all periods are cut into at first: on the lines tried hardly any wider one could be shut out. */
const RANGES = 32;

/** Nodes spent on shutting out a range before it is halved. */
const NODES_A_RANGE = 30;

/** A line with one hoist: the least period, or at a period given the fewest pieces in progress, both proven. */
export const hoist: Family = {
  format: "hoist",
  reads: (file, text) => file.endsWith(".json") && text.includes('"cyclic-single-hoist"'),
  solve(text, ask) {
    const file = readHoistFile(text);
    return ask.period === null ? findLeastPeriod(file, ask) : findFewest(file, ask.period, ask);
  },
};

/** A range of periods, both ends in it. */
type Range = readonly [from: number, to: number];

/**
 * Shuts out whole ranges of periods where that can be proven, and halves the others, the shorter periods first. The
 * first single period that has a rotation is the least.
 */
function findLeastPeriod(file: HoistFile, ask: Ask): Answer {
  const isOver = until(ask);
  const open = evenRanges(leastPeriod(file), loneliestPeriod(file)).reverse();
  let rounds = 0;
  for (let range = open.pop(); range !== undefined; range = open.pop()) {
    const [from, to] = range;
    if (from > to) continue;
    const before = rounds;
    const stop = (nodes: number): boolean => isOver(before + nodes) || (from < to && nodes > NODES_A_RANGE);
    const { status, starts, nodes } = solveCircle(readHoist(file, from, to), { stop, anySpan: true });
    rounds += nodes;
    if (starts !== null) {
      return { status: "optimal", objective: from, bound: from, rounds, starts: removals(starts, from) };
    }
    if (status === "infeasible") continue;
    if (from === to || isOver(rounds)) {
      return { status: "unknown", objective: null, bound: from, rounds, starts: null };
    }
    const middle = Math.floor((from + to) / 2);
    open.push([middle + 1, to], [from, middle]);
  }
  return { status: "infeasible", objective: null, bound: null, rounds, starts: null };
}

function evenRanges(least: number, most: number): Range[] {
  const width = Math.ceil((most - least + 1) / RANGES);
  const ranges: Range[] = [];
  for (let from = least; from <= most; from += width) ranges.push([from, Math.min(most, from + width - 1)]);
  return ranges;
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
