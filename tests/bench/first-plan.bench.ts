import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { dispatch } from "../../src/plan/dispatch.ts";
import { prepareDispatch } from "../../src/plan/prepare-dispatch.ts";
import type { Row } from "./compare-runs.ts";
import type { ShopFile } from "./plan/shop-file.ts";
import { problemOfShop } from "./plan/shop-problem.ts";

const shops = join(import.meta.dirname, "../../../shared/benchmarks/shop");
const calendars = ["always-s904-w-h6-c", "daily-s901-w-h6-c", "evening-s902-w-h6-c", "nightly-s903-w-h4-c"];

/** So often each is done; of the first ones cold code is compiled, on threads that the processor time counts along. */
const TIMES = 50;
const COLD = 40;

/**
 * The first complete plan of a large shop, and of its 40 pieces repeated to 100, warm: the slowest of the calendars, in
 * milliseconds of the processor, which other programs do not lengthen. Set against reading the same file in the same run.
 */
export function measure(): Row[] {
  if (!existsSync(shops)) {
    console.log("  not run: benchmarks not here");
    return [];
  }
  const files = calendars.map(
    (name) => JSON.parse(readFileSync(join(shops, `large-${name}.json`), "utf8")) as ShopFile,
  );
  return [40, 100].flatMap((count) => {
    const rows = files.map((file) => {
      const { pieces } = file;
      const repeated = Array.from({ length: count }, (_, place) => pieces[place % pieces.length] ?? []);
      return measureFile({ ...file, pieces: repeated.flat() });
    });
    return rows.toSorted((a, b) => b.value - a.value).slice(0, 1);
  });
}

function measureFile(file: ShopFile): Row {
  const problem = problemOfShop(file);
  const text = JSON.stringify(file);
  const value = median(() => {
    if (dispatch(prepareDispatch(problem)).visits.length === 0) throw new Error("nothing was planned");
  });
  const reading = median(() => {
    if ((JSON.parse(text) as ShopFile).pieces.length !== file.pieces.length)
      throw new Error("pieces are lost");
  });
  const tasks = problem.tasks.length;
  const mark = tasks > 1000 ? 50 : 10;
  return { name: `first plan, ${tasks} tasks (at most ${mark})`, value, unit: "ms", ratio: value / reading };
}

function median(work: () => void): number {
  const times: number[] = [];
  for (let time = 0; time < TIMES; time++) {
    const begun = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(begun);
    if (time >= COLD) times.push((user + system) / 1000);
  }
  return times.toSorted((a, b) => a - b)[times.length >> 1] ?? Number.NaN;
}
