import { describe, expect, test } from "vitest";
import type { Setting } from "../../src/journal/event.ts";
import { eveningHours } from "../fixtures/week-time.ts";
import { Bench, refusalOf, told } from "./bench.ts";

const weekly = eveningHours.weekly[0]?.hours ?? [];
const late = [{ opens: 18 * 60, closes: 22 * 60 + 15 }];

const settings: readonly Setting[] = [
  { of: "hours", from: "2026-03-23", weekly },
  { of: "day", date: "2026-03-26", hours: late },
  { of: "day", date: "2026-03-27", hours: [] },
  { of: "away", from: "2026-03-30", to: "2026-04-12" },
  { of: "zone", name: "Europe/Dublin" },
  { of: "hands", from: "2026-03-23", pairs: 2 },
  { of: "place", name: "rack", hooks: 8 },
  { of: "aim", from: "2026-03-23", finishedPerWeek: 3.5, out: 8 },
  { of: "default process", name: "walker" },
];

describe("a setting", () => {
  test.each(settings)("of $of is written once; said again it changes nothing", (setting) => {
    const bench = new Bench("Mon 18:00");
    expect(told(bench.settle(setting))).toEqual(["settled"]);
    expect(refusalOf(bench.settle(setting))).toMatchObject({
      code: "nothing changes",
      what: expect.any(String),
      exit: 3,
    });
  });

  test("that was never made cannot be taken back", () => {
    const bench = new Bench("Mon 18:00");
    for (const setting of [
      { of: "day", date: "2026-03-26", hours: null },
      { of: "back", from: "2026-04-02" },
      { of: "place", name: "rack", hooks: null },
      { of: "hands", from: "2026-03-23", pairs: 1 },
      { of: "aim", from: "2026-03-23", finishedPerWeek: null, out: null },
    ] satisfies Setting[]) {
      expect(told(bench.settle(setting))).toEqual(["no: nothing changes"]);
    }
  });

  test("of the hours everyone is assumed to have is still worth saying", () => {
    const bench = new Bench("Mon 18:00");
    expect(bench.shop.settings.hours).toBeNull();
    bench.settle({ of: "hours", from: "2026-03-23", weekly });
    expect(bench.shop.settings.hours?.weekly).toHaveLength(1);
  });

  test("of days away ends early by coming back", () => {
    const bench = new Bench("Mon 18:00");
    bench.settle({ of: "away", from: "2026-03-30", to: "2026-04-12" });
    // Within the days away already.
    expect(told(bench.settle({ of: "away", from: "2026-04-01", to: "2026-04-02" }))).toEqual([
      "no: nothing changes",
    ]);
    expect(told(bench.settle({ of: "back", from: "2026-04-05" }))).toEqual(["settled"]);
    expect(told(bench.settle({ of: "back", from: "2026-04-05" }))).toEqual(["no: nothing changes"]);
  });

  test("of a day's sessions is put in their order", () => {
    const bench = new Bench("Mon 18:00");
    const hours = [
      { opens: 780, closes: 960 },
      { opens: 540, closes: 720 },
    ];
    expect(bench.settle({ of: "day", date: "2026-03-28", hours })).toMatchObject({
      events: [{ setting: { hours: [{ opens: 540 }, { opens: 780 }] } }],
    });
  });

  test.each<[string, Setting]>([
    ["a week of six days", { of: "hours", from: "2026-03-23", weekly: weekly.slice(1) }],
    ["a date there is not", { of: "hours", from: "2026-02-29", weekly }],
    [
      "a session that closes before it opens",
      { of: "day", date: "2026-03-26", hours: [{ opens: 600, closes: 600 }] },
    ],
    [
      "sessions that overlap",
      {
        of: "day",
        date: "2026-03-26",
        hours: [
          { opens: 600, closes: 700 },
          { opens: 690, closes: 800 },
        ],
      },
    ],
    ["an end before its beginning", { of: "away", from: "2026-04-12", to: "2026-03-30" }],
    ["no hands", { of: "hands", from: "2026-03-23", pairs: 0 }],
    ["half a hook", { of: "place", name: "rack", hooks: 0.5 }],
    ["a place without a name", { of: "place", name: " ", hooks: 1 }],
    ["an aim of nothing", { of: "aim", from: "2026-03-23", finishedPerWeek: 0, out: null }],
    ["a zone without a name", { of: "zone", name: "" }],
  ])("refuses %s", (_, setting) => {
    expect(refusalOf(new Bench("Mon 18:00").settle(setting))).toMatchObject({ code: "unfit value", exit: 2 });
  });
});

test("a caution is ticked by a word of its name; one nobody knows is told those there are", () => {
  const bench = new Bench("Mon 18:00");
  expect(told(bench.tick("lead"))).toEqual(["ticked molten lead"]);
  expect(refusalOf(bench.tick("radiation"))).toMatchObject({ code: "unfit value", what: "caution", exit: 2 });
});
