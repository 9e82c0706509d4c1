import type { Line } from "../../src/dashboard/line.ts";

/** A line's text without its looks and without the blanks at its end. */
export function lineText(line: Line): string {
  return line
    .map(({ text }) => text)
    .join("")
    .trimEnd();
}
