import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ballastSize } from "../../src/cure/ballast.ts";
import { mixFor, piecesOfCup, potLife } from "../../src/cure/pot-life.ts";
import { BALLAST_METALS } from "../../src/process/step.ts";

// Densities of lead: 10.66 g/cm³ liquid at 327.46 °C, 11.34 g/cm³ solid (matmake.com, citing the CRC Handbook, 97th ed.).
describe("the ballast of a piece", () => {
  const holes = { holes: 2, acrossMillimetres: 8, deepMillimetres: 14, grams: null };

  test("two holes 8 mm across and 14 mm deep take 15.0 to 16.0 g of lead", () => {
    // 2 x 3.14159 x 4 mm x 4 mm x 14 mm = 1,407.4 mm³ = 1.4074 cm³; x 10.66 = 15.00 g, x 11.34 = 15.96 g.
    const grams = ballastSize(holes);
    expect(grams.least).toBeCloseTo(15.0, 1);
    expect(grams.most).toBeCloseTo(15.96, 2);
  });

  test("of tin, tungsten and steel weighs by 7.29, 19.3 and 7.85 g/cm³", () => {
    // MatWeb's sheet of white tin; matmake.com's table of tungsten, citing the CRC Handbook, 97th ed.; the density by
    // which the masses of steel sections are reckoned (Steel for Life, Blue Book). Each times 1.4074 cm³.
    const grams = (["tin", "tungsten", "steel"] as const).map(
      (metal) => ballastSize({ ...holes, metal }).most,
    );
    expect(grams.map((each) => Math.round(each * 100) / 100)).toEqual([10.26, 27.16, 11.05]);
  });

  test("grows with the square of the width and evenly with depth and number", () => {
    const one = ballastSize({ ...holes, holes: 1, acrossMillimetres: 5, deepMillimetres: 10 });
    const wider = ballastSize({ ...holes, holes: 1, acrossMillimetres: 10, deepMillimetres: 10 });
    expect(wider.most).toBeCloseTo(4 * one.most, 9);
    const more = ballastSize({ ...holes, holes: 3, acrossMillimetres: 5, deepMillimetres: 20 });
    expect(more.most).toBeCloseTo(6 * one.most, 9);
  });

  test("the depth for a weight holds that weight, of any metal", () => {
    const millimetres = fc.integer({ min: 20, max: 200 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(
        millimetres,
        fc.integer({ min: 1, max: 50 }),
        fc.constantFrom(...BALLAST_METALS),
        (across, grams, metal) => {
          const { most, deepMillimetres } = ballastSize({
            holes: 2,
            acrossMillimetres: across,
            deepMillimetres: null,
            grams,
            metal,
          });
          expect(most).toBeCloseTo(grams, 9);
          const back = ballastSize({
            holes: 2,
            acrossMillimetres: across,
            deepMillimetres,
            grams: null,
            metal,
          });
          expect(back.most).toBeCloseTo(grams, 9);
        },
      ),
    );
  });
});

describe("a cup", () => {
  test("of 2 : 1 with 1.5 ml a piece is 4 ml and 2 ml for four", () => {
    expect(mixFor({ resin: 2, hardener: 1, by: "volume", perPiece: 1.5 }, 4)).toEqual({
      resin: 4,
      hardener: 2,
    });
    expect(mixFor({ resin: 2, hardener: 1, by: "volume", perPiece: null }, 4)).toBeNull();
  });

  test("keeps shorter in the warmth: 30 min at 20 °C are 13 min at 30 °C by 60 kJ/mol", () => {
    // Arrhenius: 2.2525 times as fast (see tests/published/cure-rate.test.ts); 30 / 2.2525 = 13.3.
    const resin = {
      curesBy: "resin",
      sheetAir: { celsius: 20, humidityPercent: 50 },
      activationEnergy: 60,
    } as const;
    expect(potLife(resin, 30, { celsius: 30, humidityPercent: 50 })).toBe(13);
    expect(potLife(resin, 30, { celsius: 20, humidityPercent: 50 })).toBe(30);
  });

  test("coats as many as it serves, and as can be laid while it keeps", () => {
    expect(piecesOfCup(30, 4, 8)).toBe(3);
    expect(piecesOfCup(60, 4, 8)).toBe(4);
    expect(piecesOfCup(5, 4, 8)).toBe(0);
  });
});
