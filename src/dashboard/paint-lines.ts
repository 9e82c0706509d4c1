import type { Line, Tone } from "./line.ts";

/** SGR numbers (ECMA-48) of each tone, the same that Ink gives out. */
const SGR: Readonly<Record<Tone, string>> = {
  plain: "",
  strong: "1",
  dim: "2",
  good: "32",
  soon: "36",
  late: "1;33",
  marked: "7",
};

/** The picture as a frame for the presenter, without Ink: `paintLines([line("hung", "good")], true)`. */
export function paintLines(lines: readonly Line[], colour: boolean): string {
  return lines
    .map((spans) =>
      spans
        .map(({ text, tone }) => (colour && SGR[tone] !== "" ? `\u001b[${SGR[tone]}m${text}\u001b[0m` : text))
        .join(""),
    )
    .join("\n");
}
