import type { Problem } from "../problem.ts";
import { beginBench } from "./begin-bench.ts";
import type { Bench } from "./bench.ts";
import { makeBench } from "./make-bench.ts";
import { measureTails } from "./tails.ts";

/** The bench of a problem as it is before the first task is played. */
export function openBench(problem: Problem): Bench {
  const bench = makeBench(problem);
  measureTails(bench);
  beginBench(bench);
  return bench;
}
