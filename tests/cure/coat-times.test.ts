import { describe, expect, test } from "vitest";
import { coatTimes, dustFreeAt, reachedAt } from "../../src/cure/coat-times.ts";
import { AS_BY_SHEET } from "../../src/cure/drying.ts";
import { progressAt, stageAt } from "../../src/cure/stage.ts";
import { acrylic, makeCoat, resin, scuff, varnish } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";

describe("when a coat opens, shuts and dries, from the end of its hands-on work", () => {
  test("varnish hung Mon 19:04: opens 23:04 (4 h), shuts Tue 19:04 (24 h), then asks a scuff", () => {
    expect(coatTimes(varnish, at("Mon 19:04"), null).windows).toEqual([
      { opens: at("Mon 23:04"), shuts: at("Tue 19:04"), first: null },
      { opens: at("Tue 19:04"), shuts: null, first: scuff },
    ]);
  });

  test("its stages: dust-free 19:49 (45 min), tack-free 21:04 (2 h), dry-hard Tue 7:04 (12 h)", () => {
    expect(coatTimes(varnish, at("Mon 19:04"), null).reaches).toEqual({
      wet: at("Mon 19:04"),
      "dust-free": at("Mon 19:49"),
      "tack-free": at("Mon 21:04"),
      "dry-hard": at("Tue 7:04"),
    });
  });

  test("over the night clocks go forward 24 h are 24 h: Sat 12:00 to Sun 13:00", () => {
    expect(coatTimes(varnish, at("Sat 12:00"), null).windows[0]?.shuts).toBe(at("Sun 13:00"));
  });

  test("a flash-off as given opens it, else the coat's own of 5 min", () => {
    expect(coatTimes(acrylic, at("Mon 18:00"), 12).windows[0]?.opens).toBe(at("Mon 18:12"));
    expect(coatTimes(acrylic, at("Mon 18:00"), null).windows[0]?.opens).toBe(at("Mon 18:05"));
  });

  test("a flash-off longer than its window leaves nothing of that window", () => {
    const coat = makeCoat("quick", {
      windows: [
        { opens: "flash-off", shuts: 30, first: null },
        { opens: 60, shuts: null, first: scuff },
      ],
    });
    expect(coatTimes(coat, at("Mon 18:00"), 30).windows).toEqual([
      { opens: at("Mon 19:00"), shuts: null, first: scuff },
    ]);
  });

  test("a coat without windows opens for the next one when it is dry-hard, without stages at once", () => {
    const hard = makeCoat("plain", { stages: { "dry-hard": 90 } });
    expect(coatTimes(hard, at("Mon 18:00"), null).windows).toEqual([
      { opens: at("Mon 19:30"), shuts: null, first: null },
    ]);
    expect(coatTimes(makeCoat("bare"), at("Mon 18:00"), null).windows[0]?.opens).toBe(at("Mon 18:00"));
  });
});

describe("stages that a sheet does not name", () => {
  const times = coatTimes(resin, at("Thu 19:00"), null);

  test("count as reached with the next later one named: tack-free of the resin with dry-hard, 24 h", () => {
    expect(reachedAt(times.reaches, "tack-free")).toBe(at("Fri 19:00"));
  });

  test("past the last one named count with that: dry-through with dry-hard", () => {
    expect(reachedAt(times.reaches, "dry-through")).toBe(at("Fri 19:00"));
  });

  test("are unknown where a sheet names none; dust is then kept off until the flash-off ends", () => {
    const bare = coatTimes(makeCoat("bare", { ...acrylic, stages: {} }), at("Mon 18:00"), 7);
    expect(reachedAt(bare.reaches, "dry-hard")).toBeNull();
    expect(dustFreeAt(bare)).toBe(at("Mon 18:07"));
  });
});

describe("how far a coat is", () => {
  const times = coatTimes(varnish, at("Mon 19:04"), null);

  test.each([
    ["Mon 19:00", "wet", 0],
    ["Mon 19:04", "wet", 0],
    ["Mon 19:49", "dust-free", 45 / 720],
    ["Mon 21:03", "dust-free", 119 / 720],
    ["Mon 21:04", "tack-free", 120 / 720],
    ["Tue 7:04", "dry-hard", 1],
    ["Wed 7:04", "dry-hard", 1],
  ] as const)("%s: %s, %f of the way to dry-hard", (when, stage, progress) => {
    expect(stageAt(times, at(when))).toBe(stage);
    expect(progressAt(varnish, times, AS_BY_SHEET, at(when))).toBeCloseTo(progress, 12);
  });

  test("a coat without stages has no way to go", () => {
    const bare = makeCoat("bare");
    const hung = at("Mon 18:00");
    expect(progressAt(bare, coatTimes(bare, hung, null), AS_BY_SHEET, hung)).toBe(1);
  });
});
