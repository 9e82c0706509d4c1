import type { WhatIf } from "../plan/ahead/what-if.ts";
import type {
  PieceForecast,
  PlanAnswer,
  PlannedPiece,
  PlannedRow,
  PlannedSession,
} from "../plan/plan-answer.ts";
import { localTime } from "../time/civil.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import { isoMoment } from "../words/iso-moment.ts";
import { sayNoTime, sayWhyLate } from "../words/say-forecast.ts";
import type { Speech } from "../words/speech.ts";

/**
 * The answer of `plan` for other programs: names as on the screen, moments in ISO 8601 with the shop's offset, durations
 * in minutes. Pieces not tagged yet have a number of their own, `new`, and no tag.
 */
export function planJson(answer: PlanAnswer, speech: Speech): object {
  const { quality, sessions, pieces, changes, whatIf } = answer;
  return {
    at: isoMoment(answer.at, speech.zone),
    days: answer.days,
    basis: quality.basis,
    proven: quality.proven,
    gapPercent: quality.gapPercent,
    broken: quality.broken,
    sessions: sessions.map((session) => sessionJson(session, speech)),
    pieces: pieces.map((forecast) => forecastJson(forecast, speech)),
    whatIf: whatIf === null ? null : whatIfJson(whatIf),
    changes: changes && {
      finishes: changes.finishes.map((one) => ({
        ...nameJson(one.piece),
        without: moment(one.without, speech),
        with: moment(one.with, speech),
      })),
      newlyLate: changes.newlyLate.map(nameJson),
      nowOnTime: changes.nowOnTime.map(nameJson),
      amends: changes.amends,
    },
  };
}

function sessionJson({ opens, closes, outsideHours, rows, putAway, free }: PlannedSession, speech: Speech) {
  return {
    date: localTime(speech.zone, opens).date,
    opens: moment(opens, speech),
    closes: moment(closes, speech),
    outsideHours,
    rows: rows.map((row) => rowJson(row, speech)),
    putAway: putAway.map((one) => ({ ...one, by: moment(one.by, speech) })),
    free,
  };
}

function rowJson({ pieces, from, until, shuts, finishes, ...row }: PlannedRow, speech: Speech) {
  return {
    pieces: pieces.map(nameJson),
    ...row,
    from: moment(from, speech),
    until: moment(until, speech),
    shuts: shuts && { by: moment(shuts.by, speech) },
    finishes: finishes.map(nameJson),
  };
}

function forecastJson({ piece, lastHandsOn, dryThrough, due, late, noTime }: PieceForecast, speech: Speech) {
  return {
    ...nameJson(piece),
    finish: moment(lastHandsOn, speech),
    dryThrough: moment(dryThrough, speech),
    due: due === null ? null : localTime(speech.zone, due - 1).date,
    late: late && { minutes: late.minutes, because: late.why.because, text: sayWhyLate(late.why, speech) },
    noTime: noTime && { because: noTime.because, text: sayNoTime(noTime) },
  };
}

function whatIfJson({ days, added }: WhatIf) {
  return {
    days,
    added: added.map(({ count, definition, due }) => ({ count, process: definition.name, due })),
  };
}

function nameJson({ tag, nth, name, process }: PlannedPiece) {
  return { tag, new: nth, name, process };
}

/** To the minute: plans know no shorter time. */
function moment(at: Instant | null, { zone }: Speech): string | null {
  return at === null ? null : isoMoment(Math.floor(at / MINUTE) * MINUTE, zone);
}
