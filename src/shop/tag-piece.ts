import { coatTimes, reachedAt } from "../cure/coat-times.ts";
import { NO_PLACE, SHEET_AIR } from "../cure/hanging-air.ts";
import type { JournalEvent } from "../journal/event.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import { stepsInOrder } from "../process/order.ts";
import type { Step } from "../process/step.ts";
import type { Instant } from "../time/instant.ts";
import { coatOf } from "./laid-coat.ts";
import type { PieceDraft } from "./piece-draft.ts";
import type { Hang, Piece, StepWork } from "./shop.ts";

type Tagged = Extract<JournalEvent, { kind: "tagged" }>;

/** A piece as it is tagged: not begun, or already hanging from a step with all before it done. */
export function tagPiece(event: Tagged, tag: number, definition: ProcessDefinition): PieceDraft | string {
  const route = stepsInOrder(definition.steps);
  const piece: PieceDraft = {
    tag,
    name: event.name,
    hash: event.process,
    definition,
    route,
    coats: definition.coats,
    scheme: event.scheme,
    due: event.due,
    price: event.price,
    for: event.for,
    weight: 1,
    taggedAt: event.at,
    begunAt: null,
    end: null,
    work: new Map(),
    hand: null,
    alsoLeft: [],
    place: null,
    hungAt: [],
    air: SHEET_AIR,
    pace: { factors: new Map(), touchesCount: true },
    measured: new Map(),
    weighed: [],
    mends: [],
    sentBack: [],
    notes: [],
    lastSeq: event.seq,
  };
  if (event.hung === null) return piece;
  const { step: name, since } = event.hung;
  const last = route.find((step) => step.name === name);
  if (last === undefined) return `its process has no step "${name}" to hang from`;
  for (const step of upTo(route, last)) {
    piece.work.set(step.name, doneBefore(piece, step, step === last ? since : hardBy(piece, step, since)));
  }
  piece.begunAt = since;
  piece.place = last.place;
  piece.hungAt = [{ at: since, place: last.place ?? NO_PLACE }];
  return piece;
}

/** A step and all that had to be done before it. */
function upTo(route: readonly Step[], last: Step): readonly Step[] {
  const needed = new Set([last.name]);
  // In working order whatever a step waits for stands before it: one walk from the end finds all.
  for (const step of route.toReversed()) {
    if (needed.has(step.name)) for (const name of step.after) needed.add(name);
  }
  return route.filter((step) => needed.has(step.name));
}

/** When an earlier step was hung at the latest, its coat being dry-hard as the last one was hung. */
function hardBy(piece: Piece, step: Step, since: Instant): Instant {
  const coat = coatOf(piece, step);
  const hard = coat === null ? null : reachedAt(coatTimes(coat, 0, null).reaches, "dry-hard");
  return since - (hard ?? 0);
}

/** A step hung before dryline came: nothing is known of it but that it was done by then. */
function doneBefore(piece: Piece, step: Step, since: Instant): StepWork {
  const colours = step.passes === "scheme" && piece.scheme.length > 0 ? piece.scheme : [null];
  const hangs = colours.map(
    (colour, index): Hang => ({
      pass: index + 1,
      takenAt: null,
      hungAt: since,
      minutes: null,
      guessed: false,
      colour: colour?.colour ?? null,
      flashOff: colour?.flashOff ?? null,
      touches: [],
      came: true,
      preparedFirst: null,
    }),
  );
  return { hangs, voided: 0, completed: true, prepared: null, sentBack: null };
}
