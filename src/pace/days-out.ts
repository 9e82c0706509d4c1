import { median } from "../learned/median.ts";
import type { Piece } from "../shop/shop.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import { tagsOf } from "./span.ts";
import type { DaysOut } from "./week-review.ts";
import { workDone } from "./work-done.ts";

const DAY = 1_440 * MINUTE;

/**
 * How long finished pieces were out, and what share of that time they hung or lay and were not in hand. A piece that
 * was hanging before it was tagged counts from when it was said to hang.
 */
export function daysOut(finished: readonly { readonly piece: Piece; readonly at: Instant }[]): DaysOut {
  const times = finished.flatMap(({ piece, at }) => {
    if (piece.begunAt === null || piece.begunAt >= at) return [];
    const out = at - piece.begunAt;
    const inHand = workDone(piece).reduce((sum, { minutes }) => sum + (minutes ?? 0) * MINUTE, 0);
    return [{ tag: piece.tag, out, hanging: Math.max(0, out - inHand) }];
  });
  const all = times.reduce((sum, { out }) => sum + out, 0);
  return {
    median: times.length === 0 ? null : median(times.map(({ out }) => out / DAY)),
    hanging: all === 0 ? null : times.reduce((sum, { hanging }) => sum + hanging, 0) / all,
    tags: tagsOf(times),
    pieces: times.map(({ tag, out, hanging }) => ({ tag, days: out / DAY, hanging: hanging / out })),
  };
}
