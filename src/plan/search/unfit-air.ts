import type { Minutes } from "../../time/instant.ts";
import type { BenchTask } from "./bench.ts";

/** By how much a task must move so that none of its hands-on lies in air unfit for it; 0: none does. */
export function unfitInTheWay({ unfit, start, end }: BenchTask): Minutes {
  for (const [from, until] of unfit) {
    if (from >= end) return 0;
    if (until > start) return until - start;
  }
  return 0;
}
