import { plainText } from "../words/plain-text.ts";
import { sayPlanStanding } from "../words/say-plan-standing.ts";
import { wrapTo } from "../words/width.ts";
import { sayBrokenFiles } from "./broken-files.ts";
import { clockPanel } from "./clock-panel.ts";
import { headPanel } from "./head-panel.ts";
import type { Line, Span } from "./line.ts";
import { cutLine, line, span, spread } from "./line.ts";
import { tagsMeant } from "./marked-row.ts";
import { overlayPanel } from "./overlay-panel.ts";
import type { DashboardState, Facts } from "./state.ts";
import { detailLines, workPanel } from "./work-panel.ts";

/** Below this there is no room for the picture. */
const LEAST = { columns: 40, rows: 10 };
/** A low screen gives a line less to the marked row, a high one a line more, and any one that nothing else needs. */
const LOW = 20;
const HIGH = 30;
const KEYS = " Enter do it  h hang  t take  o touch  a tag  w week  u undo  ? keys  q quit";

/** The whole picture of a state: exactly as many lines as the screen has, none wider than it. */
export function pictureOf(state: DashboardState): Line[] {
  return drawLines(state).map((spans) => cutLine(spans, state.size.columns));
}

function drawLines(state: DashboardState): Line[] {
  const { columns, rows } = state.size;
  if (columns < LEAST.columns || rows < LEAST.rows) {
    return fill([line("dryline needs 40 x 10")], rows);
  }
  const { facts } = state;
  if (facts === null) return fill([line(" reading the journal")], rows);
  const head = headPanel(facts, columns);
  if (state.overlay !== null) {
    return fill([...head, line(""), ...overlayPanel(state.overlay, columns, roomForOverlay(state))], rows);
  }
  const foot = footLines(state, columns);
  const room = rows - head.length - foot.length - 1;
  const wanted = Math.max(state.rows.length, 1);
  const waiting = Math.max(facts.answer.waiting.length, 1) + 2;
  const usual = rows < LOW ? 1 : rows < HIGH ? 2 : 3;
  const isSpare = usual + 1 + wanted + waiting < room;
  const details = detailLines(state, facts, columns, isSpare ? usual + 1 : usual);
  const rest = room - details.length - 1;
  const forWork = Math.max(2, Math.min(wanted, rest - Math.min(waiting, Math.floor(room / 2))));
  const work = workPanel(state, facts, columns, forWork);
  const clock = clockPanel(facts, columns, rest - work.length, tagsMeant(state)[0] ?? null);
  const body = [...head, line(""), ...work, ...details, line(""), ...clock];
  return fill(body, rows - foot.length).concat(foot);
}

/** Lines for what lies over the picture: all but the head, as the keys of the foot do nothing meanwhile. */
export function roomForOverlay({ facts, size }: DashboardState): number {
  return size.rows - (facts === null ? 0 : headPanel(facts, size.columns).length) - 1;
}

/** The week, then what was just done or refused (else what goes on being wrong), what is being typed, and the keys. */
function footLines(state: DashboardState, columns: number): Line[] {
  const { typed, facts } = state;
  const message = state.message ?? { text: sayBrokenFiles(facts), tone: "refused" };
  const tone = message.tone === "refused" ? "late" : message.tone === "done" ? "good" : "plain";
  const [first = "", ...more] = wrapTo(plainText(message.text), columns - 2);
  const second = more.length === 0 ? [] : [line(` ${more.join(" ")}`, tone)];
  return [
    spread(span(` ${facts?.week ?? ""}`, "dim"), standing(facts), columns),
    ...(typed === "" ? [line(` ${first}`, tone), ...second] : [line(` tag ${typed}_`, "strong")]),
    line(KEYS, "dim"),
  ];
}

/** How the order was found; that a plan is missing stands out. */
function standing(facts: Facts | null): Span {
  if (facts === null) return span("");
  const { is } = facts.answer.plan;
  const said = sayPlanStanding(facts.answer);
  return span(
    said === "" ? "" : `${said} `,
    is === "older" || is === "unfit" || is === "stopped" ? "late" : "dim",
  );
}

function fill(lines: readonly Line[], rows: number): Line[] {
  return Array.from({ length: rows }, (_, row) => lines[row] ?? line(""));
}
