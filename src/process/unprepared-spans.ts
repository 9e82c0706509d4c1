import type { Minutes } from "../time/instant.ts";
import type { Coat } from "./coat.ts";
import type { ProcessDefinition } from "./definition.ts";
import { coatsBefore, stepsAfter } from "./order.ts";
import type { Step } from "./step.ts";

/** When the next coat may go on without preparation, in minutes after the hands-on end of the coat before. */
export interface UnpreparedSpan {
  readonly spans: readonly { readonly opens: Minutes; readonly shuts: Minutes }[];
  /** The work the first later window asks for; null: there is no later window. */
  readonly first: string | null;
}

/**
 * The windows of a coat in which the next may be begun without preparation; null where none shuts, so that none can be
 * missed. Work between the two coats that waits for a stage puts off the opening.
 */
export function findUnpreparedSpans(
  definition: ProcessDefinition,
  coatStep: Step,
  next: Step,
): UnpreparedSpan | null {
  const coat = coatStep.coat === null ? undefined : definition.coats[coatStep.coat];
  if (coat === undefined || next.coat === null) return null;
  const unprepared = coat.windows.filter((window) => window.first === null);
  const soonest = Math.max(0, ...stagesBetween(definition, coatStep, next, coat));
  const waited = next.waitsFor === null ? null : (coat.stages[next.waitsFor] ?? 0);
  const spans = unprepared.flatMap(({ opens, shuts }, index) => {
    const byWindow = opens === "flash-off" ? coat.flashOff : opens;
    // A stage that is waited for takes the place of the first window's own opening.
    const from = waited === null ? byWindow : index === 0 ? waited : Math.max(byWindow, waited);
    return shuts === null ? [] : [{ opens: Math.max(from, soonest), shuts }];
  });
  if (spans.length === 0 || spans.length < unprepared.length) return null;
  return { spans, first: coat.windows.find((window) => window.first !== null)?.first?.do ?? null };
}

/** Minutes to the stages that the work between two coats waits for. */
function stagesBetween({ steps }: ProcessDefinition, coatStep: Step, next: Step, coat: Coat): Minutes[] {
  const following = stepsAfter(steps, coatStep.name);
  return steps
    .filter((step) => step.coat === null && following.includes(step.name))
    .filter((step) => stepsAfter(steps, step.name).includes(next.name))
    .filter((step) => coatsBefore(steps, step.name).includes(coatStep))
    .map((step) => coat.stages[step.waitsFor ?? "dry-hard"] ?? 0);
}
