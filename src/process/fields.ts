/**
 * The kinds of field that process, coat and safety files are made of. Every field's own message says what would be
 * right; explain.ts adds what is wrong.
 */
import * as z from "zod/mini";
import { parseDuration } from "../time/duration.ts";
import type { Minutes } from "../time/instant.ts";
import { LONGEST_WAIT } from "./coat.ts";
import { readHandsOn } from "./hands-on-form.ts";
import { isShowable } from "./problem.ts";

const LONGEST_NAME = 60;
const LONGEST_LINE = 500;
const LONGEST_NOTE = 5_000;
/** Longer than any form below needs. */
const LONGEST_FORM = 100;

const DURATION_FORM = "a duration, as 20 min, 4 h, 1 h 30 min, 2 d or PT4H";
const HANDS_ON_FORM = "hands-on time, as 6 min, 4..6 min or 5..8..12 min";

/** Text written in a form of its own, turned into what it means; `read` answers null to what is not so written. */
export function written<T>(form: string, example: string, read: (text: string) => T | null) {
  const error = `write ${form}`;
  const source = z.string({ error }).register(z.globalRegistry, { description: form, examples: [example] });
  return z.pipe(
    source,
    z.transform((text: string, context): T => {
      const value = text.length <= LONGEST_FORM && isShowable(text) ? read(text) : null;
      if (value !== null) return value;
      context.issues.push({ code: "custom", message: error, input: text });
      return z.NEVER;
    }),
  );
}

/** Text for people: not empty, no spaces around it, nothing that a terminal would obey. */
function text(what: string, longest: number, lines: boolean) {
  const error = `write ${what} of 1 to ${longest} letters, without control characters`;
  return z.string({ error: `write ${what}, in quotes if it is a number or has a # or a colon in it` }).check(
    z.minLength(1, { error }),
    z.maxLength(longest, { error }),
    z.refine((given) => isShowable(given, lines), { error }),
    z.refine((given) => given.trim() === given, { error: `write ${what} without spaces around it` }),
  );
}

/** What something is called, short enough for a row of the screen. */
export function name(what: string) {
  return text(what, LONGEST_NAME, false).check(
    // As a key of an object it would not be a key.
    z.refine((given) => given !== "__proto__", { error: `take another word for ${what}` }),
  );
}

/** One line of text. */
export function line(what: string) {
  return text(what, LONGEST_LINE, false);
}

/** Text of several lines; the line end that YAML adds to a block goes. */
export function note(what: string) {
  return z.pipe(
    z.pipe(
      z.string({ error: `write ${what}` }),
      z.transform((given: string) => given.trim()),
    ),
    text(what, LONGEST_NOTE, true),
  );
}

/** One of a few words. */
export function oneOf<const T extends readonly string[]>(words: T) {
  return z.enum(words, { error: `write ${words.length > 1 ? "one of " : ""}${words.join(", ")}` });
}

export const flag = z.boolean({ error: "write true or false" });

/** At most a year, and at least `least` minutes. */
export function duration(least = 0) {
  const form = least > 0 ? `${DURATION_FORM}, not nothing` : DURATION_FORM;
  return written(form, "20 min", (given) => withinWait(parseDuration(given), least));
}

/** The minutes, if there are at least so many and at most a year of them. */
export function withinWait(minutes: Minutes | null, least: Minutes): Minutes | null {
  return minutes !== null && minutes >= least && minutes <= LONGEST_WAIT ? minutes : null;
}

export const handsOn = written(HANDS_ON_FORM, "5..8..12 min", readHandsOn);

/** A list whose entries are all different. */
export function listOf<T extends z.core.$ZodType>(entry: T, what: string) {
  const error = `write a list of ${what}, as [a, b], each once`;
  return z.array(entry, { error }).check(
    z.maxLength(100, { error: `write at most 100 ${what}` }),
    z.refine((entries) => new Set(entries).size === entries.length, { error }),
  );
}

export const cautionNames = listOf(name("the name of a caution"), "names of cautions");

/**
 * An object of these words and no others. Where another stands, the message lists the known ones: explain.ts looks
 * for the nearest among them.
 */
export function words<S extends z.core.$ZodShape>(shape: S, form: string) {
  return z.strictObject(shape, {
    error: (issue) => (issue.code === "unrecognized_keys" ? Object.keys(shape).join(", ") : form),
  });
}

/** An object schema's shape with one field for each word. */
export function keyed<const K extends string, T>(words: readonly K[], field: T): Record<K, T> {
  // Object.fromEntries forgets which keys it was given.
  return Object.fromEntries(words.map((word) => [word, field])) as Record<K, T>;
}

/** Lines for the set-up sheet, as written. */
export const sheet = z.record(name("a word"), line('text with its unit, as "0.3 mm"'), {
  error: 'write lines for the set-up sheet, as { nozzle: "0.3 mm" }',
});
