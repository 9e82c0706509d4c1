import { stageThatCounts } from "../cure/coat-times.ts";
import { type HandsOn, STAGES } from "../process/coat.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import { coatsBefore } from "../process/order.ts";
import type { Step } from "../process/step.ts";
import { liveHangs, workOf } from "../shop/passes.ts";
import type { Piece } from "../shop/shop.ts";
import { sayScheme } from "../words/read-scheme.ts";

/**
 * The process of a piece as it was really done: its own route, with the minutes each step really took where they are
 * known, and the scheme as sprayed in the note.
 */
export function asDone(piece: Piece): ProcessDefinition {
  const used = new Set(piece.route.flatMap(({ coat }) => coat ?? []));
  const scheme = piece.scheme.length === 0 ? "" : `, painted ${sayScheme(piece.scheme)}`;
  return {
    name: piece.definition.name,
    piece: piece.definition.piece,
    steps: piece.route.map((step) => ({
      ...step,
      handsOn: handsOnAsDone(step, piece),
      until: hungUntil(step, piece),
      waitsFor: waitedFor(step, piece),
    })),
    coats: Object.fromEntries(Object.entries(piece.coats).filter(([name]) => used.has(name))),
    note: `As ${piece.tag} ${piece.name} was done${scheme}.`,
  };
}

/** A coat that a change of route brought may not name the stage that the step hangs until: then the one that counted. */
function hungUntil({ until, coat: name }: Step, { coats }: Piece): Step["until"] {
  const coat = name === null ? undefined : coats[name];
  if (coat === undefined || until === null || "minutes" in until) return until;
  return { stage: stageThatCounts(coat.stages, until.stage) ?? until.stage };
}

/** Likewise of the stage that it waits for; where several coats come before it, the latest that counted. */
function waitedFor({ name, waitsFor, coat }: Step, { route, coats }: Piece): Step["waitsFor"] {
  const stage = waitsFor ?? (coat === null ? "dry-hard" : null);
  if (stage === null) return null;
  const counted = coatsBefore(route, name).flatMap((before) => {
    const laid = before.coat === null ? undefined : coats[before.coat];
    return laid === undefined ? [] : (stageThatCounts(laid.stages, stage) ?? []);
  });
  const latest = STAGES.findLast((one) => counted.includes(one)) ?? stage;
  return latest === stage ? waitsFor : latest;
}

/** What it took becomes the likely minutes, and widens the range where it lay outside. */
function handsOnAsDone(step: Step, piece: Piece): HandsOn {
  const known = liveHangs(workOf(piece, step.name)).flatMap(({ minutes, guessed }) =>
    minutes === null || guessed ? [] : [Math.max(1, Math.round(minutes))],
  );
  if (known.length === 0) return step.handsOn;
  const likely = Math.round(known.reduce((sum, minutes) => sum + minutes, 0) / known.length);
  return { low: Math.min(step.handsOn.low, ...known), likely, high: Math.max(step.handsOn.high, ...known) };
}
