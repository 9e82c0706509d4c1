import { expect, test } from "vitest";
import { GLOSSARY } from "../../src/words/glossary.ts";
import { sayBallast, sayCoatSheet, sayMix, sayWindows } from "../../src/words/say-step.ts";
import { sayCelsius, sayGrams, sayLength } from "../../src/words/say-units.ts";
import { saySetUpSheet } from "../../src/words/set-up-sheet.ts";
import { Diary } from "../fixtures/diary.ts";
import {
  acrylic,
  makeCoat,
  makeProcess,
  makeStep,
  varnish,
  walker,
  walkerRules,
} from "../fixtures/walker.ts";
import { at, dublin } from "../fixtures/week-time.ts";

const speechAt = (when: string) => ({ zone: dublin, now: at(when), clock24: true });
const scheme = [
  { colour: "ochre", minutes: 10, flashOff: 5 },
  { colour: "green", minutes: 6, flashOff: null },
];

test("the sheet of a melt has the set-up, the grams of lead, what must be measured and what to mind", () => {
  const ballast = { holes: 2, acrossMillimetres: 8, deepMillimetres: 14, grams: null };
  const steps = walker.steps.map((step) =>
    step.ballast === null && step.name === "pour the ballast" ? { ...step, ballast } : step,
  );
  const diary = new Diary({ ...walker, steps });
  diary.tag([3, 4], "Mon 12:00");
  diary.workUpTo(3, "pour the ballast", "Mon 12:10");
  diary.workUpTo(4, "pour the ballast", "Mon 12:30");
  diary.say(3, { kind: "measured", what: "wood moisture", value: 8, unit: "%" }, "Mon 18:00");
  // 1.407 cm³ of lead at 10.66 and 11.34 g/cm³ (see tests/cure/ballast.test.ts).
  expect(saySetUpSheet([3, 4], null, diary.shop(), walkerRules, speechAt("Mon 18:01"))).toEqual([
    "Pour the ballast, 3 and 4",
    "  at the lead pot, 6 min",
    "  set up: melt lead, 20 min; keeps 45 min from last use; 5 min to put away",
    "  ballast: 2 holes 8 mm across and 14 mm deep: 15.0 to 16.0 g of lead, 30.0 to 31.9 g for all 2",
    "  3 wood moisture at most 10 %: measured 8 %",
    "  4 wood moisture at most 10 %: not measured yet",
    "  mind: mind the molten lead",
  ]);
});

test("the sheet of a scheme tells the passes as sprayed and the next", () => {
  const diary = new Diary(walker);
  diary.tag(1, "Mon 12:00", { scheme });
  diary.workUpTo(1, "colours", "last Sun 12:00");
  diary.take(1, "colours", "Tue 18:15", { colour: "ochre" });
  diary.hang(1, "colours", "Tue 18:27", { colour: "ochre", flashOff: 5 });
  const sheet = saySetUpSheet([1], "colours", diary.shop(), walkerRules, speechAt("Tue 18:30"));
  expect(sheet).toContain("  1 sprayed ochre, 12 min, flash-off 5 min, 18:27");
  expect(sheet).toContain("  1 next green, 6 min");
  expect(sheet[1]).toBe("  at the spray corner, 10 min a pass");
});

test("the sheet tells what was noted of the pieces, the newest three", () => {
  const diary = new Diary(walker);
  diary.tag([1, 2], "Mon 12:00");
  for (const [minute, text] of ["knot", "runs deep", "grain rises", "light"].entries()) {
    diary.say(1, { kind: "noted", text }, `Mon 12:0${minute + 1}`);
  }
  const sheet = saySetUpSheet([1, 2], "shape", diary.shop(), walkerRules, speechAt("Tue 18:00"));
  expect(sheet.filter((line) => line.includes("noted"))).toEqual([
    '  1 noted Mon 12:02, "runs deep"',
    '  1 noted Mon 12:03, "grain rises"',
    '  1 noted Mon 12:04, "light"',
  ]);
});

test("pieces with different next steps have a sheet each; one that is not there has none", () => {
  const diary = new Diary(walker);
  diary.tag([1, 2], "Mon 12:00");
  diary.workUpTo(2, "drill", "Mon 12:10");
  const sheet = saySetUpSheet([1, 2, 99], null, diary.shop(), walkerRules, speechAt("Mon 18:00"));
  expect(sheet.filter((line) => !line.startsWith(" "))).toEqual(["Shape, 1", "Drill, 2"]);
});

test("lines written by hand are made plain", () => {
  const step = makeStep("shape", 40, { sheet: { jig: "left\u001b[31m one" } });
  const diary = new Diary(makeProcess("p", [step]));
  diary.tag(1, "Mon 12:00");
  expect(saySetUpSheet([1], null, diary.shop(), walkerRules, speechAt("Mon 18:00"))).toContain(
    "  jig: left one",
  );
});

