import { parseArgs } from "node:util";
import { solveCircle } from "../../src/plan/rotation/solve-circle.ts";
import { checkRotation } from "../plan/rotation/check-rotation.ts";
import { generalSolver } from "../plan/rotation/general-solver.ts";
import { randomRotation } from "../plan/rotation/random-rotation.ts";
import { rotationAsMip } from "../plan/rotation/rotation-by-mip.ts";
import type { Row } from "./compare-runs.ts";
import { readRotation } from "./plan/read-rotation.ts";

/** The test run has the seeds before. */
const FIRST = 40;
const COUNT = 40;

/**
 * Random rotations, each solved by us and as a mixed-integer program by HiGHS, beyond those of the test run.
 *
 * @param words `[--from SEED] [--count N]`
 */
export async function measure(words: string[]): Promise<Row[]> {
  const option = { type: "string" } as const;
  const { values } = parseArgs({ args: words, options: { from: option, count: option } });
  const from = Number(values.from ?? FIRST);
  const count = Number(values.count ?? COUNT);
  const general = await generalSolver();
  const differ: number[] = [];
  let possible = 0;
  let ours = 0;
  let theirs = 0;
  for (let seed = from; seed < from + count; seed++) {
    const file = randomRotation(seed);
    const period = (seed % 4 === 3 ? 2 : 1) * file.day;
    const begun = process.cpuUsage();
    const { span, starts } = solveCircle(readRotation(file, period), { stop: () => false });
    ours += process.cpuUsage(begun).user / 1000;
    const asked = process.cpuUsage();
    const least = general(rotationAsMip(file, period));
    theirs += process.cpuUsage(asked).user / 1000;
    const holds = starts === null || checkRotation(file, period, starts).length === 0;
    if (span !== least || !holds) differ.push(seed);
    if (span !== null) possible++;
  }
  if (differ.length > 0) {
    console.error(`seeds that differ: ${differ.join(", ")}`);
    process.exitCode = 1;
  }
  return [
    row(`of ${count} random rotations from seed ${from}, as HiGHS`, count - differ.length, ""),
    row("  of these possible", possible, ""),
    row("  time of the processor, ours in all", ours, "ms"),
    row("  time of the processor, HiGHS in all", theirs, "ms"),
  ];
}

function row(name: string, value: number, unit: string): Row {
  return { name, value, unit, ratio: null };
}
