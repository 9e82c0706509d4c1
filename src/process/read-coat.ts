import { checkCoat } from "./check-coat.ts";
import type { Coat } from "./coat.ts";
import { buildCoat, coatSchema } from "./coat-schema.ts";
import { isObject, readLoosely } from "./loose-fields.ts";
import type { Problem } from "./problem.ts";
import { readSource } from "./read-source.ts";

/**
 * Reads a coat file, or tells everything that is wrong with it at once.
 *
 * @param context `file`: what problems call it; `cautions`: the names it may use, not checked if left out
 */
export function readCoat(
  text: string,
  context: { readonly file: string; readonly cautions?: readonly string[] },
): { readonly coat: Coat } | { readonly problems: readonly Problem[] } {
  const source = readSource(text, context.file, coatSchema, (plain) =>
    isObject(plain) ? checkCoat(readLoosely(coatSchema.shape, plain), context.cautions) : [],
  );
  return "problems" in source ? source : { coat: buildCoat(source.fields) };
}
