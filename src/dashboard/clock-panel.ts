import type { Tag } from "../journal/event.ts";
import type { WaitingRow } from "../plan/now-answer.ts";
import type { Instant } from "../time/instant.ts";
import { MINUTE } from "../time/instant.ts";
import { plainText } from "../words/plain-text.ts";
import { sayWait } from "../words/say-time.ts";
import { sayOpening, sayStage } from "../words/say-waiting.ts";
import { fitTo, widthOf } from "../words/width.ts";
import type { Axis } from "./clock-axis.ts";
import { axisFor, cellOf } from "./clock-axis.ts";
import { benchMarks, hourMarks } from "./clock-marks.ts";
import type { Line, Tone } from "./line.ts";
import { line, span } from "./line.ts";
import type { Facts } from "./state.ts";

/** Fewer cells tell nothing: the bars then give way to the words. */
const LEAST_CELLS = 12;

/**
 * The shared clock: every piece out under one axis of hours, so that where time goes is seen at once. Where there is no room
 * for all of them, the page of them that has the piece looked at: pages stand still while the mark moves within one.
 *
 * @param tag the piece looked at; null: none
 */
export function clockPanel(facts: Facts, columns: number, most: number, tag: Tag | null = null): Line[] {
  const { answer, speech, sessions } = facts;
  if (answer.waiting.length === 0) return [line(" Nothing is out.", "dim")];
  const longest = Math.max(...answer.waiting.map((row) => widthOf(nameOf(row))));
  const nameWide = Math.min(Math.max(8, longest), Math.floor(columns * 0.28));
  const stateWide = columns >= 120 ? 50 : 24;
  const cells = columns - nameWide - stateWide - 4;
  const axis = axisFor(speech.now, cells < LEAST_CELLS ? 0 : cells, sessions);
  const indent = " ".repeat(nameWide + 2);
  const room = Math.max(most - 2, 1);
  const count = answer.waiting.length > room ? Math.max(room - 1, 1) : room;
  const looked = Math.max(
    answer.waiting.findIndex((row) => row.tag === tag),
    0,
  );
  const from = Math.max(Math.min(looked - (looked % count), answer.waiting.length - count), 0);
  const shown = answer.waiting.slice(from, from + count);
  const lines = [
    line(`${indent}${hourMarks(axis, speech.zone)}`, "dim"),
    line(`${indent}${benchMarks(axis, speech.now)}`, "dim"),
    ...shown.map((row) => [
      span(` ${fitTo(nameOf(row), nameWide)} `),
      span(barOf(drawnFrom(row, answer.inHand), axis, speech.now), toneOf(row)),
      span(` ${stateOf(row, facts, stateWide)}`, toneOf(row)),
    ]),
  ];
  const more = answer.waiting.length - shown.length;
  return more > 0 ? [...lines, line(` and ${more} more: dryline rack shows all`, "dim")] : lines;
}

function nameOf({ tag, name }: WaitingRow): string {
  return plainText(`${tag} ${name}`);
}

/** The countdown in few words at the end of the bar: what comes next for this piece. */
function stateOf(row: WaitingRow, facts: Facts, wide: number): string {
  const { speech } = facts;
  const left = (at: Instant) => sayWait(Math.ceil((at - speech.now) / MINUTE));
  if (wide > 40) return [sayStage(row), sayOpening(row, speech)].filter((words) => words !== "").join(", ");
  if (row.because === "tacky") return "tacky: feel it again";
  if (row.state === "in hand" || row.state === "left" || row.state === "not begun") return sayStage(row);
  if (row.state === "shut") return "shut: prepare first";
  if (row.state === "open") return row.shuts === null ? "open" : `open, shuts in ${left(row.shuts)}`;
  return row.opens === null ? "feel it" : `${row.stage ?? "waits"}, opens ${left(row.opens)}`;
}

/** What is in hand is drawn from when it was taken, not from the coat below it. */
function drawnFrom(row: WaitingRow, inHand: Facts["answer"]["inHand"]): WaitingRow {
  const taken =
    row.state === "in hand" ? inHand.find(({ tags, left }) => !left && tags.includes(row.tag)) : undefined;
  return taken === undefined ? row : { ...row, since: taken.since };
}

/** Drying `-`, the window `[===]`, shut `~`, in hand `*`, not begun or half-done `.`, now `|`. */
function barOf(row: WaitingRow, axis: Axis, now: Instant): string {
  const cells = axis.starts.length - 1;
  const at = (moment: Instant | null, missing: number) => (moment === null ? missing : cellOf(axis, moment));
  const since = at(row.since, cells);
  const opens = row.state === "open" || row.state === "shut" ? at(row.opens, since) : at(row.opens, cells);
  const shuts = at(row.shuts, cells);
  const here = cellOf(axis, now);
  let bar = "";
  for (let cell = 0; cell < cells; cell++) {
    if (cell === here) bar += "|";
    else if (row.state === "in hand") bar += cell < here && cell >= since ? "*" : " ";
    else if (row.state === "not begun" || row.state === "left") bar += ".";
    else if (cell < since) bar += " ";
    else if (cell < opens) bar += "-";
    else if (cell === opens) bar += "[";
    else if (cell < shuts) bar += "=";
    else bar += cell === shuts ? "]" : "~";
  }
  return bar;
}

function toneOf(row: WaitingRow): Tone {
  if (row.state === "shut" || row.because === "tacky") return "late";
  if (row.state === "open") return "good";
  return row.state === "in hand" ? "strong" : "plain";
}
