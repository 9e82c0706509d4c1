import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { PricedTime } from "../../../src/plan/search/priced-time.ts";

/** Four hours, of which each has 45 min to take. */
function fourHours(): PricedTime {
  const time = new PricedTime(240, 60, 0.75);
  time.clear();
  return time;
}

describe("a price", () => {
  test("rises by how much too much is taken, and stays at nothing where there is enough", () => {
    const time = fourHours();
    time.take(30, 90, 2);
    // Twice 30 min of either of the first two hours: 15 too many. The rest has no price, so all is as it should be there.
    expect(time.steer()).toBe(2 * 15 ** 2);
    time.adjust(0.1);
    expect([0, 60, 90, 120, 240].map((minute) => time.upTo(minute))).toEqual([0, 90, 135, 180, 180]);
    expect(time.worth).toBe(0.75 * 180);
  });

  test("falls where less is taken than there is, but to nothing at most", () => {
    const time = fourHours();
    time.take(0, 120, 1);
    time.steer();
    time.adjust(1);
    expect(time.upTo(120)).toBe(120 * 15);
    time.clear();
    time.take(0, 60, 0.5);
    // 15 and 45 too few, at a price of 15 each, and 0.7 times the 15 too many of before.
    expect(time.steer()).toBe(4.5 ** 2 + 34.5 ** 2);
    time.adjust(0.5);
    expect([60, 120].map((minute) => time.upTo(minute))).toEqual([60 * 12.75, 60 * 12.75]);
  });

  test("goes on as before for a while once it is right", () => {
    const time = fourHours();
    time.take(0, 60, 1);
    time.steer();
    time.adjust(1);
    time.clear();
    time.take(0, 60, 0.75);
    time.steer();
    time.adjust(1);
    expect(time.upTo(60)).toBe(60 * (15 + 0.7 * 15));
  });

  test("can be come back to", () => {
    const time = fourHours();
    time.take(0, 60, 1);
    time.steer();
    time.adjust(1);
    time.keep();
    time.adjust(1);
    expect(time.upTo(60)).toBe(60 * 30);
    time.restore(1);
    expect(time.upTo(60)).toBe(60 * 15);
    time.restore(2);
    expect(time.upTo(60)).toBe(60 * 30);
  });

  test("of many spans at once is that of each, up to one end less up to the other", () => {
    const minute = fc.integer({ min: 0, max: 240 });
    const rows = fc.array(fc.record({ from: minute, until: minute, cost: minute }), { minLength: 1 });
    fc.assert(
      fc.property(rows, fc.array(fc.integer({ min: 0, max: 90 })), (spans, taken) => {
        const time = fourHours();
        for (const minutes of taken) time.take(minutes, 2 * minutes, 2);
        time.steer();
        time.adjust(0.1);
        const column = (key: "from" | "until" | "cost"): number[] => spans.map((span) => span[key]);
        const costs = Float64Array.from(column("cost"));
        time.addSpans(Int32Array.from(column("from")), Int32Array.from(column("until")), 1, costs);
        for (const [place, { from, until, cost }] of spans.entries()) {
          const added = place === 0 ? 0 : time.upTo(until) - time.upTo(from);
          expect(costs[place]).toBeCloseTo(cost + added, 6);
        }
      }),
    );
  });
});
