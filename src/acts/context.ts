import type { By } from "../journal/event.ts";
import type { Step } from "../process/step.ts";
import type { SafetyRules } from "../safety/rules.ts";
import type { Moment } from "../shop/moment.ts";
import type { Instant, Minutes } from "../time/instant.ts";

/** What an act is decided under, beside the shop: the world, handed in. */
export interface DecideContext extends Moment {
  readonly rules: SafetyRules;
  /** Who asks: undo takes back this one's acts only. */
  readonly by: By;
  /** Hands-on minutes of a step as this maker usually takes, for "hung, as usual". */
  readonly usualMinutes: (process: string, step: Step) => Minutes;
}

/** The context as it was at the moment an act is dated to. */
export function contextAt(context: DecideContext, at: Instant): DecideContext {
  return { ...context, now: at };
}