test("a coat is told with its windows, whatever ends they have", () => {
  expect(sayWindows(varnish)).toEqual(["4 h to 24 h", "from 24 h on, scuff 5 min first"]);
  expect(sayWindows(acrylic)).toEqual(["from flash-off on"]);
  expect(
    sayCoatSheet(
      makeCoat("paste", { lowestCelsius: 12, sheet: { thin: "no" }, source: "its tin" }),
      speechAt("Mon 18:00"),
    ),
  ).toEqual([
    "coat: paste, cures by clock, times for 20 °C 50 %, not below 12 °C",
    "thin: no",
    "source: its tin",
  ]);
});

test("temperatures and weights are told in the maker's units", () => {
  // 21 °C x 1.8 + 32 = 69.8 °F; an ounce is 453.59237 g / 16 = 28.349523125 g (memory).
  expect(sayCelsius(21, { units: "us" })).toBe("70 °F");
  expect(sayCelsius(-40, { units: "us" })).toBe("-40 °F");
  expect(sayCelsius(21, { units: "metric" })).toBe("21 °C");
  expect(sayGrams(15, 28.349523125, { units: "us" })).toBe("0.53 to 1.00 oz");
  expect(sayGrams(15, 15.96, { units: "metric" })).toBe("15.0 to 16.0 g");
});

test.each([
  // 5/16 in = 0.3125 x 25.4 = 7.9375 mm; 1 1/8 in = 28.575 mm; 35/64 in = 13.89 mm; an inch is 25.4 mm.
  [7.9375, "5/16 in", "7.9 mm"],
  [8, "about 5/16 in", "8 mm"],
  [28.575, "1 1/8 in", "28.6 mm"],
  [25.4, "1 in", "25.4 mm"],
  [14, "about 35/64 in", "14 mm"],
  [0.1, "about 1/64 in", "0.1 mm"],
])("a length of %f mm is told as %s or %s", (millimetres, us, metric) => {
  expect(sayLength(millimetres, { units: "us" })).toBe(us);
  expect(sayLength(millimetres, { units: "metric" })).toBe(metric);
});

test("the holes for the ballast are told in inches to a maker who wants them so", () => {
  const ballast = { holes: 2, acrossMillimetres: 7.9375, deepMillimetres: 12.7, grams: null };
  expect(sayBallast({ ...makeStep("pour", 6), ballast }, { ...speechAt("Mon 18:00"), units: "us" })).toEqual([
    // 2 x pi x (0.79375 / 2)² x 1.27 = 1.2569 cm³: 13.4 to 14.3 g, an ounce being 28.35 g.
    "ballast: 2 holes 5/16 in across and 1/2 in deep: 0.47 to 0.50 oz of lead",
  ]);
});

test("every word of the glossary has one sentence without a full stop", () => {
  expect(Object.keys(GLOSSARY).length).toBeGreaterThan(15);
  for (const meaning of Object.values(GLOSSARY)) expect(meaning).toMatch(/^[a-z"].*[a-z"]$/);
});

test("a cup is told for all pieces, and how long it keeps in today's air", () => {
  const epoxy = makeCoat("clear", {
    curesBy: "resin",
    mix: { resin: 2, hardener: 1, by: "volume", perPiece: 1.5 },
    activationEnergy: 60,
  });
  const step = makeStep("last clear", 8, {
    coat: "clear",
    setUp: {
      do: "mix clear",
      takes: 4,
      keeps: { way: "mix", minutes: 30, serves: 4 },
      putAway: 2,
      cautions: [],
    },
  });
  const speech = speechAt("Mon 18:00");
  expect(sayMix(epoxy, step, 3, null, speech)).toEqual([
    "mix for 3: 3 ml resin and 1.5 ml hardener, 2 : 1 by volume",
  ]);
  // 0.7 ml to 0.3 would be 2.3 to 1.
  const little = { ...epoxy, mix: { resin: 2, hardener: 1, by: "volume", perPiece: 1 } } as const;
  expect(sayMix(little, step, 1, null, speech)).toEqual([
    "mix for 1: 0.67 ml resin and 0.33 ml hardener, 2 : 1 by volume",
  ]);
  // 30 min at 20 °C are 13 at 30 °C, by 60 kJ/mol: one piece of 8 min.
  expect(sayMix(epoxy, step, 3, { celsius: 30, humidityPercent: 50 }, speech)).toContain(
    "the cup keeps about 13 min at 30 °C (predicted; 30 min by its sheet): 1 piece at the most",
  );
});
