import { cutTo, fitTo, wrapTo } from "../words/width.ts";
import type { Line } from "./line.ts";
import { line } from "./line.ts";
import type { Overlay } from "./state.ts";

/** Lines around a long text: its title, a blank one and its keys. */
const AROUND = 3;

/** What lies over the picture, at most `rows` lines; long texts show how to go on reading. */
export function overlayPanel(overlay: Overlay, columns: number, rows: number): Line[] {
  const wide = Math.max(columns - 2, 20);
  const indent = (text: string) => indentTo(text, wide);
  switch (overlay.is) {
    case "type":
      return [
        line(` ${overlay.title}:`, "strong"),
        line(` ${[...overlay.typed].slice(3 - columns).join("")}_`),
        line(" Enter keeps it, Esc does nothing.", "dim"),
      ];
    case "choose":
      return [
        ...indent(overlay.title).map((text) => line(text, "strong")),
        ...overlay.lines.flatMap(indent).map((text) => line(text)),
        line(""),
        ...choiceLines(overlay, wide, rows - 4 - overlay.lines.length),
        line(" Esc  do nothing", "dim"),
      ];
    case "text":
      return longText(overlay.title, overlay.lines.flatMap(indent), overlay.top, rows, "Esc closes");
    case "days":
      return longText("The coming days", overlay.lines.flatMap(indent), overlay.top, rows, "Esc closes");
    case "caution":
      return longText(
        "Read this first",
        overlay.lines.flatMap(indent),
        overlay.top,
        rows,
        "c  I have read it   Esc  not now",
      );
  }
}

/** The first line of a long text that is shown when its last one is in sight. */
export function lastTop({ lines }: Extract<Overlay, { top: number }>, columns: number, rows: number): number {
  const wrapped = lines.flatMap((text) => indentTo(text, Math.max(columns - 2, 20)));
  return Math.max(0, wrapped.length - Math.max(rows - AROUND, 1));
}

/** A line broken at the width, its parts set in as far as the line itself. */
function indentTo(text: string, wide: number): string[] {
  const margin = " ".repeat(1 + text.length - text.trimStart().length);
  return wrapTo(text.trim(), wide - margin.length).map((part) => margin + part);
}

/** A choice a line; in two columns where they would not all be seen. */
function choiceLines({ choices }: Extract<Overlay, { is: "choose" }>, wide: number, room: number): Line[] {
  const labels = choices.map(({ label }) => label);
  if (labels.length <= room) return labels.map((label) => line(` ${label}`));
  const half = Math.ceil(labels.length / 2);
  const column = Math.floor(wide / 2);
  return labels
    .slice(0, half)
    .map((label, index) => line(` ${fitTo(label, column)}${cutTo(labels[half + index] ?? "", column)}`));
}

function longText(title: string, lines: readonly string[], top: number, rows: number, keys: string): Line[] {
  const room = Math.max(rows - AROUND, 1);
  const first = Math.max(0, Math.min(top, lines.length - room));
  const shown = lines.slice(first, first + room);
  const more =
    lines.length > room ? `   ${first + shown.length} of ${lines.length} lines, up and down read on` : "";
  return [
    line(` ${title}`, "strong"),
    ...shown.map((text) => line(text)),
    line(""),
    line(` ${keys}${more}`, "dim"),
  ];
}
