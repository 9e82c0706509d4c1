/**
 * How large a problem is to the search: of few tasks moves soon find more than rules do; of many, one valley takes all
 * the time there is, and a beam finds a good one sooner than rules do.
 */
export type Size = "few" | "more" | "many";

/** @param tasks how many tasks the problem has */
export function sizeOf(tasks: number): Size {
  if (tasks < 100) return "few";
  return tasks <= 300 ? "more" : "many";
}
