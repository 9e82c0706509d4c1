import type { NewEvent } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import { stepState } from "../shop/step-state.ts";
import { checkTime } from "./check-time.ts";
import { checkText, checkWhole, firstRefusal } from "./check-value.ts";
import { contextAt, type DecideContext } from "./context.ts";
import { type Decision, decided } from "./decision.ts";
import { findPieces, refuseEnded } from "./find-pieces.ts";
import { matchStep } from "./match-step.ts";
import { isRefused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/** A mend of more than a day's work is a slip of the keys. */
const LONGEST_MEND = 24 * 60;

/**
 * Work that a flaw needed, done now, and the step to go on from: that step and all that follows are open again. A
 * finished piece reopens; what was in hand is in hand no longer.
 *
 * Refuses a step to go on from that is still blocked, and pieces scrapped or gone.
 */
export function decideMend(request: ActOf<"mend">, shop: Shop, context: DecideContext): Decision {
  const pieces = findPieces(request.tags, shop);
  if (isRefused(pieces)) return pieces;
  const { what, minutes } = request;
  const unfit = firstRefusal([
    checkText("what was done", what),
    checkWhole("minutes", minutes, 0, LONGEST_MEND),
    refuseEnded(pieces.filter(({ end }) => end?.how !== "finished")),
  ]);
  if (unfit) return unfit;
  const events: NewEvent[] = [];
  for (const piece of pieces) {
    const goOnFrom = matchStep(piece, request.goOnFrom);
    if (isRefused(goOnFrom)) return goOnFrom;
    const time = checkTime(request.at, [{ piece, concern: "piece" }], shop);
    if (isRefused(time)) return time;
    const state = stepState(piece, goOnFrom.name, contextAt(context, time.at));
    if (state.is === "blocked") {
      return refuse({ code: "blocked", tag: piece.tag, step: goOnFrom.name, by: state.by });
    }
    events.push({
      kind: "mended",
      at: time.at,
      tag: piece.tag,
      station: null,
      what: what.trim(),
      minutes,
      goOnFrom: goOnFrom.name,
    });
  }
  return decided(events, shop);
}
