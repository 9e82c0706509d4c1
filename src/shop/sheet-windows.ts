import { coatTimes, dustFreeAt, reachedAt, type Span } from "../cure/coat-times.ts";
import { AS_BY_SHEET } from "../cure/drying.ts";
import type { Coat, Preparation } from "../process/coat.ts";
import type { Step } from "../process/step.ts";
import { MINUTE, type Minutes } from "../time/instant.ts";
import { waitForCoat, waitForPass } from "./coat-wait.ts";
import type { LaidCoat } from "./laid-coat.ts";
import type { Hang } from "./shop.ts";

/** A window of a sheet, in minutes from the hands-on end of the coat: begun from `opens` on and before `shuts`. */
export interface SheetWindow {
  readonly opens: Minutes;
  readonly shuts: Minutes | null;
  readonly first: Preparation | null;
}

/** The windows that a coat still to be laid will give to a step upon it, by its sheet alone. */
export function windowsUpon(
  coat: Coat,
  step: Pick<Step, "coat" | "waitsFor">,
  flashOff: Minutes | null,
): readonly SheetWindow[] {
  const need = { laysCoat: step.coat !== null, stage: step.waitsFor, sentBack: null };
  return waitForCoat(layAtZero(coat, flashOff), need, 0).windows.map(inMinutes);
}

/** The same for the next pass of the step that lays it. */
export function windowsBetweenPasses(coat: Coat, flashOff: Minutes | null): readonly SheetWindow[] {
  return waitForPass(layAtZero(coat, flashOff), 0).windows.map(inMinutes);
}

/** Minutes from its hands-on end until dust can no longer settle in a coat. */
export function wetMinutes(coat: Coat, flashOff: Minutes | null): Minutes {
  // What stands for a moment there may be a length.
  return reachedAt(coat.stages, "dust-free") ?? dustFreeAt(coatTimes(coat, 0, flashOff)) / MINUTE;
}

/** Minutes from its hands-on end until a coat is dry-through; null: its sheet does not say. */
export function dryThroughMinutes(coat: Coat): Minutes | null {
  return coat.stages["dry-through"] ?? null;
}

/** A coat as if laid at instant 0, so that its moments are lengths. What is only known by feeling counts by the sheet. */
function layAtZero(coat: Coat, flashOff: Minutes | null): LaidCoat {
  return {
    name: coat.name,
    step: "",
    coat: coat.feelFirst ? { ...coat, feelFirst: false } : coat,
    hang: { ...hungAtZero, flashOff },
    drying: AS_BY_SHEET,
    times: coatTimes(coat, 0, flashOff),
  };
}

const hungAtZero: Hang = {
  pass: 1,
  takenAt: null,
  hungAt: 0,
  minutes: null,
  came: false,
  guessed: false,
  colour: null,
  flashOff: null,
  touches: [],
  preparedFirst: null,
};

function inMinutes({ opens, shuts, first }: Span): SheetWindow {
  return { opens: opens / MINUTE, shuts: shuts === null ? null : shuts / MINUTE, first };
}
