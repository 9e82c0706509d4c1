import type { ProcessDefinition } from "../../process/definition.ts";
import type { Minutes } from "../../time/instant.ts";
import { lagsIn } from "../air-lags.ts";
import { dryThroughMinutes, type ShopFacts } from "../plan-shop.ts";
import { longestOf } from "./lags-of-day.ts";

/**
 * Minutes from the end of a step until the coat it lays is dry-through, at their longest over the day in the air it hangs
 * in; null: it lays none, no sheet says, or it never is.
 */
export function dryThroughAfter(
  facts: ShopFacts,
  { steps, coats }: ProcessDefinition,
  step: string,
): Minutes | null {
  const found = steps.find(({ name }) => name === step);
  const coat = found?.coat == null ? undefined : coats[found.coat];
  const minutes = coat === undefined ? null : dryThroughMinutes(coat);
  if (found === undefined || coat === undefined || minutes === null) return null;
  const longest = longestOf(lagsIn(facts, coat, found.place).opens(minutes, 0));
  return Number.isFinite(longest) ? longest : null;
}
