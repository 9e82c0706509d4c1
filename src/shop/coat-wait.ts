import { flashedAt, type Span } from "../cure/coat-times.ts";
import { windowsFrom } from "../cure/windows.ts";
import type { Stage } from "../process/coat.ts";
import type { Instant } from "../time/instant.ts";
import { feltBy, type LaidCoat } from "./laid-coat.ts";
import type { SentBack } from "./shop.ts";
import { type NotByClock, stageMoment } from "./stage-moment.ts";

/** What work needs of a coat below it. */
export interface Need {
  /** It lays a coat itself: then windows shut, and late ones ask for preparation. */
  readonly laysCoat: boolean;
  /** The stage it waits for; null: a coat waits for its window, other work for dry-hard. */
  readonly stage: Stage | null;
  /** The step was sent back to; null: not so. */
  readonly sentBack: SentBack | null;
}

/** When one coat lets work upon it begin. */
export interface CoatWait {
  readonly windows: readonly Span[];
  /** The windows' openings are not to be trusted: a touch must say so first. */
  readonly notByClock: NotByClock | null;
}

/** The windows one laid coat gives to work upon it, by its sheet and by what was felt. */
export function waitForCoat(laid: LaidCoat, need: Need, now: Instant): CoatWait {
  const stage = need.stage ?? (need.laysCoat ? null : "dry-hard");
  const windows = need.laysCoat ? coatingWindows(laid, need.sentBack) : null;
  if (stage !== null) return waitForStage(laid, windows, stage, now);
  return waitForWindow(laid, windows ?? [], now);
}

/** The windows of the sheet, or for a step sent back to that was levelled, counted from then, with no preparation. */
function coatingWindows({ times }: LaidCoat, sentBack: SentBack | null): readonly Span[] {
  if (sentBack === null || !countsAnew(times.windows, sentBack)) return times.windows;
  const later = Math.max(0, sentBack.at - times.laidAt);
  const recounted: Span[] = [];
  for (const { opens, shuts, first } of times.windows) {
    const before = recounted.at(-1);
    const from = before === undefined ? Math.max(opens, sentBack.at) : Math.max(opens, before.shuts ?? opens);
    const to = shuts === null ? null : shuts + later;
    if (to === null || from < to) {
      recounted.push({ opens: from, shuts: to, first: before === undefined ? null : first });
    }
  }
  return recounted;
}

/**
 * Whether a coat gives its windows anew to a step that the piece was sent back to: where the flaw was levelled, and
 * where a result sends it to a coat that shut for good, whose sheet knows no preparation.
 */
export function countsAnew(windows: readonly Span[], { at, levelled }: SentBack): boolean {
  const last = windows.at(-1);
  return levelled || (last !== undefined && last.shuts !== null && last.shuts <= at);
}

/** Work that waits for a stage: the first window opens with it instead of by itself, later ones as they are. */
function waitForStage(laid: LaidCoat, windows: readonly Span[] | null, stage: Stage, now: Instant): CoatWait {
  const moment = stageMoment(laid, stage, now);
  const [first, ...later] = windows ?? [];
  const plain: readonly Span[] =
    first === undefined ? [{ opens: laid.times.laidAt, shuts: null, first: null }] : [first, ...later];
  if (typeof moment === "string") return { windows: plain, notByClock: moment };
  const opened = plain.map((window, index) =>
    index === 0 ? { ...window, opens: Math.min(window.opens, moment) } : window,
  );
  return { windows: windowsFrom(opened, moment), notByClock: null };
}

/** Work that waits for the window itself. */
function waitForWindow(laid: LaidCoat, windows: readonly Span[], now: Instant): CoatWait {
  const { tacky, dryAt, wasTacky } = feltBy(laid.hang, now);
  if (tacky && !isWetOnWet(laid, windows, now)) return { windows, notByClock: "tacky" };
  if (laid.coat.feelFirst && dryAt === null) return { windows, notByClock: "feel first" };
  const felt = (laid.coat.feelFirst || wasTacky) && dryAt !== null;
  return { windows: felt ? windowsFrom(windows, dryAt) : windows, notByClock: null };
}

/** Whether a window is running that opened as the coat was laid and will shut: tacky is then what it should be. */
function isWetOnWet({ times }: LaidCoat, windows: readonly Span[], now: Instant): boolean {
  return windows.some(
    ({ opens, shuts }) => opens <= times.laidAt && now >= opens && shuts !== null && now < shuts,
  );
}

/**
 * Between two passes of one step the wait is the flash-off of the pass, whatever the coat's first window says; it
 * shuts, and later windows ask, as the coat's own do.
 */
export function waitForPass(laid: LaidCoat, now: Instant): CoatWait {
  const flashed = flashedAt(laid.coat, laid.times.laidAt, laid.hang.flashOff, laid.drying);
  const [first, ...later] = laid.times.windows;
  const shuts = first?.shuts ?? null;
  const next: readonly Span[] =
    shuts !== null && shuts <= flashed ? [] : [{ opens: flashed, shuts, first: null }];
  const { tacky, dryAt, wasTacky } = feltBy(laid.hang, now);
  const windows = [...next, ...later];
  if (tacky) return { windows, notByClock: "tacky" };
  return { windows: wasTacky && dryAt !== null ? windowsFrom(windows, dryAt) : windows, notByClock: null };
}
