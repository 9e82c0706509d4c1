import type { LateWhy, NoTime, PieceForecast, PlannedPiece } from "../plan/plan-answer.ts";
import { localTime } from "../time/civil.ts";
import type { Instant } from "../time/instant.ts";
import { layOutWithRest } from "./lay-out.ts";
import { plainText } from "./plain-text.ts";
import { sayCount, sayList } from "./say-list.ts";
import { sayPlannedPiece, sayPlannedPieces } from "./say-planned-row.ts";
import { sayClock, sayDate, sayWait } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/** When each piece is finished; below them those that are late with why, and those that found no time with the reason. */
export function sayForecasts(
  pieces: readonly PieceForecast[],
  speech: Speech,
  columns: number | null,
): string[] {
  const finished = pieces.filter(({ lastHandsOn }) => lastHandsOn !== null);
  const late = pieces.filter(({ late }) => late !== null);
  return [
    ...section(
      "Finished, and dry-through",
      layOutWithRest(
        finished.map((forecast) => ({
          cells: [nameOf(forecast), ...sayFinish(forecast, speech)],
          rest: sayPromise(forecast, speech),
        })),
        columns,
      ).flat(),
    ),
    ...section("Late", together(late.map((forecast) => [forecast.piece, sayLate(forecast, speech)]))),
    ...section(
      "Not finished",
      together(
        pieces.flatMap(({ piece, noTime, due, late }) => {
          const promised = due === null || late !== null ? "" : `, promised ${sayDue(due, speech)}`;
          return noTime === null ? [] : [[piece, `${sayNoTime(noTime)}${promised}`] as const];
        }),
      ),
    ),
  ];
}

/** Those not tagged yet tell their process too. */
function nameOf({ piece }: PieceForecast): string {
  return plainText(
    piece.tag === null ? `${sayPlannedPiece(piece)} ${piece.process}` : sayPlannedPiece(piece),
  );
}

/** Last hands-on and dry-through; a dash where no sheet says. */
function sayFinish({ lastHandsOn, dryThrough }: PieceForecast, speech: Speech): string[] {
  const through = dryThrough !== null && dryThrough <= speech.now ? "already" : sayMoment(dryThrough, speech);
  return [sayMoment(lastHandsOn, speech), through];
}

/** `promised Fri, kept` */
function sayPromise({ due, late }: PieceForecast, speech: Speech): string {
  return due === null ? "" : `promised ${sayDue(due, speech)}, ${late === null ? "kept" : "late"}`;
}

function sayMoment(at: Instant | null, speech: Speech): string {
  return at === null ? "-" : sayClock(at, speech);
}

/** The day a promise ends with. */
function sayDue(due: Instant, speech: Speech): string {
  return sayDate(localTime(speech.zone, due - 1).date, speech);
}

/**
 * By how much a piece is late, and what stands in its way.
 *
 * @example sayLate(forecast, speech) // "22 h late for Thu: alone it takes until Fri 19:10 in these bench hours"
 */
function sayLate({ late, due }: PieceForecast, speech: Speech): string {
  const promised = due === null ? "" : ` for ${sayDue(due, speech)}`;
  const by = late?.minutes == null ? `late${promised}` : `${sayWait(late.minutes)} late${promised}`;
  return plainText(late === null ? by : `${by}: ${sayWhyLate(late.why, speech)}`);
}

/** What stands in the way of a piece that is late. */
export function sayWhyLate(why: LateWhy, speech: Speech): string {
  switch (why.because) {
    case "date passed":
      return "its date has passed";
    case "waits":
      return `its own work and waits alone take ${sayUntil(why, speech)}`;
    case "hours":
      return `alone it takes ${sayUntil(why, speech)} in these bench hours`;
    case "air":
      return `the air is too cold or damp for its coats at times: alone it takes ${sayUntil(why, speech)}`;
    case "hook":
      return `no hook is free at the ${why.place}`;
    case "hands":
      return why.others.length === 0
        ? "the hands are needed for others first"
        : `the hands are needed for others first; without ${sayList(why.others.map(sayPlannedPiece), "or")} it is on time`;
  }
}

function sayUntil(
  { soonest }: Extract<LateWhy, { because: "waits" | "hours" | "air" }>,
  speech: Speech,
): string {
  return soonest === null ? "longer than the days looked at" : `until ${sayClock(soonest, speech)}`;
}

/** Why a piece is not finished in the days looked at. */
export function sayNoTime(noTime: NoTime): string {
  switch (noTime.because) {
    case "measure first":
      return plainText(`${noTime.step} waits for a measurement: ${sayList(noTime.what)}`);
    case "touch first":
      return plainText(`${noTime.step} opens by a touch alone: feel it`);
    case "air":
      return plainText(`${noTime.step}: no bench hours in which the air is fit for ${noTime.coat ?? "it"}`);
    case "too long":
      return noTime.longest === 0
        ? "no bench is open in the days looked at"
        : plainText(
            `${noTime.step} needs ${sayWait(noTime.minutes)} at a stretch, and no bench session is longer than ${sayWait(noTime.longest)}`,
          );
    case "beyond":
      return `not within the ${sayCount(noTime.days, "day")} looked at`;
  }
}

/** A line for each thing said, with all the pieces it is said of. */
function together(said: readonly (readonly [PlannedPiece, string])[]): string[] {
  const pieces = new Map<string, PlannedPiece[]>();
  for (const [piece, text] of said) pieces.set(text, [...(pieces.get(text) ?? []), piece]);
  return [...pieces].map(([text, those]) => `  ${sayPlannedPieces(those)}: ${text}`);
}

function section(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ["", title, ...lines];
}
