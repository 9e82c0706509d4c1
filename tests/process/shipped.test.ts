import { describe, expect, test } from "vitest";
import { EMISSIONS } from "../../src/process/coat.ts";
import {
  cautionNames,
  cautions,
  coats,
  coatTexts,
  keepApart,
  processes,
  processTexts,
  readWalker,
} from "./shipped-files.ts";

const steps = processes.flatMap((process) => process.steps);

describe("the shipped processes", () => {
  test("are the four promised, 10 to 16 steps each, and read without a problem", () => {
    expect(processes.map(({ name }) => name).sort()).toEqual([
      "carved walker",
      "cast foam minnow",
      "repainted veteran",
      "turned popper",
    ]);
    for (const { name, steps } of processes) {
      expect(steps.length, name).toBeGreaterThanOrEqual(10);
      expect(steps.length, name).toBeLessThanOrEqual(16);
    }
  });

  test("say first that the can's sheet comes first, coats too", () => {
    for (const { file, text } of [...processTexts, ...coatTexts]) {
      expect(text.split("\n")[0], file).toMatch(/^# Common practice: your can's sheet comes first\./);
    }
  });

  test("use together every feature of the files", () => {
    expect(new Set(steps.flatMap(({ setUp }) => setUp?.keeps.way ?? []))).toEqual(
      new Set(["heat", "mix", "load"]),
    );
    expect(steps.some(({ handsOn }) => handsOn.low < handsOn.likely && handsOn.likely < handsOn.high)).toBe(
      true,
    );
    expect(steps.some(({ passes }) => passes === "scheme")).toBe(true);
    expect(steps.some(({ mayStop }) => mayStop)).toBe(true);
    expect(steps.some(({ after }) => after.length > 1)).toBe(true);
    expect(steps.some(({ until }) => until !== null && "minutes" in until)).toBe(true);
    expect(steps.some(({ until }) => until !== null && "stage" in until && until.stage !== "dry-hard")).toBe(
      true,
    );
    for (const has of ["ballast", "result", "waitsFor", "place"] as const) {
      expect(
        steps.some((step) => step[has] !== null),
        has,
      ).toBe(true);
    }
    for (const has of ["look", "needs", "givesOff", "cautions"] as const) {
      expect(
        steps.some((step) => step[has].length > 0),
        has,
      ).toBe(true);
    }
    expect(steps.some(({ sheet }) => Object.keys(sheet).length > 0)).toBe(true);
    const used = Object.values(coats);
    expect(used.some(({ feelFirst }) => feelFirst)).toBe(true);
    expect(used.some(({ windows }) => windows.some(({ opens }) => opens === "flash-off"))).toBe(true);
  });

  test("every coat has its use, and one is wet on wet or a day later after a scuff", () => {
    const laid = new Set(steps.flatMap(({ coat }) => coat ?? []));
    expect([...laid].sort()).toEqual(Object.keys(coats).sort());
    expect(coats["clear epoxy"]?.windows).toMatchObject([
      { opens: 0, shuts: 120, first: null },
      { opens: 1_440, shuts: null, first: { do: "scuff" } },
    ]);
  });

  test("name every caution, and no other", () => {
    const named = new Set([
      ...steps.flatMap(({ cautions, setUp }) => [...cautions, ...(setUp?.cautions ?? [])]),
      ...Object.values(coats).flatMap(({ cautions, windows }) => [
        ...cautions,
        ...windows.flatMap(({ first }) => first?.cautions ?? []),
      ]),
    ]);
    expect([...named].sort()).toEqual([...cautionNames].sort());
  });

  test("warn wherever there is reason to", () => {
    const cautionsOf = (step: (typeof steps)[number]) => [
      ...step.cautions,
      ...(coats[step.coat ?? ""]?.cautions ?? []),
    ];
    const givesOff = (step: (typeof steps)[number]) => [
      ...step.givesOff,
      ...(coats[step.coat ?? ""]?.givesOff ?? []),
    ];
    const warnings: Record<(typeof EMISSIONS)[number], string> = {
      dust: "wood and foam dust",
      "solvent vapour": "solvent vapour",
      heat: "molten lead",
      "lead fume": "molten lead",
      isocyanate: "isocyanates",
      mist: "airbrush mist",
    };
    for (const what of EMISSIONS) {
      const giving = steps.filter((step) => givesOff(step).some((emission) => emission.what === what));
      expect(giving.length, what).toBeGreaterThan(0);
      for (const step of giving) expect(cautionsOf(step), `${step.name}: ${what}`).toContain(warnings[what]);
    }
    for (const step of steps.filter(({ ballast }) => ballast !== null)) {
      expect(step.needs, step.name).toContainEqual({ what: "wood moisture", atMost: 10, unit: "%" });
      expect(step.setUp?.cautions, step.name).toContain("hot pot");
    }
  });
});

describe("the cautions", () => {
  test("are the ten promised; only molten lead is told once per melt", () => {
    expect([...cautionNames].sort()).toEqual([
      "airbrush mist",
      "cyanoacrylate",
      "epoxy",
      "hot pot",
      "isocyanates",
      "molten lead",
      "old paint",
      "solvent rags",
      "solvent vapour",
      "wood and foam dust",
    ]);
    expect(cautions.filter(({ perMelt }) => perMelt).map(({ name }) => name)).toEqual(["molten lead"]);
  });

  test.each(cautions.map((caution) => [caution.name, caution] as const))(
    "%s has all its parts",
    (_name, caution) => {
      expect(caution.closing).toBe(
        "Your local code, the product's data sheet and a licensed professional come first.",
      );
      expect(caution.line.length).toBeLessThanOrEqual(120);
      for (const never of caution.never) expect(never).toMatch(/^Never /);
      const published = caution.sources.filter((source) => !source.includes("common practice"));
      expect(published.length).toBeGreaterThan(0);
    },
  );

  test("never say that air is fit to breathe, nor repeat that lead gives no fume below boiling", () => {
    const said = JSON.stringify([cautions, keepApart, processes]);
    expect(said).not.toMatch(/safe to breathe|fit to breathe|harmless fume/i);
    // Against that claim stands a measured case: Alaska Epidemiology Bulletin 2001 no. 17, 133 µg/dL of a home caster.
    expect(said).toMatch(/Never trust that there is no fume below boiling[^"]*133 µg\/dL/);
  });

  test("moisture, fume, hands and clothes, children and pregnancy are told of molten lead", () => {
    const lead = JSON.stringify(cautions.find(({ name }) => name === "molten lead"));
    for (const word of ["damp", "fume", "wash hands", "clothes", "child", "pregnant"])
      expect(lead).toContain(word);
  });
});

describe("the keep-aparts", () => {
  test.each([
    ["solvent vapour", "heat"],
    ["dust", "wet coat"],
    ["mist", "heat"],
    ["dust", "heat"],
    ["lead fume", "dust"],
    ["isocyanate", "heat"],
    ["isocyanate", "dust"],
  ])("%s and %s, with reason and source", (one, other) => {
    const found = keepApart.filter(({ these }) => these.includes(one) && these.includes(other));
    expect(found).toHaveLength(1);
    expect(found[0]?.because.length).toBeGreaterThan(20);
    expect(found[0]?.source.length).toBeGreaterThan(10);
  });

  test("no single step gives off two things that must not meet", () => {
    const pairs = keepApart.map(({ these }) => these).filter((pair) => !pair.includes("wet coat"));
    for (const step of steps) {
      const given: string[] = [...step.givesOff, ...(coats[step.coat ?? ""]?.givesOff ?? [])].map(
        ({ what }) => what,
      );
      for (const [one, other] of pairs)
        expect([given.includes(one), given.includes(other)], step.name).toContain(false);
    }
  });

  test("hold, after varnish hung at 19:04, lead till 19:44 and shaping till 19:49", () => {
    const varnish = readWalker().coats.varnish;
    // 19:04 + 40 min of vapour = 19:44; 19:04 + 45 min to dust-free = 19:49
    expect(varnish?.givesOff).toEqual([{ what: "solvent vapour", lasts: 40 }]);
    expect(varnish?.stages["dust-free"]).toBe(45);
  });
});
