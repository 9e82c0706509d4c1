import * as z from "zod/mini";
import { parseDuration } from "../time/duration.ts";
import { EMISSIONS, type Emission, type Preparation } from "./coat.ts";
import { cautionNames, handsOn, keyed, listOf, name, oneOf, withinWait, words, written } from "./fields.ts";

const lasting = written(
  "for how long after the work, as 40 min, `while working` or `while set up`",
  "40 min",
  (given): Emission["lasts"] | null => {
    if (given === "while set up") return given;
    return given === "while working" ? 0 : withinWait(parseDuration(given), 0);
  },
);

/** What work gives off: a list (only while working) or a map of how long after. Always in the order of EMISSIONS. */
export const givesOff = z.pipe(
  z.union(
    [
      listOf(oneOf(EMISSIONS), "what it gives off"),
      words(keyed(EMISSIONS, z.optional(lasting)), "write { dust: 20 min }"),
    ],
    { error: "write what it gives off as a list [dust], or with how long after as { dust: 20 min }" },
  ),
  z.transform((given): Emission[] =>
    EMISSIONS.flatMap((what) => {
      const lasts = Array.isArray(given) ? (given.includes(what) ? 0 : undefined) : given[what];
      return lasts === undefined ? [] : [{ what, lasts }];
    }),
  ),
);

/** Work asked for before a late coat. */
export const preparation = z.pipe(
  words(
    {
      do: name("what is to be done"),
      hands_on: handsOn,
      gives_off: z.optional(givesOff),
      cautions: z.optional(cautionNames),
    },
    "write { do: scuff, hands_on: 4..6 min, gives_off: [dust] }",
  ),
  z.transform(
    (given): Preparation => ({
      do: given.do,
      handsOn: given.hands_on,
      givesOff: given.gives_off ?? [],
      cautions: given.cautions ?? [],
    }),
  ),
);
