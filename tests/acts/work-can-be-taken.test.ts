import fc from "fast-check";
import { expect, test } from "vitest";
import { whatNow } from "../../src/plan/what-now.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { walker } from "../fixtures/walker.ts";
import { Bench, told } from "./bench.ts";
import { anyRequests, askedAt, branching } from "./random-requests.ts";

/** Nothing stands among the work for now that a take would refuse, its cautions once read. */
test.each([walker, branching])("every row of work for a $name can be taken as it stands", (definition) => {
  let rows = 0;
  fc.assert(
    fc.property(anyRequests, (requests) => {
      const bench = new Bench("Mon 18:00", definition);
      bench.tag(3, { scheme: [{ colour: "ochre", minutes: null, flashOff: 5 }] });
      for (const timeless of requests) {
        bench.clock += Math.abs(timeless.wait) * MINUTE;
        bench.ask(askedAt(timeless, bench.clock));
        const { work } = whatNow(bench.shop, { ...bench.context, newPiece: null });
        for (const { tags, step, colour } of work.filter((row) => row.tags.length > 0)) {
          const length = bench.events.length;
          expect(told(bench.take(tags, { step, colour })).join()).not.toContain("no:");
          bench.events.splice(length);
          rows += 1;
        }
      }
    }),
    { numRuns: 15 },
  );
  // The requests are drawn anew each time: that there was work at all must not depend on luck.
  expect(rows).toBeGreaterThan(50);
});
