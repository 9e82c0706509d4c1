import type { Visit } from "./plan.ts";
import type { Problem } from "./problem.ts";

/** Ends at which a task was whole: the last part of its step, and each time it was mended or done over. */
export function completions(problem: Problem, visits: readonly Visit[], index: number): number[] {
  const own = visits.filter((visit) => visit.task === index);
  const steps = own.filter(({ part }) => part === "step");
  const whole = steps.reduce((sum, { start, end }) => sum + end - start, 0) === problem.tasks[index]?.minutes;
  const last = whole && steps.length > 0 ? [Math.max(...steps.map(({ end }) => end))] : [];
  return [...last, ...own.filter(({ part }) => part === "mend" || part === "again").map(({ end }) => end)];
}
