import * as z from "zod/mini";
import { TIMED_STAGES } from "./coat.ts";
import { givesOff } from "./emission-fields.ts";
import {
  cautionNames,
  duration,
  flag,
  handsOn,
  listOf,
  name,
  note,
  oneOf,
  sheet,
  words,
  written,
} from "./fields.ts";
import { readKeeps } from "./keeps-form.ts";
import { readAtMost, readGrams, readMillimetres } from "./quantity-form.ts";
import { BALLAST_METALS } from "./step.ts";

const millimetres = written("a length, as 8 mm or 5/16 in", "8 mm", readMillimetres);

const setUp = words(
  {
    do: name("what is to be done, as melt lead or load {colour}"),
    takes: duration(),
    keeps: written(
      "how long it keeps: 45 min from last use, 30 min from mixing, serves 4, or until another load",
      "45 min from last use",
      readKeeps,
    ),
    put_away: z.optional(duration()),
    cautions: z.optional(cautionNames),
  },
  "write { do: melt lead, takes: 20 min, keeps: 45 min from last use, put_away: 5 min }",
);

const ballast = words(
  {
    holes: z
      .int({ error: "write how many holes, from 1 to 20" })
      .check(
        z.gte(1, { error: "write how many holes, from 1 to 20" }),
        z.lte(20, { error: "write at most 20 holes" }),
      ),
    across: millimetres,
    deep: z.optional(millimetres),
    weight: z.optional(written("a weight, as 12 g or 0.5 oz", "12 g", readGrams)),
    metal: z.optional(oneOf(BALLAST_METALS)),
  },
  "write { holes: 2, across: 8 mm, deep: 14 mm }, or the weight wanted in place of deep",
);

const stepName = name("the name of a step");

/** What a step of a process file may say. Its cross-checks are in check-process.ts. */
export const stepSchema = words(
  {
    step: stepName,
    station: z.optional(name("a station")),
    hands_on: z.optional(handsOn),
    may_stop: z.optional(flag),
    set_up: z.optional(setUp),
    passes: z.optional(oneOf(["one", "scheme"])),
    coat: z.optional(name("the name of a coat")),
    waits_for: z.optional(oneOf(TIMED_STAGES)),
    wait: z.optional(duration()),
    place: z.optional(name("a place")),
    until: z.optional(oneOf(TIMED_STAGES)),
    for: z.optional(duration(1)),
    after: z.optional(listOf(stepName, "names of steps")),
    look: z.optional(listOf(duration(1), "durations")),
    gives_off: z.optional(givesOff),
    needs: z.optional(
      z.record(name("what is measured"), written("a limit, as at most 10 %", "at most 10 %", readAtMost), {
        error: "write what must be measured first, as { wood moisture: at most 10 % }",
      }),
    ),
    ballast: z.optional(ballast),
    cautions: z.optional(cautionNames),
    result: z.optional(
      z.record(name("an answer"), name("on, or the step to go back to"), {
        error: "write answers, as { passes: on, tune: fit the hangers }",
      }),
    ),
    sheet: z.optional(sheet),
  },
  "write a step, as `- step: seal`, with its other words under `step`",
);

const STEPS_FORM = "write a list of 1 to 100 steps, each begun by `- step:`";

/** What a process file may say. */
export const processSchema = words(
  {
    process: name("the name of the process"),
    piece: z.optional(name("what one piece is called")),
    note: z.optional(note("a note")),
    steps: z
      .array(stepSchema, { error: STEPS_FORM })
      .check(z.minLength(1, { error: STEPS_FORM }), z.maxLength(100, { error: STEPS_FORM })),
  },
  "write a process: its words and what each says, as `process: carved walker`",
);

/** What a step says, each field read but not yet held against the others. */
export type StepFields = z.output<typeof stepSchema>;
