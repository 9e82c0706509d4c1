import { buildProcess } from "./build-process.ts";
import { checkProcess, type KnownNames, type LooseStep } from "./check-process.ts";
import type { ProcessDefinition } from "./definition.ts";
import { isObject, readLoosely } from "./loose-fields.ts";
import type { Problem } from "./problem.ts";
import { processSchema, stepSchema } from "./process-schema.ts";
import { readSource } from "./read-source.ts";

/**
 * Reads a process file, or tells everything that is wrong with it at once.
 *
 * @param context `file`: what problems call it; `coats` by name, from their own files; `cautions`: the names it may
 * use, not checked if left out
 */
export function readProcess(
  text: string,
  context: KnownNames & { readonly file: string },
): { readonly definition: ProcessDefinition } | { readonly problems: readonly Problem[] } {
  const source = readSource(text, context.file, processSchema, (plain) =>
    checkProcess(readStepsLoosely(plain), context),
  );
  return "problems" in source ? source : { definition: buildProcess(source.fields, context.coats) };
}

function readStepsLoosely(plain: unknown): LooseStep[] {
  const steps = isObject(plain) ? plain.steps : undefined;
  if (!Array.isArray(steps)) return [];
  // What is no step at all is told by the schema; its place in the list still counts.
  return steps.map((step: unknown, index) => ({
    ...readLoosely(stepSchema.shape, step),
    index,
    said: isObject(step),
  }));
}
