import type { PlannedPiece, PlannedRow, PlannedSession } from "../plan/plan-answer.ts";
import { localTime, minuteOfDay } from "../time/civil.ts";
import type { Instant } from "../time/instant.ts";
import { plainText } from "./plain-text.ts";
import { rowTags, sayList } from "./say-list.ts";
import { sayClockOfDay, sayFullDay, sayWait } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/** One row of a timetable as its cells; list and card lay them out each in their own way. */
export interface PlannedRowWords {
  /** `18:42` */
  readonly from: string;
  /** `13 perch walker`, `16-18`, `new 1` */
  readonly who: string;
  /** `base colours, ochre`, `scuff for first clear`, `tag it, shape` */
  readonly what: string;
  /** `8 min`, `25 of 40 min` */
  readonly minutes: string;
  /** `melt lead 20 min first`; nothing where none is needed or it stands already. */
  readonly setUp: string;
  readonly station: string;
  /** `measure wood moisture first`, or nothing. */
  readonly measure: string;
  /** `look after 5 and 15 min`, or nothing. */
  readonly look: string;
  /** `begin by 19:34`, `do not leave it`, or nothing. */
  readonly by: string;
  /** `in hand`, or nothing. */
  readonly inHand: string;
  /** `finishes 13`, or nothing. */
  readonly finishes: string;
}

/** A row of a timetable, as its cells. */
export function sayPlannedRow(row: PlannedRow, speech: Speech): PlannedRowWords {
  const { setUp, looks, measures, finishes, pieces } = row;
  return {
    from: clockOnly(row.from, speech),
    who: sayPlannedPieces(pieces),
    what: plainText(sayPlannedWork(row)),
    minutes: sayHowLong(row),
    setUp:
      setUp === null || setUp.minutes === 0 ? "" : plainText(`${setUp.what} ${sayWait(setUp.minutes)} first`),
    station: plainText(row.station),
    measure: measures.length === 0 ? "" : plainText(`measure ${sayList(measures)} first`),
    look: looks.length === 0 ? "" : `look after ${sayList(looks)} min`,
    by: sayBy(row, speech),
    inHand: row.inHand ? "in hand" : "",
    finishes:
      finishes.length === 0
        ? ""
        : finishes.length === pieces.length
          ? "finished"
          : `finishes ${sayPlannedPieces(finishes)}`,
  };
}

/** That a window would shut before the bench opens again. */
function sayBy({ shuts }: PlannedRow, speech: Speech): string {
  if (shuts === null) return "";
  return shuts.by === null ? "do not leave it" : `begin by ${clockOnly(shuts.by, speech)}`;
}

function sayHowLong({ minutes, ofMinutes }: PlannedRow): string {
  return ofMinutes === null ? sayWait(minutes) : `${minutes} of ${ofMinutes} min`;
}

/**
 * Pieces as a timetable names them.
 *
 * @example sayPlannedPieces([13]) // "13 perch walker"
 * @example sayPlannedPieces([16, 17, 18, new 1]) // "16-18, new 1"
 */
export function sayPlannedPieces(pieces: readonly PlannedPiece[]): string {
  const [only, ...more] = pieces;
  if (only !== undefined && more.length === 0) return sayPlannedPiece(only);
  const tags = pieces.flatMap(({ tag }) => (tag === null ? [] : [tag]));
  const news = pieces.flatMap(({ nth }) => (nth === null ? [] : [nth]));
  return [
    ...(tags.length > 0 ? [rowTags(tags)] : []),
    ...(news.length > 0 ? [`new ${rowTags(news)}`] : []),
  ].join(", ");
}

/** `13 perch walker`; one not tagged yet `new 2` */
export function sayPlannedPiece({ tag, nth, name }: PlannedPiece): string {
  return tag === null ? `new ${nth}` : plainText(`${tag} ${name}`);
}

/** The head of a bench session. `Tue 14 Apr, 18:00 to 21:00, 35 min free` */
export function sayPlannedSession(session: PlannedSession, speech: Speech): string {
  const { opens, closes, outsideHours, rows, free } = session;
  const from = Math.max(opens, speech.now);
  const day = sayFullDay(localTime(speech.zone, from).date);
  if (outsideHours) return `${day}, in hand outside bench hours`;
  const hours = `${day}, ${clockOnly(from, speech)} to ${clockOnly(closes, speech)}`;
  if (rows.length === 0) return `${hours}, nothing to do`;
  return free < 1 ? hours : `${hours}, ${sayWait(free)} free`;
}

/** What must be put away before the bench shuts, a line each. `put away melt lead, 5 min, by 21:00` */
export function sayPutAway({ putAway }: PlannedSession, speech: Speech): string[] {
  return putAway.map(({ what, minutes, by }) =>
    plainText(`put away ${what}, ${sayWait(minutes)}, by ${clockOnly(by, speech)}`),
  );
}

/** The time of day alone: the day stands above. */
function clockOnly(at: Instant, { zone, clock24 }: Speech): string {
  return sayClockOfDay(minuteOfDay(localTime(zone, at)), clock24);
}

function sayPlannedWork({ step, part, preparation, colour, tagsNew, pieces }: PlannedRow): string {
  const work = colour === null ? step : `${step}, ${colour}`;
  switch (part) {
    case "preparation":
      return `${preparation ?? "prepare"} for ${step}`;
    case "mend":
      return `level and lay again: ${work}`;
    case "again":
      return `${work} again`;
    case "step":
      return tagsNew ? `tag ${pieces.length === 1 ? "it" : "them"}, ${work}` : work;
  }
}
