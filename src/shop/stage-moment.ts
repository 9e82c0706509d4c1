import { reachedAt } from "../cure/coat-times.ts";
import { isAtLeast } from "../cure/stage.ts";
import type { Stage } from "../process/coat.ts";
import type { Instant } from "../time/instant.ts";
import { feltBy, type LaidCoat } from "./laid-coat.ts";

/** Why no moment can be given by the clock. */
export type NotByClock = "tacky" | "feel first";

/**
 * When a laid coat is fit as far as a stage, by its sheet and by what was felt: a touch that says dry vouches for
 * tack-free, one that says hard for dry-hard, from their moment on; one that says tacky takes the clock's word away
 * until a later one says dry or hard. A coat to be felt first has no word of the clock at all; one whose sheet names no
 * stage counts as fit when its first window opens.
 */
export function stageMoment(laid: LaidCoat, stage: Stage, now: Instant): Instant | NotByClock {
  const { tacky, dryAt, hardAt, wasTacky } = feltBy(laid.hang, now);
  if (tacky) return "tacky";
  const vouched = isAtLeast("tack-free", stage) ? dryAt : hardAt;
  if (laid.coat.feelFirst) return vouched ?? "feel first";
  const byClock = reachedAt(laid.times.reaches, stage) ?? laid.times.windows[0]?.opens ?? laid.times.laidAt;
  const sooner = vouched !== null && isAtLeast("dry-hard", stage) ? Math.min(byClock, vouched) : byClock;
  return wasTacky && dryAt !== null ? Math.max(sooner, dryAt) : sooner;
}
