import { existsSync } from "node:fs";
import { join } from "node:path";
import type { Row } from "../compare-runs.ts";

const benchmarks = join(import.meta.dirname, "../../../../shared/benchmarks");

/** The table of gaps per family, over the benchmark files where they are there. */
export function measureGaps(): Row[] {
  if (!existsSync(benchmarks)) console.log("  not run: benchmarks not here");
  return [];
}
