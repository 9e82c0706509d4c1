import * as z from "zod/mini";
import { type Coat, CURES_BY, TIMED_STAGES, type Window } from "./coat.ts";
import { givesOff, preparation } from "./emission-fields.ts";
import { cautionNames, duration, flag, keyed, line, name, oneOf, sheet, words, written } from "./fields.ts";
import { readActivationEnergy, readAir, readCelsius, readHumidity, readMix } from "./quantity-form.ts";
import { readOpening, readSpan, type WrittenOpening } from "./window-form.ts";

const SPAN_FORM =
  "a window, as 4 h .. 24 h, from 24 h, flash-off .. or { from: 24 h, first: { do: scuff, hands_on: 5 min } }";

/** A window before the stages it may name are looked up. */
export interface WrittenWindow extends Omit<Window, "opens"> {
  readonly opens: WrittenOpening;
}

const window = z.pipe(
  z.union(
    [
      written(SPAN_FORM, "4 h .. 24 h", readSpan),
      words(
        {
          from: written("when it opens: a duration, a stage or flash-off", "24 h", readOpening),
          to: z.optional(duration(1)),
          first: z.optional(preparation),
        },
        `write ${SPAN_FORM}`,
      ),
    ],
    { error: `write ${SPAN_FORM}` },
  ),
  z.transform((given): WrittenWindow => {
    if ("opens" in given) return { ...given, first: null };
    return { opens: given.from, shuts: given.to ?? null, first: given.first ?? null };
  }),
);

/** What a coat file may say. Its cross-checks are in check-coat.ts. */
export const coatSchema = words(
  {
    coat: name("the name of the coat"),
    cures_by: oneOf(CURES_BY),
    sheet_air: written(
      "the air its sheet's times are for, as 21 °C 50 % or 70 °F 50 %",
      "21 °C 50 %",
      readAir,
    ),
    lowest: z.optional(written("a temperature, as 10 °C or 50 °F", "10 °C", readCelsius)),
    highest: z.optional(written("a temperature, as 35 °C or 95 °F", "35 °C", readCelsius)),
    dampest: z.optional(written("a relative humidity, as 85 %", "85 %", readHumidity)),
    activation_energy: z.optional(
      written("an activation energy, as 60 kJ/mol", "60 kJ/mol", readActivationEnergy),
    ),
    feel_first: z.optional(flag),
    stages: z.optional(
      // `wet` is the moment the coat is laid: it has no time of its own.
      words(
        keyed(TIMED_STAGES, z.optional(duration(1))),
        "write times by stage, as { dust-free: 45 min, dry-hard: 12 h }",
      ),
    ),
    windows: z.optional(z.array(window, { error: `write a list: ${SPAN_FORM}` })),
    flash_off: z.optional(duration()),
    gives_off: z.optional(givesOff),
    cautions: z.optional(cautionNames),
    mix: z.optional(
      written(
        "parts of resin and hardener, as 2 to 1 by volume, 1.5 ml a piece",
        "2 to 1 by volume",
        readMix,
      ),
    ),
    sheet: z.optional(sheet),
    source: z.optional(line("where the figures come from")),
  },
  "write a coat: its words and what each says, as `coat: brushing varnish`",
);

/** What a coat file says, each field read but not yet held against the others. */
export type CoatFields = z.output<typeof coatSchema>;

/** A coat of fields that have been checked: every stage that a window names has its time. */
export function buildCoat(fields: CoatFields): Coat {
  const stages = Object.fromEntries(
    Object.entries(fields.stages ?? {}).filter(([, minutes]) => minutes !== undefined),
  );
  return {
    name: fields.coat,
    curesBy: fields.cures_by,
    sheetAir: fields.sheet_air,
    lowestCelsius: fields.lowest ?? null,
    ...(fields.highest === undefined ? {} : { highestCelsius: fields.highest }),
    ...(fields.dampest === undefined ? {} : { dampestPercent: fields.dampest }),
    activationEnergy: fields.activation_energy ?? null,
    feelFirst: fields.feel_first ?? false,
    stages,
    windows: (fields.windows ?? []).map((window) => ({ ...window, opens: openingOf(window, stages) })),
    flashOff: fields.flash_off ?? 0,
    givesOff: fields.gives_off ?? [],
    cautions: fields.cautions ?? [],
    mix: fields.mix ?? null,
    sheet: fields.sheet ?? {},
    source: fields.source ?? null,
  };
}

function openingOf({ opens }: WrittenWindow, stages: Coat["stages"]): Window["opens"] {
  if (opens === "flash-off" || typeof opens === "number") return opens;
  const minutes = stages[opens];
  if (minutes === undefined)
    throw new Error(`a window names ${opens}, which the coat does not: unchecked fields`);
  return minutes;
}
