import type { JournalEvent } from "../journal/event.ts";
import type { StepTime, Summarise } from "../journal/journal.ts";
import type { ProcessDefinition, ProcessHash } from "../process/definition.ts";
import { foldShop } from "./fold.ts";
import { workedMinutes } from "./forgotten-minutes.ts";
import type { Piece } from "./shop.ts";
import { findStep } from "./steps.ts";

/** Raised whenever the rows below would come out otherwise for the same events: the journal then makes all anew. */
export const SUMMARY_VERSION = 1;

/** The derived rows of one piece: where its life stands, and the hands-on times to learn from. */
export const summarise: Summarise = (tag, events, definition) => {
  const piece = foldShop({
    newest: events.at(-1)?.seq ?? 0,
    newestRecorded: null,
    nextTag: tag + 1,
    events,
    definitions: definitionsOf(events, definition),
    setAside: [],
  }).pieces.get(tag);
  if (piece === undefined) return null;
  const { end } = piece;
  return {
    row: {
      tag,
      out: end === null,
      name: piece.name,
      process: piece.hash,
      processName: piece.definition.name,
      taggedAt: piece.taggedAt,
      finishedAt: end === null ? null : end.how === "finished" ? end.at : end.finishedAt,
      scrappedAt: end?.how === "scrapped" ? end.at : null,
    },
    stepTimes: stepTimesOf(piece),
  };
};

function definitionsOf(
  events: readonly JournalEvent[],
  definition: (hash: ProcessHash) => ProcessDefinition,
): Record<ProcessHash, ProcessDefinition> {
  const hashes = events.flatMap((event) => (event.kind === "tagged" ? [event.process] : []));
  return Object.fromEntries(hashes.map((hash) => [hash, definition(hash)]));
}

/** Every pass whose hands-on time was seen, those taken back by a mend too: the work was done all the same. */
function stepTimesOf(piece: Piece): StepTime[] {
  return [...piece.work].flatMap(([step, { hangs }]) => {
    const routed = findStep(piece, step);
    return hangs.flatMap(({ pass, minutes: inHand, guessed, hungAt }): StepTime[] => {
      const minutes = workedMinutes(routed, inHand);
      if (minutes === null || guessed || routed === undefined) return [];
      return [{ process: piece.definition.name, step, tag: piece.tag, pass, minutes, at: hungAt }];
    });
  });
}
