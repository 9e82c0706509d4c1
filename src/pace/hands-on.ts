import { workedMinutes } from "../shop/forgotten-minutes.ts";
import { handsOf } from "../shop/hands.ts";
import { handsAt } from "../shop/settings-at.ts";
import type { Piece, Settings } from "../shop/shop.ts";
import { findStep } from "../shop/steps.ts";
import type { BenchHours } from "../time/bench-hours.ts";
import { localTime } from "../time/civil.ts";
import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { sessionsBetween } from "../time/sessions.ts";
import type { Zone } from "../time/zone.ts";
import { count, isWithin, type Span, tagsOf } from "./span.ts";
import type { HandsOnUsed } from "./week-review.ts";
import type { WorkDone } from "./work-done.ts";

/** What a bench's open minutes lean on. */
interface Bench {
  readonly hours: BenchHours;
  readonly zone: Zone;
  readonly settings: Pick<Settings, "hands">;
}

/** Hands-on minutes of the work that ended in a week, against the minutes the bench was open in it. */
export function handsOnUsed(
  work: readonly WorkDone[],
  pieces: readonly Piece[],
  week: Span,
  bench: Bench,
  now: Instant,
): HandsOnUsed {
  const known = work.filter(({ minutes }) => minutes !== null);
  const soFar = Math.min(Math.max(now, week.from), week.to);
  return {
    minutes: Math.round(known.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0)),
    tags: tagsOf(known),
    open: openMinutes({ from: week.from, to: soFar }, bench),
    left: openMinutes({ from: soFar, to: week.to }, bench),
    unknown: count(work.filter(({ minutes }) => minutes === null)),
    guessed: count(known.filter(({ guessed }) => guessed)),
    halfDone: halfDone(pieces, week),
  };
}

/** Work put down in a week that nobody has gone on with since. */
function halfDone(pieces: readonly Piece[], week: Span): HandsOnUsed["halfDone"] {
  const lying = pieces.flatMap((piece) =>
    piece.end !== null
      ? []
      : handsOf(piece)
          .lying.filter(({ leftAt }) => leftAt !== null && isWithin(week, leftAt))
          .map(({ step, minutesBefore }) => ({
            tag: piece.tag,
            minutes: workedMinutes(findStep(piece, step), minutesBefore) ?? 0,
          })),
  );
  return { ...count(lying), minutes: Math.round(lying.reduce((sum, { minutes }) => sum + minutes, 0)) };
}

/** Minutes of a span in which the bench is open, for each pair of hands at work that day. */
function openMinutes(span: Span, { hours, zone, settings }: Bench): Minutes {
  const open = sessionsBetween(hours, zone, span.from, span.to).map(({ opens, closes }) => {
    const length = Math.min(closes, span.to) - Math.max(opens, span.from);
    return (length / MINUTE) * handsAt(settings, localTime(zone, opens).date);
  });
  return Math.round(open.reduce((sum, minutes) => sum + minutes, 0));
}
