import type { NowAnswer } from "../plan/now-answer.ts";

/** A gap greater than this says nothing about how good a plan is. */
const TELLING_GAP = 0.15;

/**
 * How an answer was found, in a word or two; nothing where no plan was ever searched for.
 *
 * @example sayPlanStanding(answer) // "by plan, at most 4 % over the best"
 */
export function sayPlanStanding({ basis, plan }: Pick<NowAnswer, "basis" | "plan">): string {
  switch (plan.is) {
    case "none":
      return "";
    case "kept":
      return sayGap(plan.gap);
    case "older":
      return "not by plan: it is older than the last act";
    case "unfit":
      return "not by plan: the settings have changed since";
    case "searching":
      return "planning";
    case "stopped":
      return basis === "plan" ? "by plan, the planner stopped" : "not by plan: the planner stopped";
  }
}

function sayGap(gap: number | null): string {
  if (gap === null) return "by plan";
  if (gap === 0) return "by plan, proven best";
  if (gap > TELLING_GAP) return "by plan, not proven best";
  return `by plan, at most ${Math.ceil(gap * 100)} % over the best`;
}
