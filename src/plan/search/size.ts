/**
 * How large a problem is to the search: of few tasks moves soon find more than rules do; of more, a beam often finds a
 * better valley to begin in than rules do; of many, one valley takes all the time there is.
 */
export type Size = "few" | "more" | "many";

/** @param tasks how many tasks the problem has */
export function sizeOf(tasks: number): Size {
  if (tasks < 100) return "few";
  return tasks <= 300 ? "more" : "many";
}
