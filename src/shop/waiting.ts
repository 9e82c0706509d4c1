import type { Span } from "../cure/coat-times.ts";
import type { Step } from "../process/step.ts";
import type { Instant } from "../time/instant.ts";
import type { Piece } from "./shop.ts";
import type { NotByClock } from "./stage-moment.ts";
import { stepWait } from "./step-wait.ts";

/** When a step may begin as far as the steps before it that are done say. */
export interface Waiting {
  /** By opening. */
  readonly windows: readonly Span[];
  /** The coats that say so, each with why a touch must speak first, if so. */
  readonly coats: readonly {
    readonly step: string;
    readonly laidAt: Instant;
    readonly notByClock: NotByClock | null;
  }[];
}

/** What a step waits for as planning needs it. */
export function readWaiting(piece: Piece, step: Step, now: Instant): Waiting {
  const { windows, coats } = stepWait(piece, step, now);
  return {
    windows,
    coats: coats.map(({ laid: { step: name, times }, notByClock }) => ({
      step: name,
      laidAt: times.laidAt,
      notByClock,
    })),
  };
}
