import type { JournalEvent } from "../journal/event.ts";
import type { Instant } from "../time/instant.ts";
import { hang } from "./fold-hang.ts";
import { leave, take } from "./fold-work.ts";
import { handOn } from "./hands.ts";
import { isDone, liveHangs, passesLeft, workOf } from "./passes.ts";
import type { Misfit, PieceDraft } from "./piece-draft.ts";
import { changeRoute } from "./route.ts";
import { sendBack } from "./send-back.ts";
import type { Piece } from "./shop.ts";
import { findStep } from "./steps.ts";

type Of<K extends JournalEvent["kind"]> = Extract<JournalEvent, { kind: K }>;

/** Folds one more event into a piece. What does not fit leaves it untouched. */
export function foldPieceEvent(piece: PieceDraft, event: JournalEvent): Misfit {
  switch (event.kind) {
    case "tagged":
      return "it was tagged before";
    case "changed":
      return closeUp(piece, event.at, change(piece, event));
    case "routed":
      return closeUp(piece, event.at, route(piece, event));
    case "taken":
      return take(piece, event);
    case "left":
      return leave(piece, event);
    case "hung":
      return closeUp(piece, event.at, hang(piece, event));
    case "touched":
      return touch(piece, event);
    case "moved":
      return move(piece, event);
    case "measured":
      piece.measured.set(event.what, { value: event.value, unit: event.unit, at: event.at });
      if (event.what === "weight" && event.unit === "g") {
        piece.weighed = [...piece.weighed, { grams: event.value, at: event.at }];
      }
      return null;
    case "mended":
      return mend(piece, event);
    case "scrapped":
    case "gone":
      return end(piece, event);
    case "noted":
      piece.notes = [...piece.notes, { at: event.at, text: event.text }];
      return null;
    // Both are in force already: live events have them applied.
    case "amended":
    case "undone":
      return null;
    case "readied":
    case "put away":
    case "ticked":
    case "settled":
    case "clock":
      return `"${event.kind}" is not said of a piece`;
    default:
      return sayUnknown(event);
  }
}

/** A kind written by a newer program; that no known one is left over, the type says. */
function sayUnknown(event: never): Misfit {
  return `nothing is known of "${(event as JournalEvent).kind}"`;
}

function change(piece: PieceDraft, event: Of<"changed">): Misfit {
  piece.name = event.name ?? piece.name;
  piece.scheme = event.scheme ?? piece.scheme;
  piece.weight = event.weight ?? piece.weight;
  // Null is something said: no due date, no price, for nobody.
  if (event.due !== undefined) piece.due = event.due;
  if (event.price !== undefined) piece.price = event.price;
  if (event.for !== undefined) piece.for = event.for;
  return null;
}

function route(piece: PieceDraft, { change }: Of<"routed">): Misfit {
  if (piece.end !== null) return `it is ${piece.end.how}`;
  const changed = change.do === "put" ? null : change.step;
  if (changed !== null && (handOn(piece, changed) || liveHangs(workOf(piece, changed)).length > 0)) {
    return `"${changed}" is begun`;
  }
  const routed = changeRoute(piece, piece.definition, change);
  if (typeof routed === "string") return routed;
  piece.route = routed.route;
  piece.coats = routed.coats;
  return null;
}

function touch(piece: PieceDraft, { step, pass, at, found }: Of<"touched">): Misfit {
  const work = workOf(piece, step);
  const touched = work.hangs.find((hung) => hung.pass === pass);
  if (touched === undefined) return `"${step}" has no pass ${pass} to touch`;
  const felt = { ...touched, touches: [...touched.touches, { at, found }] };
  piece.work.set(step, { ...work, hangs: work.hangs.map((hung) => (hung === touched ? felt : hung)) });
  return null;
}

function move(piece: PieceDraft, event: Of<"moved">): Misfit {
  // A scrapped piece may still hang somewhere in the shop.
  if (isAway(piece) && piece.end?.how !== "scrapped") return `it is ${piece.end?.how}`;
  piece.place = event.place;
  piece.hungAt = [...piece.hungAt, { at: event.at, place: event.place }];
  return null;
}

function mend(piece: PieceDraft, { at, what, minutes, goOnFrom }: Of<"mended">): Misfit {
  if (isAway(piece)) return `it is ${piece.end?.how}`;
  if (findStep(piece, goOnFrom) === undefined) return `its route has no step "${goOnFrom}"`;
  piece.mends = [...piece.mends, { at, what, minutes, goOnFrom }];
  sendBack(piece, goOnFrom, { at, levelled: true });
  return null;
}

function end(piece: PieceDraft, event: Of<"scrapped"> | Of<"gone">): Misfit {
  if (isAway(piece)) return `it is ${piece.end?.how}`;
  const { at } = event;
  const finishedAt = piece.end?.at ?? null;
  piece.hand = null;
  piece.alsoLeft = [];
  piece.place = null;
  piece.end =
    event.kind === "scrapped"
      ? { how: "scrapped", at, finishedAt, why: event.why }
      : { how: event.how, at, finishedAt, price: event.price };
  return null;
}

/** No longer in work nor on the shelf: scrapped, sold, given or kept. */
function isAway(piece: Piece): boolean {
  return piece.end !== null && piece.end.how !== "finished";
}

/** Marks the steps whose passes are now all hung, and ends a piece whose steps are all done. */
function closeUp(piece: PieceDraft, at: Instant, misfit: Misfit): Misfit {
  if (misfit !== null) return misfit;
  for (const step of piece.route) {
    const work = piece.work.get(step.name);
    if (work === undefined || work.completed || work.hangs.length === work.voided) continue;
    if (passesLeft(piece, step) === 0) piece.work.set(step.name, { ...work, completed: true });
  }
  const isFinished = piece.route.length > 0 && piece.route.every((step) => isDone(piece, step));
  if (piece.end === null && isFinished) piece.end = { how: "finished", at };
  return null;
}
