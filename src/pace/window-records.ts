import { type Span as CoatWindow, coatTimes } from "../cure/coat-times.ts";
import { coatsBefore, stepsAfter } from "../process/order.ts";
import type { Step } from "../process/step.ts";
import { countsAnew } from "../shop/coat-wait.ts";
import { handOn } from "../shop/hands.ts";
import { dryingOf } from "../shop/laid-coat.ts";
import { isDone, workOf } from "../shop/passes.ts";
import type { Hang, Piece, SentBack } from "../shop/shop.ts";
import type { Instant, Minutes } from "../time/instant.ts";
import type { WindowRecord } from "./week-review.ts";

const NEVER = Number.POSITIVE_INFINITY;

/** A piece sent back by a mend or a result: `to` and all that follows are to do again. */
interface SendBack extends SentBack {
  readonly to: string;
  readonly again: ReadonlySet<string>;
}

/**
 * What became of every window of a piece that has shut by now or was used, in no order. A window counts where a next
 * coat was due upon its coat: it is kept when that coat was taken before the last window that asks no preparation shut
 * (where all ask for some, the last), and missed when it was not. A coat that a mend took back before its window shut
 * counts for neither, nor one laid before the piece was tagged, nor one whose windows never shut.
 */
export function windowRecords(piece: Piece, now: Instant): readonly WindowRecord[] {
  const sendBacks = sendBacksOf(piece);
  return piece.route.flatMap((laid) => {
    if (laid.coat === null) return [];
    const nexts = piece.route.filter(
      (next) => next.coat !== null && coatsBefore(piece.route, next.name).includes(laid),
    );
    return finalPasses(piece, laid, sendBacks).flatMap(({ hang, ends }) =>
      nexts.flatMap((next) => recordsOf(piece, { laid, next, hang, ends }, sendBacks, now)),
    );
  });
}

function sendBacksOf(piece: Piece): readonly SendBack[] {
  const mends = piece.mends.map(({ at, goOnFrom }) => ({ at, to: goOnFrom, levelled: true }));
  const results = piece.sentBack.map(({ at, to }) => ({ at, to, levelled: false }));
  return [...mends, ...results]
    .sort((a, b) => a.at - b.at)
    .map((back) => ({ ...back, again: new Set([back.to, ...stepsAfter(piece.route, back.to)]) }));
}

/** The passes a next coat was due upon, each with the moment it was taken back or the piece ended unfinished. */
function finalPasses(
  piece: Piece,
  step: Step,
  sendBacks: readonly SendBack[],
): { hang: Hang; ends: Instant }[] {
  const { hangs } = workOf(piece, step.name);
  return hangs.flatMap((hang, index) => {
    const ends = sendBacks.find(({ at, again }) => at >= hang.hungAt && again.has(step.name))?.at ?? NEVER;
    const following = hangs[index + 1];
    // Of several colours the window is the last one's: between them there is only the flash-off.
    const another =
      following === undefined ? ends === NEVER && !isDone(piece, step) : following.hungAt < ends;
    return hang.came || another ? [] : [{ hang, ends: Math.min(ends, lostAt(piece)) }];
  });
}

/** When nothing more was due on a piece, finished or not. */
function lostAt(piece: Piece): Instant {
  return piece.end?.at ?? NEVER;
}

/** One coat and the next due upon it: one record, and one more each time the next is to do again while the coat stays. */
function recordsOf(
  piece: Piece,
  link: { readonly laid: Step; readonly next: Step; readonly hang: Hang; readonly ends: Instant },
  sendBacks: readonly SendBack[],
  now: Instant,
): WindowRecord[] {
  const { laid, next, hang, ends } = link;
  const coat = piece.coats[laid.coat ?? ""];
  if (coat === undefined) return [];
  const again = sendBacks.filter(({ at, to }) => to === next.name && at >= hang.hungAt && at < ends);
  const starts: readonly (SendBack | null)[] = [null, ...again];
  return starts.flatMap((back, index) => {
    const since = back?.at ?? hang.hungAt;
    const until = starts[index + 1]?.at ?? ends;
    const windowsSince = (start: Instant) =>
      coatTimes(coat, start, hang.flashOff, dryingOf(piece, coat, hang)).windows;
    const own = windowsSince(hang.hungAt);
    // A step gone on from after a mend counts its window from the mend.
    const windows = back !== null && countsAnew(own, back) ? windowsSince(since) : own;
    const shut = lastChance(windows);
    // What had shut before a result sent the piece back could not be kept any more.
    if (shut === null || (back !== null && shut <= since)) return [];
    const begun = beginnings(piece, next).find(({ at }) => at >= since && at < until);
    const over = begun !== undefined || (shut !== null && shut < until && shut <= now);
    if (!over) return [];
    const kept = begun !== undefined && begun.at < shut;
    const minutes = kept ? 0 : preparationMinutes(piece, next, begun?.hang ?? null, windows, shut);
    const taken = begun?.at ?? null;
    return [{ tag: piece.tag, coat: coat.name, laid: laid.name, next: next.name, shut, taken, minutes }];
  });
}

function lastChance(windows: readonly CoatWindow[]): Instant | null {
  const free = windows.findLast(({ first }) => first === null) ?? windows.at(-1);
  const shut = free?.shuts ?? null;
  // In air too cold for the coat it never shuts.
  return shut === Number.POSITIVE_INFINITY ? null : shut;
}

/** Every time a step was begun, oldest first; its hang is null while it is in hand or lies half-done. */
function beginnings(piece: Piece, step: Step): { at: Instant; hang: Hang | null }[] {
  const hung = workOf(piece, step.name).hangs.map((hang) => ({ at: hang.takenAt ?? hang.hungAt, hang }));
  const hand = handOn(piece, step.name);
  return hand === null || hand.part === "preparation" ? hung : [...hung, { at: hand.since, hang: null }];
}

/** What a missed window costs: the preparation done, or, before the next coat is begun, the one now asked for. */
function preparationMinutes(
  piece: Piece,
  next: Step,
  hang: Hang | null,
  windows: readonly CoatWindow[],
  shut: Instant,
): Minutes {
  if (hang !== null) return Math.round(hang.preparedFirst ?? 0);
  const asked =
    windows.find(({ opens, first }) => opens >= shut && first !== null)?.first?.handsOn.likely ?? 0;
  return Math.round(workOf(piece, next.name).prepared?.minutes ?? asked);
}
