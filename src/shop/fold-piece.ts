import type { JournalEvent } from "../journal/event.ts";
import type { Instant } from "../time/instant.ts";
import { hang } from "./fold-hang.ts";
import { findStep, leave, take } from "./fold-work.ts";
import { handOn } from "./hands.ts";
import { isDone, liveHangs, passesLeft, workOf } from "./passes.ts";
import { changeRoute } from "./route.ts";
import { sendBack } from "./send-back.ts";
import type { Piece, StepWork } from "./shop.ts";

/**
 * A piece after one more event of it.
 *
 * @returns the piece, or in words why the event does not fit it: then the piece stays as it was
 */
export function foldPieceEvent(piece: Piece, event: JournalEvent): Piece | string {
  const { kind } = event;
  switch (kind) {
    case "tagged":
      return "it was tagged before";
    case "changed":
      return closeUp(change(piece, event), event.at);
    case "routed": {
      const routed = route(piece, event);
      return typeof routed === "string" ? routed : closeUp(routed, event.at);
    }
    case "taken":
      return take(piece, event);
    case "left":
      return leave(piece, event);
    case "hung": {
      const hung = hang(piece, event);
      return typeof hung === "string" ? hung : closeUp(hung, event.at);
    }
    case "touched":
      return touch(piece, event);
    case "moved":
      // A scrapped piece may still hang somewhere in the shop.
      return isAway(piece) && piece.end?.how !== "scrapped"
        ? `it is ${piece.end?.how}`
        : { ...piece, place: event.place };
    case "measured": {
      const { what, value, unit, at } = event;
      return { ...piece, measured: new Map(piece.measured).set(what, { value, unit, at }) };
    }
    case "mended":
      return mend(piece, event);
    case "scrapped":
    case "gone":
      return end(piece, event);
    case "noted":
      return { ...piece, notes: [...piece.notes, { at: event.at, text: event.text }] };
    case "amended":
    case "undone":
      return piece;
    case "readied":
    case "put away":
    case "ticked":
    case "settled":
    case "clock":
      return `"${kind}" is not said of a piece`;
    default:
      return `nothing is known of "${kind satisfies never}"`;
  }
}

type Of<K extends JournalEvent["kind"]> = Extract<JournalEvent, { kind: K }>;

function change(piece: Piece, event: Of<"changed">): Piece {
  return {
    ...piece,
    name: event.name ?? piece.name,
    scheme: event.scheme ?? piece.scheme,
    due: event.due === undefined ? piece.due : event.due,
    price: event.price === undefined ? piece.price : event.price,
    for: event.for === undefined ? piece.for : event.for,
    weight: event.weight ?? piece.weight,
  };
}

function route(piece: Piece, event: Of<"routed">): Piece | string {
  if (piece.end !== null) return `it is ${piece.end.how}`;
  const changed = event.change.do === "put" ? null : event.change.step;
  if (changed !== null && (handOn(piece, changed) || liveHangs(workOf(piece, changed)).length > 0)) {
    return `"${changed}" is begun`;
  }
  const routed = changeRoute(piece, piece.definition, event.change);
  return typeof routed === "string" ? routed : { ...piece, ...routed };
}

function touch(piece: Piece, event: Of<"touched">): Piece | string {
  const work = workOf(piece, event.step);
  const index = work.hangs.findIndex(({ pass }) => pass === event.pass);
  const touched = work.hangs[index];
  if (touched === undefined) return `"${event.step}" has no pass ${event.pass} to touch`;
  const touches = [...touched.touches, { at: event.at, found: event.found }];
  const hangs = work.hangs.with(index, { ...touched, touches });
  return { ...piece, work: new Map(piece.work).set(event.step, { ...work, hangs }) };
}

function mend(piece: Piece, event: Of<"mended">): Piece | string {
  if (isAway(piece)) return `it is ${piece.end?.how}`;
  if (findStep(piece, event.goOnFrom) === undefined) return `its route has no step "${event.goOnFrom}"`;
  const { at, what, minutes, goOnFrom } = event;
  return sendBack({ ...piece, mends: [...piece.mends, { at, what, minutes, goOnFrom }] }, goOnFrom, at);
}

function end(piece: Piece, event: Of<"scrapped"> | Of<"gone">): Piece | string {
  if (isAway(piece)) return `it is ${piece.end?.how}`;
  const finishedAt = piece.end?.at ?? null;
  const gone = { ...piece, hand: null, alsoLeft: [], place: null };
  return event.kind === "scrapped"
    ? { ...gone, end: { how: "scrapped", at: event.at, finishedAt, why: event.why } }
    : { ...gone, end: { how: event.how, at: event.at, finishedAt, price: event.price } };
}

/** No longer in the shop: scrapped, sold, given or kept. */
function isAway(piece: Piece): boolean {
  return piece.end !== null && piece.end.how !== "finished";
}

/** Marks the steps whose passes are all hung, and ends a piece whose steps are all done. */
export function closeUp(piece: Piece, at: Instant): Piece {
  const ready = piece.route.filter((step) => {
    const work = workOf(piece, step.name);
    return !work.completed && liveHangs(work).length > 0 && passesLeft(piece, step) === 0;
  });
  const work = new Map<string, StepWork>(piece.work);
  for (const { name } of ready) work.set(name, { ...workOf(piece, name), completed: true });
  const closed = ready.length === 0 ? piece : { ...piece, work };
  const finished = closed.route.length > 0 && closed.route.every((step) => isDone(closed, step));
  return closed.end === null && finished ? { ...closed, end: { how: "finished", at } } : closed;
}
