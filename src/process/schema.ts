import * as z from "zod/mini";
import { coatSchema } from "./coat-schema.ts";
import { processSchema } from "./process-schema.ts";
import { cautionsSchema, keepApartSchema } from "./rules-schema.ts";

/** The kinds of file in a process folder, each with the one schema that reads and describes it. */
const SCHEMAS = {
  process: processSchema,
  coat: coatSchema,
  cautions: cautionsSchema,
  "keep-apart": keepApartSchema,
} as const;

/**
 * What a kind of file may say, as JSON Schema 2020-12, for editors that check while one types. What the files say
 * against each other (a coat nobody knows, a ring of steps) is beyond it.
 */
export function jsonSchema(kind: keyof typeof SCHEMAS): Record<string, unknown> {
  return { ...z.toJSONSchema(SCHEMAS[kind], { io: "input" }), title: `dryline ${kind} file` };
}
