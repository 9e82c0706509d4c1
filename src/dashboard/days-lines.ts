import { sayPlan } from "../words/say-plan.ts";
import type { Speech } from "../words/speech.ts";
import { planDays } from "../workshop/plan-days.ts";
import type { Workshop } from "../workshop/workshop.ts";

const DAYS = 7;

/** The coming days by the plan known now. Nothing is searched for here: the planner does that beside the dashboard. */
export async function daysLines(
  workshop: Workshop,
  speech: Speech,
  columns: number,
): Promise<readonly string[]> {
  return sayPlan(await planDays(workshop, DAYS, { at: null, rounds: 0 }), speech, columns);
}
