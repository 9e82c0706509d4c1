import { MINUTE } from "../time/instant.ts";
import { plainText } from "../words/plain-text.ts";
import { sayHold } from "../words/say-hold.ts";
import { sayEffort, sayHandRow, sayWho, sayWorkRow } from "../words/say-work.ts";
import { fitTo } from "../words/width.ts";
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
  const first = Math.max(0, Math.min(marked - Math.floor(most / 2), state.rows.length - most));
  const shown = state.rows.slice(first, first + most);
  const lines = shown.map((row) => rowLine(row, row.id === state.mark, facts, columns));
  const below = state.rows.length - first - shown.length;
  if (below > 0 && lines.length > 1) lines[lines.length - 1] = line(`   and ${below + 1} more below`, "dim");
  return lines;
}

/** What the marked row would cost to leave, in one line; empty where there is nothing to say. */
export function costLine(state: DashboardState, facts: Facts): Line {
  const row = state.rows.find(({ id }) => id === state.mark);
  if (row?.is !== "work") return line("");
  const { ifLeft } = sayWorkRow(row.row, facts.speech);
  return line(ifLeft === "" ? "" : `   ${ifLeft}`, "dim");
}

function rowLine(row: ActRow, marked: boolean, facts: Facts, columns: number): Line {
  const sign = marked ? ">" : " ";
  const tone = (usual: Tone): Tone => (marked ? "marked" : usual);
  const { speech } = facts;
  if (row.is === "hand") {
    return [span(fitTo(`${sign}${sayHandRow(row.row, speech)}`, columns), tone("strong"))];
  }
  const whoWide = Math.max(16, Math.floor(columns * 0.24));
  if (row.is === "held") {
    const because = sayHold(row.row.because, row.row.until, speech);
    const words = `${fitTo(`held ${sayWho(row.row)}`, whoWide)} ${row.row.step}, ${sayEffort(row.row)}: ${because}`;
    return [span(fitTo(plainText(`${sign}${words}`), columns), tone("dim"))];
  }
  const words = sayWorkRow(row.row, speech);
  const byWide = 18;
  const whatWide = Math.max(12, Math.floor((columns - whoWide - byWide) * 0.45));
  const effortWide = Math.max(columns - whoWide - whatWide - byWide - 4, 8);
  const { beginBy } = row.row;
  const near = beginBy !== null && beginBy - speech.now < SOON;
  return [
    span(`${sign}${fitTo(words.who, whoWide)} `, tone("plain")),
    span(`${fitTo(words.what.toUpperCase(), whatWide)} `, tone("strong")),
    span(`${fitTo(words.effort, effortWide)} `, tone("plain")),
    span(fitTo(words.by, byWide), tone(near ? "late" : "plain")),
  ];
}
