import { type CoatTimes, coatTimes } from "../cure/coat-times.ts";
import type { Drying } from "../cure/drying.ts";
import { coatFactor } from "../cure/touch-fit.ts";
import type { Coat } from "../process/coat.ts";
import type { Step } from "../process/step.ts";
import type { Instant } from "../time/instant.ts";
import { lastHang, workOf } from "./passes.ts";
import type { Hang, Piece } from "./shop.ts";
import { touchSpan } from "./touch-span.ts";

/** A coat as it lies on a piece: its newest pass, and what it does by the clock. */
export interface LaidCoat {
  readonly name: string;
  readonly step: string;
  readonly coat: Coat;
  readonly hang: Hang;
  readonly drying: Drying;
  readonly times: CoatTimes;
}

/** The coat a step lays; null: it lays none, or its coat is not kept with the piece. */
export function coatOf(piece: Pick<Piece, "coats">, step: Pick<Step, "coat">): Coat | null {
  if (step.coat === null || !Object.hasOwn(piece.coats, step.coat)) return null;
  return piece.coats[step.coat] ?? null;
}

/** The coat that a step has laid and that counts; null: none. */
export function laidBy(piece: Piece, step: Step): LaidCoat | null {
  const coat = coatOf(piece, step);
  const hang = lastHang(workOf(piece, step.name));
  if (coat === null || hang === null) return null;
  const drying = dryingOf(piece, coat, hang);
  return {
    name: coat.name,
    step: step.name,
    coat,
    hang,
    drying,
    times: coatTimes(coat, hang.hungAt, hang.flashOff, drying),
  };
}

/** How a pass of a coat dries on a piece: where it hangs and hung, as its can is known to, and as it was felt. */
export function dryingOf({ air, pace }: Pick<Piece, "air" | "pace">, coat: Coat, hang: Hang): Drying {
  if (!pace.touchesCount) return { air, factor: 1 };
  const expected = pace.factors.get(coat.name) ?? 1;
  if (hang.touches.length === 0) return { air, factor: expected };
  return { air, factor: coatFactor(expected, touchSpan(coat, hang, air)) };
}

/** The coat laid last of all that lie on a piece; of several hung at one moment the last in working order. */
export function newestCoat(piece: Piece): LaidCoat | null {
  let newest: { readonly step: Step; readonly hungAt: Instant } | null = null;
  for (const step of piece.route) {
    const hung = coatOf(piece, step) === null ? null : lastHang(workOf(piece, step.name));
    if (hung !== null && (newest === null || hung.hungAt >= newest.hungAt))
      newest = { step, hungAt: hung.hungAt };
  }
  return newest === null ? null : laidBy(piece, newest.step);
}

/** What touch tests have said of a pass by a moment. Only those after the last tacky one count. */
export interface Felt {
  /** The newest says tacky: not by the clock. */
  readonly tacky: boolean;
  /** Since when it is known to be at least tack-free; null: not known. */
  readonly dryAt: Instant | null;
  /** Since when it is known to be at least dry-hard; null: not known. */
  readonly hardAt: Instant | null;
  /** An earlier touch said tacky: what the clock says counts from `dryAt` at the earliest. */
  readonly wasTacky: boolean;
}

export function feltBy(hang: Hang, now: Instant): Felt {
  const touches = hang.touches.filter(({ at }) => at <= now).toSorted((a, b) => a.at - b.at);
  const lastTacky = touches.findLastIndex(({ found }) => found === "tacky");
  const since = touches.slice(lastTacky + 1);
  return {
    tacky: lastTacky >= 0 && since.length === 0,
    dryAt: since[0]?.at ?? null,
    hardAt: since.find(({ found }) => found === "hard")?.at ?? null,
    wasTacky: lastTacky >= 0,
  };
}
