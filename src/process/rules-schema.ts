import * as z from "zod/mini";
import { EMISSIONS } from "./coat.ts";
import { flag, line, listOf, name, oneOf, words } from "./fields.ts";

/** What can be kept apart: what work gives off, and a coat while it is wet. */
const KEPT_APART = [...EMISSIONS, "wet coat"] as const;

const sentences = (what: string) =>
  listOf(line("a sentence"), what).check(z.minLength(1, { error: `write at least one of ${what}` }));

const caution = words(
  {
    caution: name("the name of the caution"),
    line: line("the caution in one line"),
    is: line("what it is"),
    do: sentences("things to do"),
    never: sentences("things never to do"),
    sources: sentences("published sources"),
    per_melt: z.optional(flag),
  },
  "write a caution: caution, line, is, do, never, sources",
);

/** What a file of cautions may say. */
export const cautionsSchema = words(
  {
    closing: line("the sentence that ends every caution"),
    cautions: z.array(caution, { error: "write a list of cautions, each begun by `- caution:`" }),
  },
  "write `closing:` and `cautions:`",
);

/** What a file of keep-aparts may say. */
export const keepApartSchema = words(
  {
    keep_apart: z.array(
      words(
        {
          these: z.tuple([oneOf(KEPT_APART), oneOf(KEPT_APART)], {
            error: "write the two that must not meet, as [solvent vapour, heat]",
          }),
          because: line("why"),
          source: line("where the rule comes from"),
        },
        "write { these: [solvent vapour, heat], because: ..., source: ... }",
      ),
      { error: "write a list, each entry begun by `- these:`" },
    ),
  },
  "write `keep_apart:`",
);
