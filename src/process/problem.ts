/** Something wrong in a file: where, what is wrong, and what would be right. */
export interface Problem {
  readonly file: string;
  /** From 1. */
  readonly line: number;
  /** From 1. */
  readonly column: number;
  /** "`wait` says 6" */
  readonly what: string;
  /** What to do about it: "write a duration, as 20 min" */
  readonly expected: string;
}

/** A value on its way into a problem, by its path in the file's tree: the place is found later. */
export interface Finding {
  /** Keys and list positions from the top, `["steps", 2, "wait"]`. Of a missing key, the path of what lacks it. */
  readonly path: readonly PropertyKey[];
  /** The word before the colon is meant, not what it says. */
  readonly atKey?: boolean;
  readonly what: string;
  readonly expected: string;
}

/**
 * A problem as one sentence, its place first as compilers say it, so that editors can jump there.
 * `perch.yaml:12:11 "wait" says 6; write a duration, as 20 min`
 */
export function sayProblem(problem: Problem): string {
  return `${problem.file}:${problem.line}:${problem.column} ${problem.what}; ${problem.expected}`;
}

/** A value of a file as a message shows it: short, on one line, with nothing in it that a terminal would obey. */
export function showValue(value: unknown): string {
  if (value === null || value === undefined) return "nothing";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "words with colons";
  const text = [...String(value).replace(UNSHOWN, "?")];
  const short = text.length > 40 ? `${text.slice(0, 39).join("")}…` : text.join("");
  return typeof value === "string" ? `"${short}"` : short;
}

/** Control characters, line ends, half characters, and the marks that turn the direction of writing. */
const UNSHOWN = /[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/gu;

/** Whether a text holds nothing that must not be shown. Line ends count as such unless `lines`. */
export function isShowable(text: string, lines = false): boolean {
  return (lines ? text.replaceAll("\n", "") : text).search(UNSHOWN) < 0;
}
