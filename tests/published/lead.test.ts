/** Lead for ballast: matmake.com's table of lead, which cites the CRC Handbook of Chemistry and Physics, 97th edition. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { ballastSize } from "../../src/cure/ballast.ts";
import { toKelvin } from "../../src/cure/kelvin.ts";
import { LEAD, LEAD_SETTING } from "../../src/cure/lead.ts";

test("a belly hole half an inch across and 0.4 in deep takes 14.6 g", () => {
  // Common practice, no source, for the size of the hole. pi x 6.35² x 10.16 mm³ = 1.287 cm³; x 11.34 g/cm³ = 14.6 g.
  const hole = { holes: 1, acrossMillimetres: 12.7, deepMillimetres: 10.16, grams: null };
  expect(ballastSize(hole).most.toFixed(1)).toBe("14.6");
  // And the other way round: 14.6 g want it 10.16 mm deep.
  const wanted = { ...hole, deepMillimetres: null, grams: 14.594 };
  expect(ballastSize(wanted).deepMillimetres).toBeCloseTo(10.16, 2);
});

test("lead is 11.34 g/cm³ solid and 10.66 liquid, and melts at 327.46 °C (621.43 °F, 600.61 K)", () => {
  const hole = { holes: 1, acrossMillimetres: Math.sqrt(400 / Math.PI), deepMillimetres: 10, grams: null };
  // A hole of 100 mm² and 10 mm: a cubic centimetre.
  expect(ballastSize(hole).most).toBeCloseTo(11.34, 6);
  expect(ballastSize(hole).least).toBeCloseTo(10.66, 6);
  expect(LEAD.meltsAtCelsius * 1.8 + 32).toBeCloseTo(621.43, 2);
  expect(toKelvin(LEAD.meltsAtCelsius)).toBeCloseTo(600.61, 2);
  const { cautions } = parse(
    readFileSync(join(import.meta.dirname, "../../processes/cautions.yaml"), "utf8"),
  );
  expect(cautions.find(({ caution }: { caution: string }) => caution === "molten lead").is).toContain(
    "Lead melts at 327 °C.",
  );
});

test("its heat of fusion, 4.77 kJ/mol at 207.2 g/mol, is 23.02 J/g", () => {
  expect(LEAD_SETTING).toBeCloseTo(23.02, 2);
});
