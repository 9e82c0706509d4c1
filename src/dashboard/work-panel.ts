import { MINUTE } from "../time/instant.ts";
import { plainText } from "../words/plain-text.ts";
import { sayHeld } from "../words/say-hold.ts";
import { sayWarning } from "../words/say-warning.ts";
import { sayEffort, sayHandRow, sayHeldWhat, sayWho, sayWhy, sayWorkRow } from "../words/say-work.ts";
import { cutTo, fitTo, widthOf, wrapTo } from "../words/width.ts";
import type { Line, Tone } from "./line.ts";
import { line, span } from "./line.ts";
import type { ActRow } from "./rows.ts";
import type { DashboardState, Facts } from "./state.ts";

/** A shut nearer than this is told loudly. */
const SOON = 30 * MINUTE;

/** Work for now with what is in hand above it and what is held below: at most `most` lines round the mark. */
export function workPanel(state: DashboardState, facts: Facts, columns: number, most: number): Line[] {
  if (state.rows.length === 0) return [line(" Nothing to work and nothing held. a tags a new piece.", "dim")];
  const marked = Math.max(
    state.rows.findIndex(({ id }) => id === state.mark),
    0,
  );
  // The last line may tell how many more there are, so the mark must stand above it.
  const first = Math.max(0, Math.min(marked - Math.floor((most - 1) / 2), state.rows.length - most));
  const shown = state.rows.slice(first, first + most);
  const wide = widthsOf(shown, facts, columns);
  const lines = shown.map((row) => rowLine(row, row.id === state.mark, facts, wide));
  const below = state.rows.length - first - shown.length;
  if (below > 0 && lines.length > 1) lines[lines.length - 1] = line(`   and ${below + 1} more below`, "dim");
  return lines;
}

/**
 * Always `count` lines about the marked row, so that nothing jumps as the mark moves: why it stands there and what
 * leaving it costs, the cautions of work in hand, or the whole of what holds it.
 */
export function detailLines(state: DashboardState, facts: Facts, columns: number, count: number): Line[] {
  const row = state.rows.find(({ id }) => id === state.mark);
  const said = row === undefined ? [] : detailsOf(row, facts);
  const lines = said.filter((text) => text !== "").flatMap((text) => wrapTo(text, columns - 4));
  const last = lines.slice(count - 1).join(" ");
  return Array.from({ length: count }, (_, index) => {
    const text = index === count - 1 ? last : (lines[index] ?? "");
    return line(text === "" ? "" : `   ${cutTo(text, columns - 4)}`, "dim");
  });
}

function detailsOf(row: ActRow, { speech, cautions }: Facts): string[] {
  switch (row.is) {
    case "work": {
      const { ifLeft } = sayWorkRow(row.row, speech);
      const why = sayWhy(row.row.why, speech);
      const { warning } = row.row;
      if (warning === null) return [why, ifLeft];
      return [sayWarning(warning, speech), ifLeft === "" ? why : `${why}; ${ifLeft}`];
    }
    case "hand": {
      const mind = row.row.cautions.map((name) => cautions[name] ?? name).join("; ");
      const warned = row.row.warning === null ? "" : sayWarning(row.row.warning, speech);
      return [warned, mind === "" ? "" : plainText(`mind ${mind}`)];
    }
    case "held":
      return [sayHeld(row.row, speech)];
  }
}

function rowLine(row: ActRow, marked: boolean, facts: Facts, wide: Wide): Line {
  const sign = marked ? ">" : " ";
  const tone = (usual: Tone): Tone => (marked ? "marked" : usual);
  const { speech } = facts;
  if (row.is === "hand") {
    return [span(fitTo(`${sign}${sayHandRow(row.row, speech)}`, wide.columns), tone("strong"))];
  }
  if (row.is === "held") {
    const because = sayHeld(row.row, speech);
    const who = fitTo(`held ${sayWho(row.row)}`, wide.who);
    const words = plainText(`${sign}${who} ${sayHeldWhat(row.row)}, ${sayEffort(row.row)}: ${because}`);
    return [span(fitTo(words, wide.columns), tone("dim"))];
  }
  const words = sayWorkRow(row.row, speech);
  const { beginBy } = row.row;
  const near = beginBy !== null && beginBy - speech.now < SOON;
  return [
    span(`${sign}${fitTo(words.who, wide.who)} `, tone("plain")),
    span(`${fitTo(words.what.toUpperCase(), wide.what)} `, tone("strong")),
    span(`${fitTo(words.effort, wide.effort)} `, tone("plain")),
    span(fitTo(words.by, wide.by), tone(near ? "late" : "plain")),
  ];
}

/** Widths of the cells of the work rows. */
interface Wide {
  readonly columns: number;
  readonly who: number;
  readonly what: number;
  readonly effort: number;
  readonly by: number;
}

/** Each cell as wide as its longest text, the effort giving way first, then what and who. */
function widthsOf(rows: readonly ActRow[], { speech }: Facts, columns: number): Wide {
  const words = rows.flatMap((row) => (row.is === "work" ? [sayWorkRow(row.row, speech)] : []));
  const longest = (texts: readonly string[], most: number) =>
    Math.min(Math.max(8, ...texts.map(widthOf)), most);
  const held = rows.flatMap((row) => (row.is === "held" ? [`held ${sayWho(row.row)}`] : []));
  const who = longest([...words.map((row) => row.who), ...held], Math.floor(columns * 0.26));
  const by = longest(
    words.map((row) => row.by),
    24,
  );
  const what = longest(
    words.map((row) => row.what),
    Math.floor(columns * 0.3),
  );
  const effort = longest(
    words.map((row) => row.effort),
    Math.max(columns - who - what - by - 4, 1),
  );
  return { columns, who, what, by, effort };
}
