import { describe, expect, test } from "vitest";
import { ballastGrams } from "../../src/cure/ballast.ts";

// Densities of lead: 10.66 g/cm³ liquid at 327.46 °C, 11.34 g/cm³ solid (matmake.com, citing the CRC Handbook, 97th ed.).
describe("the ballast of a piece", () => {
  test("two holes 8 mm across and 14 mm deep take 15.0 to 16.0 g of lead", () => {
    // 2 x 3.14159 x 4 mm x 4 mm x 14 mm = 1,407.4 mm³ = 1.4074 cm³; x 10.66 = 15.00 g, x 11.34 = 15.96 g.
    const grams = ballastGrams({ holes: 2, acrossMillimetres: 8, deepMillimetres: 14 });
    expect(grams.least).toBeCloseTo(15.0, 1);
    expect(grams.most).toBeCloseTo(15.96, 2);
  });

  test("grows with the square of the width and evenly with depth and number", () => {
    const one = ballastGrams({ holes: 1, acrossMillimetres: 5, deepMillimetres: 10 });
    expect(ballastGrams({ holes: 1, acrossMillimetres: 10, deepMillimetres: 10 }).most).toBeCloseTo(
      4 * one.most,
      9,
    );
    expect(ballastGrams({ holes: 3, acrossMillimetres: 5, deepMillimetres: 20 }).most).toBeCloseTo(
      6 * one.most,
      9,
    );
  });
});
