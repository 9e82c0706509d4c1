import { expect, test } from "vitest";
import { STAGES, TIMED_STAGES } from "../../src/process/coat.ts";
import { coats } from "./shipped-files.ts";

/**
 * The words of the standards, in the order in which a film reaches them.
 *
 * - set-to-touch: ASTM D1640, D5895 (from memory, not looked up)
 * - dust-free: ASTM D1640 (fibres dropped on the film blow off without a mark)
 * - tack-free: FED-STD-141D method 4061.3, 4.6.3 (paper pressed on falls off)
 * - dry-hard: ASTM D5895-03, 3.1.1 (a strong pinch of thumb and finger leaves no mark)
 * - dry-through: FED-STD-141D, 4.7.3 (the thumb bears down and turns 90 degrees without loosening or wrinkling);
 *   "through-dry" of ISO 9117-1:2009 is the same test, its dust- and tack-free stand before "surface-dry" (9117-3:2010)
 */
const STANDARD_WORDS = ["set-to-touch", "dust-free", "tack-free", "dry-hard", "dry-through"];

test("stages bear the words of the drying standards, in their order", () => {
  expect(TIMED_STAGES).toEqual(STANDARD_WORDS);
  expect(STAGES).toEqual(["wet", ...STANDARD_WORDS]);
});

test("every shipped coat reaches its stages in that order", () => {
  for (const { name, stages } of Object.values(coats)) {
    const minutes = STANDARD_WORDS.map((stage) => stages[stage as keyof typeof stages]).filter(
      (time) => time !== undefined,
    );
    expect(minutes.length, name).toBeGreaterThan(1);
    expect(minutes, name).toEqual(minutes.toSorted((a, b) => a - b));
  }
});
