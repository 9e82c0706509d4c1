import { type Refused, refuse } from "./refuse.ts";

/** Text longer than these is a slip of the clipboard, not a name or a note; the journal holds no more. */
const LONGEST_NAME = 200;
const LONGEST_TEXT = 4_000;
/** Characters of an unfit value that its refusal shows. */
const SHOWN = 60;

/** @returns a refusal unless the value is fit; `what` and `expected` are words for its sentence */
export function checkThat(fit: boolean, what: string, value: unknown, expected: string): Refused | null {
  return fit ? null : refuse({ code: "unfit value", what, value: sayValue(value), expected });
}

/** @returns a refusal unless something is said: a note, a reason */
export function checkText(what: string, text: string): Refused | null {
  return checkLength(what, text, LONGEST_TEXT);
}

/** @returns a refusal unless it will do as a name: of a piece, a colour, a place, a buyer, what is measured */
export function checkName(what: string, name: string): Refused | null {
  return checkLength(what, name, LONGEST_NAME);
}

function checkLength(what: string, text: string, most: number): Refused | null {
  const length = text.trim().length;
  return checkThat(length > 0 && length <= most, what, text, `1 to ${most} characters`);
}

/** @returns a refusal unless it is a whole number from `least` to `most` */
export function checkWhole(what: string, value: number, least: number, most: number): Refused | null {
  const fit = Number.isSafeInteger(value) && value >= least && value <= most;
  return checkThat(fit, what, value, least === most ? `${least}` : `a whole number from ${least} to ${most}`);
}

/** The first of these that refuses; null: none does. */
export function firstRefusal(checks: readonly (Refused | null)[]): Refused | null {
  return checks.find((check) => check !== null) ?? null;
}

function sayValue(value: unknown): string {
  return (typeof value === "string" ? value : (JSON.stringify(value) ?? "nothing")).slice(0, SHOWN);
}
