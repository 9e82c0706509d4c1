import fc from "fast-check";
import type { PlanContext } from "../../src/plan/what-now.ts";
import type { Shop } from "../../src/shop/shop.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { Bench } from "../acts/bench.ts";
import { anyRequests, askedAt, branching } from "../acts/random-requests.ts";
import { walker } from "../fixtures/walker.ts";

/** The processes that are played with. */
export const played = [walker, branching];

/** Plays any requests at a bench with three pieces and looks at the shop after each, the first of which is 0. */
export function afterAnyActs(
  look: (shop: Shop, context: PlanContext, index: number) => void,
  numRuns: number,
): void {
  fc.assert(
    fc.property(anyRequests, fc.constantFrom(...played), fc.boolean(), (requests, definition, more) => {
      const bench = new Bench("Mon 18:00", definition);
      bench.tag(3, { scheme: [{ colour: "ochre", minutes: null, flashOff: 5 }] });
      for (const [index, timeless] of requests.entries()) {
        bench.clock += Math.abs(timeless.wait) * MINUTE;
        bench.ask(askedAt(timeless, bench.clock));
        const newPiece = more ? { hash: "hash", definition } : null;
        look(bench.shop, { ...bench.context, newPiece }, index);
      }
    }),
    { numRuns },
  );
}
