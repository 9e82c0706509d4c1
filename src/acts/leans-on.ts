import type { JournalEvent } from "../journal/event.ts";
import { setUpWords } from "../shop/set-up-words.ts";
import type { ActRecord, Shop } from "../shop/shop.ts";
import { findStep } from "../shop/steps.ts";

/**
 * Whether a later act would lose its footing without an earlier one: it is of the same piece, of a set-up or a setting of
 * that act, or gives it another time. To have been done at one station alone is no footing.
 */
export function leansOn(later: ActRecord, earlier: ActRecord, shop: Shop): boolean {
  return (
    later.tags.some((tag) => earlier.tags.includes(tag)) ||
    earlier.events.some((event) => later.events.some((other) => needsSetUp(other, event, shop))) ||
    settled(later).some((of) => settled(earlier).includes(of)) ||
    // Times after a clock was set right were given by it.
    earlier.kinds.includes("clock") ||
    later.events.some((event) => event.kind === "amended" && event.target === earlier.act)
  );
}

/** Whether an event is about the set-up that another readied or put away, or worked with what was readied. */
function needsSetUp(later: JournalEvent, earlier: JournalEvent, shop: Shop): boolean {
  if (earlier.station === null || later.station !== earlier.station) return false;
  if (earlier.kind !== "readied" && earlier.kind !== "put away") return false;
  if (later.kind === "readied" || later.kind === "put away") return true;
  return earlier.kind === "readied" && worksWith(later, earlier.setUp, shop);
}

/** Whether work on a piece is of a step that uses this set-up; a piece no longer read may well have used it. */
function worksWith(event: JournalEvent, setUp: string, { pieces }: Shop): boolean {
  if (event.tag === null || !("part" in event)) return false;
  const piece = pieces.get(event.tag);
  const step = piece && findStep(piece, event.step);
  if (step === undefined) return true;
  const colour = "colour" in event ? event.colour : null;
  return step.setUp !== null && event.part === "step" && setUpWords(step.setUp, colour) === setUp;
}

/** What an act settles: two settings of one kind are in an order. Days away and hours hang together. */
function settled({ events }: ActRecord): readonly string[] {
  return events.flatMap((event: JournalEvent) => {
    if (event.kind !== "settled") return [];
    const { of } = event.setting;
    return of === "back" ? ["away"] : of;
  });
}
