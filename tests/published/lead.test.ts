/** Lead for ballast: matmake.com's table of lead, which cites the CRC Handbook of Chemistry and Physics, 97th edition. */
import { expect, test } from "vitest";
import { ballastSize } from "../../src/cure/ballast.ts";

test("a belly hole half an inch across and 0.4 in deep takes 14.6 g", () => {
  // Common practice, no source, for the size of the hole. pi x 6.35² x 10.16 mm³ = 1.287 cm³; x 11.34 g/cm³ = 14.6 g.
  const hole = { holes: 1, acrossMillimetres: 12.7, deepMillimetres: 10.16, grams: null };
  expect(ballastSize(hole).most.toFixed(1)).toBe("14.6");
  // And the other way round: 14.6 g want it 10.16 mm deep.
  const wanted = { ...hole, deepMillimetres: null, grams: 14.594 };
  expect(ballastSize(wanted).deepMillimetres).toBeCloseTo(10.16, 2);
});
