import type * as z from "zod/mini";
import type { Coat, HandsOn } from "./coat.ts";
import type { ProcessDefinition } from "./definition.ts";
import type { processSchema, StepFields } from "./process-schema.ts";
import type { HangsUntil, Step } from "./step.ts";

/** One pass of a scheme of which neither scheme nor file says how long it takes (common practice, no source). */
export const ASSUMED_PASS: HandsOn = { low: 5, likely: 10, high: 15 };

/** A process of fields that have been checked, with the coats it names inside. */
export function buildProcess(
  fields: z.output<typeof processSchema>,
  coats: Readonly<Record<string, Coat>>,
): ProcessDefinition {
  const steps = fields.steps.map((step, index) => buildStep(step, fields.steps[index - 1]?.step));
  const used = [...new Set(steps.flatMap(({ coat }) => coat ?? []))];
  return {
    name: fields.process,
    piece: fields.piece ?? "piece",
    steps,
    coats: Object.fromEntries(
      used.flatMap((name) => (coats[name] === undefined ? [] : [[name, coats[name]]])),
    ),
    note: fields.note ?? null,
  };
}

/** @param above the name of the step above it in the file */
function buildStep(fields: StepFields, above: string | undefined): Step {
  return {
    name: fields.step,
    station: fields.station ?? "bench",
    handsOn: fields.hands_on ?? ASSUMED_PASS,
    mayStop: fields.may_stop ?? false,
    setUp: buildSetUp(fields),
    passes: fields.passes ?? "one",
    coat: fields.coat ?? null,
    waitsFor: fields.waits_for ?? null,
    wait: fields.wait ?? 0,
    place: fields.place ?? null,
    until: untilOf(fields),
    after: fields.after ?? (above === undefined ? [] : [above]),
    look: (fields.look ?? []).toSorted((a, b) => a - b),
    givesOff: fields.gives_off ?? [],
    // By name: the order of an object's words is not kept where one is a number.
    needs: Object.entries(fields.needs ?? {})
      .map(([what, limit]) => ({ what, ...limit }))
      .sort((a, b) => (a.what < b.what ? -1 : 1)),
    ballast:
      fields.ballast === undefined
        ? null
        : {
            holes: fields.ballast.holes,
            acrossMillimetres: fields.ballast.across,
            deepMillimetres: fields.ballast.deep ?? null,
            grams: fields.ballast.weight ?? null,
            metal: fields.ballast.metal ?? "lead",
          },
    cautions: fields.cautions ?? [],
    result: buildResult(fields.result),
    sheet: fields.sheet ?? {},
  };
}

function buildSetUp({ set_up }: StepFields): Step["setUp"] {
  if (set_up === undefined) return null;
  return {
    do: set_up.do,
    takes: set_up.takes,
    keeps: set_up.keeps,
    putAway: set_up.put_away ?? 0,
    cautions: set_up.cautions ?? [],
  };
}

/** A coat hangs until dry-hard unless said; other work as long as the step's wait. */
function untilOf(fields: StepFields): HangsUntil | null {
  if (fields.for !== undefined) return { minutes: fields.for };
  if (fields.place === undefined || fields.coat === undefined) return null;
  return { stage: fields.until ?? "dry-hard" };
}

function buildResult(result: StepFields["result"]): Step["result"] {
  if (result === undefined) return null;
  return Object.fromEntries(
    Object.entries(result).map(([answer, target]) => [
      answer,
      target === "on" ? { goes: "on" as const } : { backTo: target },
    ]),
  );
}
