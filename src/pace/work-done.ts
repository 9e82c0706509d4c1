import type { Tag } from "../journal/event.ts";
import { workedMinutes } from "../shop/forgotten-minutes.ts";
import type { Hang, Piece } from "../shop/shop.ts";
import { findStep } from "../shop/steps.ts";
import type { Instant, Minutes } from "../time/instant.ts";

/** One piece of hands-on work, at the moment it ended. */
export interface WorkDone {
  readonly tag: Tag;
  readonly at: Instant;
  /** A share, where pieces were worked together; null: hung without being taken or long after it, nobody knows. */
  readonly minutes: Minutes | null;
  readonly guessed: boolean;
  readonly what: "step" | "preparation" | "mend";
  /** The step it was, prepared or went on from. */
  readonly step: string;
}

/** All hands-on work ever done on a piece, what a mend took back too; what was done before it was tagged is not known. */
export function workDone(piece: Piece): readonly WorkDone[] {
  const { tag } = piece;
  const hangs = [...piece.work].flatMap(([step, work]) => {
    const waiting = work.prepared === null ? [] : [preparation(tag, step, work.prepared)];
    const routed = findStep(piece, step);
    const seen = work.hangs
      .filter(({ came }) => !came)
      .map((hang) => ({ ...hang, minutes: workedMinutes(routed, hang.minutes) }));
    return [...seen.flatMap((hang) => ofHang(tag, step, hang)), ...waiting];
  });
  const mends = piece.mends.map(
    ({ at, minutes, goOnFrom }): WorkDone => ({
      tag,
      at,
      minutes,
      guessed: false,
      what: "mend",
      step: goOnFrom,
    }),
  );
  return [...hangs, ...mends];
}

function ofHang(tag: Tag, step: string, hang: Hang): WorkDone[] {
  const { hungAt, takenAt, minutes, guessed, preparedFirst } = hang;
  const work: WorkDone = { tag, at: hungAt, minutes, guessed, what: "step", step };
  if (preparedFirst === null) return [work];
  return [preparation(tag, step, { at: takenAt ?? hungAt, minutes: preparedFirst }), work];
}

function preparation(tag: Tag, step: string, done: { at: Instant; minutes: Minutes | null }): WorkDone {
  return { tag, at: done.at, minutes: done.minutes, guessed: false, what: "preparation", step };
}
