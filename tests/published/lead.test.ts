/** Lead for ballast: matmake.com's table of lead, which cites the CRC Handbook of Chemistry and Physics, 97th edition. */
import { expect, test } from "vitest";
import { ballastGrams } from "../../src/cure/ballast.ts";

test("a belly hole half an inch across and 0.4 in deep takes 14.6 g", () => {
  // Common practice, no source, for the size of the hole. pi x 6.35² x 10.16 mm³ = 1.287 cm³; x 11.34 g/cm³ = 14.6 g.
  const { most } = ballastGrams({ holes: 1, acrossMillimetres: 12.7, deepMillimetres: 10.16 });
  expect(most.toFixed(1)).toBe("14.6");
});
