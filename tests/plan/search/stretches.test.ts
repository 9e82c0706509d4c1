import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  earliestWithin,
  join,
  latestWithin,
  meet,
  type Stretches,
} from "../../../src/plan/search/stretches.ts";

/** Minutes from 0 to 40, as stretches and one by one. */
const minutes = fc
  .uniqueArray(fc.nat(40))
  .map((list) => list.toSorted((one, other) => one - other))
  .map((each) => ({ each, stretches: stretchesOf(each) }));

describe("stretches of minutes", () => {
  test("meet in the minutes that both hold, and join to those that either holds", () => {
    fc.assert(
      fc.property(minutes, minutes, (one, other) => {
        const both = one.each.filter((minute) => other.each.includes(minute));
        const either = [...new Set([...one.each, ...other.each])].toSorted((a, b) => a - b);
        expect(meet(one.stretches, other.stretches)).toEqual(stretchesOf(both));
        expect(join(one.stretches, other.stretches)).toEqual(stretchesOf(either));
      }),
    );
  });

  test("tell the earliest and the latest minute that they hold within others", () => {
    fc.assert(
      fc.property(minutes, fc.nat(40), fc.nat(40), ({ each, stretches }, first, last) => {
        const within = each.filter((minute) => minute >= first && minute <= last);
        expect(earliestWithin(stretches, first, last)).toBe(within[0] ?? null);
        expect(latestWithin(stretches, first, last)).toBe(within.at(-1) ?? null);
      }),
    );
  });
});

function stretchesOf(each: readonly number[]): Stretches {
  const stretches: Stretches = [];
  for (const minute of each) {
    if (stretches.at(-1) === minute - 1) stretches[stretches.length - 1] = minute;
    else stretches.push(minute, minute);
  }
  return stretches;
}
