import type { PlanAnswer, PlannedRow, PlannedSession } from "../plan/plan-answer.ts";
import { localTime } from "../time/civil.ts";
import type { CivilDate } from "../time/instant.ts";
import { capital, sayList } from "./say-list.ts";
import { sayPlannedRow, sayPlannedSession, sayPutAway } from "./say-planned-row.ts";
import { sayDayAndClock } from "./say-time.ts";
import type { Speech } from "./speech.ts";
import { fitTo, wrapTo } from "./width.ts";

/** Width of the card: a sheet in a plain typeface. */
const WIDE = 80;
const RULE = "-".repeat(WIDE);
const BOX = "[ ] ";
/** Cells of the columns: when (24 h clock or 12 h), who, how long, where; what is worked has the rest. */
const WHEN = { short: 5, long: 8 };
const WHO = 17;
const HOW_LONG = 12;
const WHERE = 12;

/**
 * One day of a plan to print and hang up: a box to tick for each row, its set-up and its looks below it, what must be
 * put away, and the cautions to read. Plain ASCII, never wider than 80 columns.
 */
export function sayDayCard(plan: PlanAnswer, date: CivilDate, speech: Speech): string[] {
  const sessions = sessionsOn(plan, date, speech);
  const cautions = [
    ...new Set(sessions.flatMap(({ rows }) => rows.flatMap(({ cautions: names }) => names))),
  ].sort();
  const read = `Read before you begin: ${sayList(cautions)}. dryline help tells each; your data sheets and local code come first.`;
  return [
    `Day card, planned ${sayDayAndClock(plan.at, speech)}`,
    ...sessions.flatMap((session) => [RULE, ...saySession(session, speech)]),
    RULE,
    ...(cautions.length === 0 ? [] : [read]),
    "After any change print it anew: dryline plan --card",
  ]
    .map(plainAscii)
    .flatMap((line) => (line.length > WIDE ? wrapTo(line, WIDE) : [line]));
}

/** The bench sessions of a day. */
export function sessionsOn({ sessions }: PlanAnswer, date: CivilDate, { zone }: Speech): PlannedSession[] {
  return sessions.filter(({ opens, outsideHours }) => !outsideHours && localTime(zone, opens).date === date);
}

function saySession(session: PlannedSession, speech: Speech): string[] {
  return [
    sayPlannedSession(session, speech),
    "",
    ...session.rows.flatMap((row) => sayRow(row, speech)),
    ...sayPutAway(session, speech).map((text) => `${BOX}${capital(text)}`),
  ];
}

/** A row with its box; what is longer than its column, and all that belongs to it, stands below. */
function sayRow(row: PlannedRow, speech: Speech): string[] {
  const said = sayPlannedRow(row, speech);
  const when = speech.clock24 ? WHEN.short : WHEN.long;
  const rest = WIDE - BOX.length - when - WHO - HOW_LONG - WHERE - 4;
  const [what = "", ...more] = wrapTo(plainAscii(said.what), rest);
  const cells = [
    fitTo(said.from, when),
    fitTo(plainAscii(said.who), WHO),
    fitTo(what, rest),
    fitTo(said.minutes, HOW_LONG),
    fitTo(plainAscii(said.station), WHERE),
  ];
  const margin = " ".repeat(BOX.length + when + 1);
  const wide = WIDE - margin.length;
  const below = [said.by, said.measure, said.setUp, said.inHand, said.look, said.finishes]
    .filter((text) => text !== "")
    .join("; ");
  return [
    `${BOX}${cells.join(" ")}`.trimEnd(),
    ...more.map((text) => " ".repeat(margin.length + WHO + 1) + text),
    ...(below === "" ? [] : wrapTo(plainAscii(capital(below)), wide).map((text) => margin + text)),
  ];
}

/** Letters without their marks, a fraction with its stroke; what ASCII has no letter for is a question mark, one for each. */
function plainAscii(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replaceAll("\u2044", "/")
    .replace(/[^ -~]/gu, "?");
}
