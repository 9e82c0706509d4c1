import type { Caution, KeepApart } from "./hazard.ts";
import { isObject } from "./loose-fields.ts";
import { type Finding, type Problem, showValue } from "./problem.ts";
import { readSource } from "./read-source.ts";
import { cautionsSchema, keepApartSchema } from "./rules-schema.ts";

interface Context {
  /** What problems call the file. */
  readonly file: string;
}

/** Reads a file of cautions, or tells everything that is wrong with it at once. */
export function readCautions(
  text: string,
  { file }: Context,
): { readonly cautions: readonly Caution[] } | { readonly problems: readonly Problem[] } {
  const source = readSource(text, file, cautionsSchema, findRepeated);
  if ("problems" in source) return source;
  const { closing, cautions } = source.fields;
  return {
    cautions: cautions.map((caution) => ({
      name: caution.caution,
      line: caution.line,
      whatItIs: caution.is,
      do: caution.do,
      never: caution.never,
      sources: caution.sources,
      perMelt: caution.per_melt ?? false,
      closing,
    })),
  };
}

/** Reads a file of keep-aparts, or tells everything that is wrong with it at once. */
export function readKeepApart(
  text: string,
  { file }: Context,
): { readonly keepApart: readonly KeepApart[] } | { readonly problems: readonly Problem[] } {
  const source = readSource(text, file, keepApartSchema, () => []);
  return "problems" in source ? source : { keepApart: source.fields.keep_apart };
}

/** Of two cautions of one name one would hide the other. */
function findRepeated(plain: unknown): Finding[] {
  const entries = isObject(plain) && Array.isArray(plain.cautions) ? plain.cautions : [];
  const names = entries.map((entry: unknown) => (isObject(entry) ? entry.caution : undefined));
  return names.flatMap((name, index) => {
    if (typeof name !== "string" || names.indexOf(name) === index) return [];
    const path = ["cautions", index, "caution"];
    return [
      { path, what: `a caution above is called ${showValue(name)}, too`, expected: "keep one of them" },
    ];
  });
}
