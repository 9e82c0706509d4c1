import { dustFreeAt } from "../cure/coat-times.ts";
import type { Tag } from "../journal/event.ts";
import type { Emission } from "../process/coat.ts";
import { coatsBefore } from "../process/order.ts";
import type { Step } from "../process/step.ts";
import { handsOf } from "../shop/hands.ts";
import { coatOf, laidBy } from "../shop/laid-coat.ts";
import type { Moment } from "../shop/moment.ts";
import { workOf } from "../shop/passes.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import { stageMoment } from "../shop/stage-moment.ts";
import { findStep } from "../shop/steps.ts";
import { isForgotten, usualHang } from "../shop/usual-hang.ts";
import { after, type Instant } from "../time/instant.ts";
import { WET_COAT } from "./task.ts";

/** Something in the air of the one room, and where it comes from. */
export interface InTheAir {
  readonly what: string;
  /** When it ends by the clock; null: not before somebody does something. */
  readonly until: Instant | null;
  readonly from:
    | { readonly kind: "in hand" | "hung" | "wet"; readonly tag: Tag }
    | { readonly kind: "set-up"; readonly station: string; readonly setUp: string };
}

/**
 * Everything that is in the room's air at a moment: of work in hand, of work done not long ago, of coats not yet
 * dust-free, of set-ups that stand. The shop is one room.
 *
 * @param leaves pieces in hand to be taken as put down at this moment
 */
export function roomAir(shop: Shop, at: Moment, leaves: readonly Tag[] = []): readonly InTheAir[] {
  const pieces = [...shop.pieces.values()].flatMap((piece) => [
    ...ofHand(piece, at, leaves.includes(piece.tag)),
    ...ofHangs(piece),
    ...ofPreparations(piece),
    ...ofWetCoats(piece, at.now),
  ]);
  return [...pieces, ...ofSetUps(shop)].filter(({ until }) => until === null || until > at.now);
}

/** Work in hand; one forgotten in an earlier session counts as hung as late as it can have been. */
function ofHand(piece: Piece, at: Moment, isLeft: boolean): InTheAir[] {
  const { running } = handsOf(piece);
  const step = running === null ? undefined : findStep(piece, running.step);
  if (running === null || step === undefined) return [];
  const from = { kind: "in hand", tag: piece.tag } as const;
  const given = running.part === "step" ? ofStep(piece, step) : preparationsBefore(piece, step);
  const ended = isLeft ? at.now : isForgotten(piece, running, at) ? usualHang(running, 0, at).latest : null;
  const air = given.map(
    ({ what, lasts }): InTheAir => ({
      what,
      from,
      until: ended === null ? null : after(ended, minutes(lasts)),
    }),
  );
  const coat = running.part === "step" ? coatOf(piece, step) : null;
  if (coat === null) return air;
  const dry = ended === null ? null : after(ended, coat.stages["dust-free"] ?? 0);
  return [...air, { what: WET_COAT, from, until: dry }];
}

/** What each pass hung gives off for some time after, those taken back and those of ended pieces too. */
function ofHangs(piece: Piece): InTheAir[] {
  const from = { kind: "hung", tag: piece.tag } as const;
  return [...piece.work].flatMap(([name, { hangs }]) => {
    const step = findStep(piece, name);
    const hungAt = hangs.at(-1)?.hungAt;
    if (step === undefined || hungAt === undefined) return [];
    return ofStep(piece, step).map(({ what, lasts }) => ({
      what,
      from,
      until: after(hungAt, minutes(lasts)),
    }));
  });
}

function ofPreparations(piece: Piece): InTheAir[] {
  const from = { kind: "hung", tag: piece.tag } as const;
  return piece.route.flatMap((step) => {
    const { prepared } = workOf(piece, step.name);
    if (prepared === null) return [];
    return preparationsBefore(piece, step).map(({ what, lasts }) => ({
      what,
      from,
      until: after(prepared.at, minutes(lasts)),
    }));
  });
}

function ofWetCoats(piece: Piece, now: Instant): InTheAir[] {
  if (piece.end !== null && piece.end.how !== "finished") return [];
  return piece.route.flatMap((step): InTheAir[] => {
    const laid = laidBy(piece, step);
    if (laid === null) return [];
    const felt = stageMoment(laid, "dust-free", now);
    // Tacky is past dust-free, and dust settles whatever is to be felt first: then the sheet alone says.
    const until = typeof felt === "number" ? Math.min(felt, dustFreeAt(laid.times)) : dustFreeAt(laid.times);
    return [{ what: WET_COAT, until, from: { kind: "wet", tag: piece.tag } }];
  });
}

function ofSetUps(shop: Shop): InTheAir[] {
  return [...shop.stations.values()].flatMap(({ station, setUp }) => {
    if (setUp === null) return [];
    const from = { kind: "set-up", station, setUp: setUp.what } as const;
    return setUp.givesOff.map((what) => ({ what, until: null, from }));
  });
}

/** What a step gives off of itself and by its coat. */
function ofStep(piece: Piece, step: Step): readonly Emission[] {
  return [...step.givesOff, ...(coatOf(piece, step)?.givesOff ?? [])];
}

/** What the preparations give off that the coats under a step may ask for. */
function preparationsBefore(piece: Piece, step: Step): readonly Emission[] {
  return coatsBefore(piece.route, step.name).flatMap((before) =>
    (coatOf(piece, before)?.windows ?? []).flatMap(({ first }) => first?.givesOff ?? []),
  );
}

/** Minutes after the work's end; what lasts while a set-up stands is the set-up's to say. */
function minutes(lasts: Emission["lasts"]): number {
  return lasts === "while set up" ? 0 : lasts;
}
