import { isAtLeast, progressAt, stageAt } from "../cure/stage.ts";
import type { Stage } from "../process/coat.ts";
import type { Instant } from "../time/instant.ts";
import { feltBy, type LaidCoat, newestCoat } from "./laid-coat.ts";
import type { Piece } from "./shop.ts";
import { stageMoment } from "./stage-moment.ts";
import type { CoatState } from "./states.ts";

/** How far the newest coat of a piece is, by its sheet and by what was felt; null: no coat lies on it. */
export function coatState(piece: Piece, now: Instant): CoatState | null {
  const laid = newestCoat(piece);
  if (laid === null) return null;
  const hard = stageMoment(laid, "dry-hard", now);
  const hardAt = typeof hard === "number" && Number.isFinite(hard) ? hard : null;
  const isHard = hardAt !== null && hardAt <= now;
  // Short of dry-hard by the word of a touch: it may lag the sheet, but never shows as through.
  const progress = Math.min(progressAt(laid.coat, laid.times, laid.drying, now), isHard ? 1 : 0.99);
  return {
    coat: laid.name,
    step: laid.step,
    pass: laid.hang.pass,
    laidAt: laid.times.laidAt,
    stage: stageNow(laid, now),
    reaches: reachedInThisAir(laid),
    progress: isHard ? 1 : progress,
    hard: hardAt,
  };
}

/** The stages it reaches at all. */
function reachedInThisAir({ times }: LaidCoat): CoatState["reaches"] {
  return Object.fromEntries(Object.entries(times.reaches).filter(([, moment]) => Number.isFinite(moment)));
}

/** The stage by the sheet, moved by touches: no further than dust-free while tacky, and as far as one vouched for. */
function stageNow(laid: LaidCoat, now: Instant): Stage {
  const { tacky, dryAt, hardAt } = feltBy(laid.hang, now);
  const byClock = stageAt(laid.times, now);
  if (tacky || (laid.coat.feelFirst && dryAt === null))
    return further(byClock, "tack-free") === byClock ? "dust-free" : byClock;
  if (hardAt !== null) return further(byClock, "dry-hard");
  if (laid.coat.feelFirst) return "tack-free";
  return dryAt === null ? byClock : further(byClock, "tack-free");
}

function further(one: Stage, other: Stage): Stage {
  return isAtLeast(one, other) ? one : other;
}
