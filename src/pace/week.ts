import type { PieceRow } from "../journal/journal.ts";
import { aimAt, hoursOf } from "../shop/settings-at.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import { addDays, localTime } from "../time/civil.ts";
import type { CivilDate, Instant } from "../time/instant.ts";
import { weekOf, weekSpan } from "../time/weeks.ts";
import type { Zone } from "../time/zone.ts";
import { daysOut } from "./days-out.ts";
import { handsOnUsed } from "./hands-on.ts";
import { notesIn } from "./notes.ts";
import { overridesIn } from "./overrides.ts";
import { count, isWithin, type Span } from "./span.ts";
import { stepsAgainstEstimate } from "./step-times.ts";
import type { AgainstAim, Figure, WeekReview } from "./week-review.ts";
import { windowRecords } from "./window-records.ts";
import { workDone } from "./work-done.ts";

const WEEKS_SHOWN = 8;

/** Which week: any day of it. `firstWeekday` 1 Monday (ISO 8601) to 7 Sunday. */
export interface WeekAsked {
  readonly date: CivilDate;
  readonly zone: Zone;
  readonly now: Instant;
  readonly firstWeekday?: number;
}

export interface WeekInput extends WeekAsked {
  /** Folded from a reading of the span that weekNeeds names. */
  readonly shop: Shop;
  /** Rows of the pieces of the eight weeks that weekNeeds names. */
  readonly rows: readonly PieceRow[];
}

/**
 * What must be read of the journal for a week: the pieces out and those with an event since the week began (one
 * that hung still all week is known by a later one), and rows for the last eight weeks.
 */
export function weekNeeds({ date, zone, now, firstWeekday }: WeekAsked): { span: Span; rows: Span } {
  const { start } = weekOf(date, firstWeekday);
  const { from, to } = weekSpan(start, zone);
  const oldest = weekSpan(addDays(start, -7 * (WEEKS_SHOWN - 1)), zone).from;
  return { span: { from, to: Math.max(to, now + 1) }, rows: { from: oldest, to } };
}

/** The review of a week: what it gave, where the hours went, what waiting cost; each figure with its pieces. */
export function weekReview(input: WeekInput): WeekReview {
  const { shop, zone, now } = input;
  const { start, name } = weekOf(input.date, input.firstWeekday);
  const whole = weekSpan(start, zone);
  // Nothing dated after now has happened yet, whatever the journal says.
  const week: Span = { from: whole.from, to: Math.min(whole.to, now + 1) };
  const pieces = [...shop.pieces.values()].sort((a, b) => a.tag - b.tag);
  const inWeek = <T extends { readonly at: Instant }>(records: readonly T[]): readonly T[] =>
    records.filter(({ at }) => isWithin(week, at));
  const work = inWeek(pieces.flatMap(workDone));
  const finished = inWeek(pieces.flatMap(finishOf));
  const scrapped = inWeek(pieces.flatMap(scrapOf));
  const mends = inWeek(
    pieces.flatMap(({ tag, mends }) => mends.map(({ at, what, minutes }) => ({ tag, at, what, minutes }))),
  );
  const results = inWeek(
    pieces.flatMap(({ tag, sentBack }) => sentBack.map((result) => ({ tag, ...result }))),
  );
  const finishedFigure = count(finished);
  return {
    week: name,
    start,
    end: addDays(start, 6),
    running: now < whole.to,
    finished: finishedFigure,
    tagged: count(pieces.filter(({ taggedAt }) => isWithin(week, taggedAt))),
    scrapped: { ...count(scrapped), pieces: scrapped },
    mended: { ...count(mends), minutes: mends.reduce((sum, { minutes }) => sum + minutes, 0), mends },
    sentBack: { ...count(results), results },
    handsOn: handsOnUsed(
      work,
      pieces,
      whole,
      { hours: hoursOf(shop.settings), zone, settings: shop.settings },
      now,
    ),
    daysOut: daysOut(finished),
    steps: stepsAgainstEstimate(work, shop.pieces),
    windows: windowsOf(pieces, week, now),
    overrides: overridesIn(week, shop.acts),
    notes: notesIn(week, shop.acts),
    aim: againstAim(input, week.to - 1, finishedFigure),
    lastWeeks: lastWeeks(input, start, finishedFigure),
  };
}

function finishOf(piece: Piece): { piece: Piece; tag: number; at: Instant }[] {
  const { end, tag } = piece;
  const at = end === null ? null : end.how === "finished" ? end.at : end.finishedAt;
  return at === null ? [] : [{ piece, tag, at }];
}

function scrapOf({ end, tag }: Piece): { tag: number; at: Instant; why: string }[] {
  return end?.how === "scrapped" ? [{ tag, at: end.at, why: end.why }] : [];
}

/** A kept window counts when the next coat was taken, a missed one when it shut. */
function windowsOf(pieces: readonly Piece[], week: Span, now: Instant): WeekReview["windows"] {
  const records = pieces.flatMap((piece) => windowRecords(piece, now));
  const kept = records.filter(({ taken, shut }) => taken !== null && taken < shut && isWithin(week, taken));
  const missed = records.filter(
    ({ taken, shut }) => (taken === null || taken >= shut) && isWithin(week, shut),
  );
  const minutes = missed.reduce((sum, record) => sum + record.minutes, 0);
  return {
    kept: { ...count(kept), windows: kept },
    missed: { ...count(missed), minutes, windows: missed },
  };
}

/** The aim in force on the week's last day so far. */
function againstAim({ shop, zone }: WeekInput, last: Instant, finished: Figure): AgainstAim {
  const aim = aimAt(shop.settings, localTime(zone, last).date);
  const finishedPerWeek = aim?.finishedPerWeek ?? null;
  const out = [...shop.pieces.values()].filter((piece) => {
    const ended = finishOf(piece)[0]?.at ?? piece.end?.at ?? Number.POSITIVE_INFINITY;
    return piece.begunAt !== null && piece.begunAt <= last && last < ended;
  });
  return {
    finishedPerWeek,
    difference: finishedPerWeek === null ? null : finished.count - finishedPerWeek,
    out: aim?.out ?? null,
    outNow: count(out),
  };
}

function lastWeeks(
  { rows, zone, firstWeekday }: WeekInput,
  start: CivilDate,
  thisWeek: Figure,
): WeekReview["lastWeeks"] {
  return Array.from({ length: WEEKS_SHOWN }, (_, index) => {
    const week = weekOf(addDays(start, 7 * (index - WEEKS_SHOWN + 1)), firstWeekday);
    const span = weekSpan(week.start, zone);
    const finished = rows.filter(({ finishedAt }) => finishedAt !== null && isWithin(span, finishedAt));
    return { week: week.name, start: week.start, ...(week.start === start ? thisWeek : count(finished)) };
  });
}
