import { describe, expect, test } from "vitest";
import { planAhead } from "../../../src/plan/ahead/plan-ahead.ts";
import type { PlanAnswer } from "../../../src/plan/plan-answer.ts";
import type { Shop } from "../../../src/shop/shop.ts";
import { MINUTE } from "../../../src/time/instant.ts";
import { afterAnyActs } from "../after-any-acts.ts";
import { searching } from "./ask-plan.ts";

/** The plan of the coming days after each fourth of any acts. */
function planAfterAnyActs(look: (plan: PlanAnswer, shop: Shop) => void): void {
  afterAnyActs((shop, context, index) => {
    if (index % 4 === 3) look(planAhead(shop, context, 7, searching).answer, shop);
  }, 15);
}

describe("the coming days, whatever was done before", () => {
  test("pass the checker, and each piece that is not gone is told once, finished or with the reason why not", () => {
    planAfterAnyActs((plan, shop) => {
      expect(plan.quality.broken).toEqual([]);
      const out = [...shop.pieces.values()].filter(({ end }) => end === null).map(({ tag }) => tag);
      const told = plan.pieces.flatMap(({ piece }) => piece.tag ?? []);
      expect(told).toEqual(out.toSorted((a, b) => a - b));
      for (const { lastHandsOn, noTime } of plan.pieces) expect(lastHandsOn === null).toBe(noTime !== null);
    });
  });

  test("keep one pair of hands: rows follow one another and lie in their session", () => {
    planAfterAnyActs(({ sessions, at }, { settings }) => {
      if (settings.hands.some(({ pairs }) => pairs > 1)) return;
      for (const { rows, opens, closes, outsideHours } of sessions) {
        let free = Math.max(opens, at);
        for (const { from, until, minutes, setUp, inHand } of rows) {
          expect(from).toBeGreaterThanOrEqual(free);
          // Hands-on and its set-up fill a row without a gap.
          expect(until - from).toBe((minutes + (setUp?.minutes ?? 0)) * MINUTE);
          if (!outsideHours && !inHand) expect(until).toBeLessThanOrEqual(closes);
          free = until;
        }
      }
    });
  });
});
