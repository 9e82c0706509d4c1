import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { planAhead } from "../../../src/plan/ahead/plan-ahead.ts";
import type { PlanAnswer } from "../../../src/plan/plan-answer.ts";
import type { PlanContext } from "../../../src/plan/what-now.ts";
import type { Shop } from "../../../src/shop/shop.ts";
import { MINUTE } from "../../../src/time/instant.ts";
import { Bench } from "../../acts/bench.ts";
import { anyRequests, askedAt, branching } from "../../acts/random-requests.ts";
import { walker } from "../../fixtures/walker.ts";
import { searching } from "./ask-plan.ts";

/** Plays any requests at a bench with three pieces, and looks at the plan after each fourth. */
function afterAnyActs(look: (plan: PlanAnswer, shop: Shop, context: PlanContext) => void): void {
  fc.assert(
    fc.property(
      anyRequests,
      fc.constantFrom(walker, branching),
      fc.boolean(),
      (requests, definition, more) => {
        const bench = new Bench("Mon 18:00", definition);
        bench.tag(3, { scheme: [{ colour: "ochre", minutes: null, flashOff: 5 }] });
        for (const [index, timeless] of requests.entries()) {
          bench.clock += Math.abs(timeless.wait) * MINUTE;
          bench.ask(askedAt(timeless, bench.clock));
          if (index % 4 !== 3) continue;
          const context = { ...bench.context, newPiece: more ? { hash: "hash", definition } : null };
          look(planAhead(bench.shop, context, 7, searching).answer, bench.shop, context);
        }
      },
    ),
    { numRuns: 15 },
  );
}

describe("the coming days, whatever was done before", () => {
  test("pass the checker, and each piece that is not gone is told once, finished or with the reason why not", () => {
    afterAnyActs((plan, shop) => {
      expect(plan.quality.broken).toEqual([]);
      const out = [...shop.pieces.values()].filter(({ end }) => end === null).map(({ tag }) => tag);
      const told = plan.pieces.flatMap(({ piece }) => piece.tag ?? []);
      expect(told).toEqual(out.toSorted((a, b) => a - b));
      for (const { lastHandsOn, noTime } of plan.pieces) expect(lastHandsOn === null).toBe(noTime !== null);
    });
  });

  test("keep one pair of hands: rows follow one another and lie in their session", () => {
    afterAnyActs(({ sessions, at }, { settings }) => {
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
