import type { BenchTask } from "./bench.ts";

/** An order of work with what was decided for each task of it: by when it is lifted, and about its set-up. */
export interface Solution {
  readonly order: readonly BenchTask[];
  readonly decided: Int32Array;
  readonly cost: number;
}
