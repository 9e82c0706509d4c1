import { spawnSync } from "node:child_process";

/** One thing to run: a name to print and the words after `node`. */
export type Run = { name: string; args: string[]; env?: NodeJS.ProcessEnv };

/** A line of a benchmark's table: `ratio` is to the baseline of the same run (its own is 1), null where there is none. */
export type Row = { name: string; value: number; unit: string; ratio: number | null };

/**
 * Times whole processes, taking turns so that a busy moment of the machine hits all alike.
 *
 * @param baseline what the others are set against, usually `node -e 0`
 * @param rounds how often each is run; the median counts
 * @throws when a run exits with anything but 0: a failing program is quick, and its time means nothing
 */
export function compareRuns(baseline: Run, others: Run[], rounds: number): Row[] {
  const runs = [baseline, ...others].map((run) => ({ run, times: [] as number[] }));
  for (let round = 0; round < rounds; round++) {
    for (const { run, times } of runs) times.push(timeRun(run));
  }
  const medians = runs.map(({ run, times }) => ({ name: run.name, value: median(times), unit: "ms" }));
  const base = medians[0]?.value ?? Number.NaN;
  return medians.map((row) => ({ ...row, ratio: row.value / base }));
}

function timeRun({ name, args, env }: Run): number {
  const begun = performance.now();
  const { status, stderr } = spawnSync(process.execPath, args, { env: env ?? process.env, encoding: "utf8" });
  const milliseconds = performance.now() - begun;
  if (status !== 0) throw new Error(`${name} exited with ${status}: ${stderr}`);
  return milliseconds;
}

/** @returns the middle one; of an even number, the upper of the two in the middle */
function median(values: number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
