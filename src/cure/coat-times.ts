import { type Coat, type Preparation, STAGES, type Stage } from "../process/coat.ts";
import type { Instant, Minutes } from "../time/instant.ts";
import { AS_BY_SHEET, type Drying } from "./drying.ts";

/** A window of one laid coat as moments: `opens <= moment < shuts`. */
export interface Span {
  readonly opens: Instant;
  /** The first moment that is too late; null: never shuts. */
  readonly shuts: Instant | null;
  /** The work asked for before the next coat in this window. */
  readonly first: Preparation | null;
}

/** What a coat laid at a moment will do and when; Infinity: never, in the air it hangs in. */
export interface CoatTimes {
  readonly laidAt: Instant;
  /** `wet` at the moment it is laid, and the stages its sheet names. */
  readonly reaches: Readonly<Partial<Record<Stage, Instant>>>;
  /** By opening, not overlapping. Never empty: a coat that names none opens for the next one when dry-hard. */
  readonly windows: readonly Span[];
}

/**
 * When a coat reaches its stages and when its windows open and shut, in the air it hangs in. Windows go by the cure,
 * both their ends: a cold night that does not count puts off the shutting too.
 *
 * @param laidAt end of the hands-on work, from which every time on a sheet counts
 * @param flashOff minutes given to this very pass; null: the coat's own
 * @param drying the air and pace it dries at; left out: as its sheet says
 *
 * A varnish with a window of 4 h to 24 h, laid Mon 19:04: opens Mon 23:04, shuts Tue 19:04.
 */
export function coatTimes(
  coat: Coat,
  laidAt: Instant,
  flashOff: Minutes | null,
  drying: Drying = AS_BY_SHEET,
): CoatTimes {
  const reach = (minutes: Minutes) => drying.air.reach(coat, laidAt, minutes * drying.factor);
  const reaches: Partial<Record<Stage, Instant>> = { wet: laidAt };
  for (const stage of STAGES) {
    const minutes = coat.stages[stage];
    if (minutes !== undefined) reaches[stage] = reach(minutes);
  }
  const windows: Span[] = [];
  for (const { opens, shuts, first } of coat.windows) {
    const from =
      opens === "flash-off"
        ? flashedAt(coat, laidAt, flashOff, drying)
        : opensAt(coat, laidAt, opens, drying);
    const to = shuts === null ? null : reach(shuts);
    // A flash-off given longer than its window leaves nothing of the window.
    if (to === null || from < to) windows.push({ opens: from, shuts: to, first });
  }
  if (coat.windows.length === 0) {
    windows.push({ opens: reachedAt(reaches, "dry-hard") ?? laidAt, shuts: null, first: null });
  }
  return { laidAt, reaches, windows };
}

/** When a coat has flashed off, by the minutes given to its pass or, where there are none, its own. */
export function flashedAt(coat: Coat, laidAt: Instant, flashOff: Minutes | null, drying: Drying): Instant {
  return opensAt(coat, laidAt, flashOff ?? coat.flashOff, drying);
}

/** A coat found dry early may still hold what must leave it before the next one goes on. */
function opensAt(coat: Coat, laidAt: Instant, minutes: Minutes, { air, factor }: Drying): Instant {
  return air.reach(coat, laidAt, minutes * Math.max(1, factor));
}

/**
 * When a stage is reached: when the one that counts for it is.
 *
 * @returns null when the sheet names no stage at all: by the clock nothing is waited for
 */
export function reachedAt(reaches: CoatTimes["reaches"], stage: Stage): Instant | null {
  const counts = stageThatCounts(reaches, stage);
  return counts === null ? null : (reaches[counts] ?? null);
}

/**
 * The stage that counts for one: itself, or where the sheet does not name it the next later one that it names, and where
 * there is none the last it names.
 *
 * @param named what is said of each stage that the sheet names
 * @returns null when it names none
 */
export function stageThatCounts(
  named: Readonly<Partial<Record<Stage, unknown>>>,
  stage: Stage,
): Stage | null {
  for (const later of STAGES.slice(STAGES.indexOf(stage))) if (named[later] !== undefined) return later;
  return STAGES.findLast((other) => other !== "wet" && named[other] !== undefined) ?? null;
}

/** When dust can no longer settle in a coat: dust-free, or for a sheet without stages when its first window opens. */
export function dustFreeAt({ reaches, windows, laidAt }: CoatTimes): Instant {
  return reachedAt(reaches, "dust-free") ?? windows[0]?.opens ?? laidAt;
}
