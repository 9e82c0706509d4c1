import { describe, expect, test } from "vitest";
import type { LateWhy, NoTime, PlanQuality } from "../../src/plan/plan-answer.ts";
import { sayForecasts } from "../../src/words/say-forecast.ts";
import { sayPlan, sayQuality } from "../../src/words/say-plan.ts";
import { sayChanges } from "../../src/words/say-plan-changes.ts";
import { sayPlannedPieces, sayPlannedRow, sayPlannedSession } from "../../src/words/say-planned-row.ts";
import { widthOf } from "../../src/words/width.ts";
import { makeProcess, makeStep } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";
import { makeForecast, makePiece, makePlan, makeRow, makeSession, speech } from "./made-plan.ts";

const quality = (changes: Partial<PlanQuality>): PlanQuality => ({
  basis: "plan",
  proven: false,
  gapPercent: null,
  broken: [],
  ...changes,
});

test.each([
  [quality({ proven: true, gapPercent: 0 }), "proven, no plan is better"],
  [quality({ gapPercent: 4 }), "at most 4 % over the best"],
  [quality({ gapPercent: 15 }), "at most 15 % over the best"],
  [quality({}), "not proven best"],
  [quality({ basis: "dispatch" }), "made by the simple rule: the plan found did not pass its check"],
])("how good a plan is: %j", (given, said) => {
  expect(sayQuality(given)).toBe(said);
});

describe("a row", () => {
  test.each([
    [{}, ["18:00", "14 smelt walker", "first clear", "8 min", "", "bench"]],
    [{ colour: "ochre" }, ["18:00", "14 smelt walker", "first clear, ochre", "8 min", "", "bench"]],
    [
      { setUp: { what: "mix resin", minutes: 4 } },
      ["18:00", "14 smelt walker", "first clear", "8 min", "mix resin 4 min first", "bench"],
    ],
    [
      { setUp: { what: "mix resin", minutes: 0 } },
      ["18:00", "14 smelt walker", "first clear", "8 min", "", "bench"],
    ],
    [
      { part: "preparation", preparation: "scuff", minutes: 5 },
      ["18:00", "14 smelt walker", "scuff for first clear", "5 min", "", "bench"],
    ],
    [
      { part: "mend" },
      ["18:00", "14 smelt walker", "level and lay again: first clear", "8 min", "", "bench"],
    ],
    [{ part: "again" }, ["18:00", "14 smelt walker", "first clear again", "8 min", "", "bench"]],
    [
      { minutes: 25, ofMinutes: 40 },
      ["18:00", "14 smelt walker", "first clear", "25 of 40 min", "", "bench"],
    ],
    [
      { tagsNew: true, pieces: [makePiece(null)] },
      ["18:00", "new 1", "tag it, first clear", "8 min", "", "bench"],
    ],
  ] as const)("%j", (changes, cells) => {
    const { from, who, what, minutes, setUp, station } = sayPlannedRow(makeRow(changes), speech);
    expect([from, who, what, minutes, setUp, station]).toEqual(cells);
  });

  test("pieces go by name alone, by tags together, and those not tagged by number", () => {
    const news = [1, 2, 3].map((nth) => makePiece(null, { nth }));
    const tags = [16, 17, 18].map((tag) => makePiece(tag));
    expect(sayPlannedPieces([makePiece(14)])).toBe("14 smelt walker");
    expect(sayPlannedPieces(tags)).toBe("16-18");
    expect(sayPlannedPieces([...tags, ...news])).toBe("16-18, new 1-3");
  });

  test("says whom it finishes, and that it is in hand", () => {
    const two = [makePiece(14), makePiece(15)];
    expect(sayPlannedRow(makeRow({ pieces: two, finishes: two }), speech).finishes).toBe("finished");
    expect(sayPlannedRow(makeRow({ pieces: two, finishes: [makePiece(15)] }), speech).finishes).toBe(
      "finishes 15 smelt walker",
    );
    expect(sayPlannedRow(makeRow({ inHand: true }), speech).inHand).toBe("in hand");
    expect(sayPlannedRow(makeRow({ looks: [5, 15] }), speech).look).toBe("look after 5 and 15 min");
    const unmeasured = makeRow({ measures: ["wood moisture"] });
    expect(sayPlannedRow(unmeasured, speech).measure).toBe("measure wood moisture first");
  });

  test("says by when, or that it cannot wait for another evening", () => {
    expect(sayPlannedRow(makeRow({ shuts: { by: at("Mon 19:34") } }), speech).by).toBe("begin by 19:34");
    expect(sayPlannedRow(makeRow({ shuts: { by: null } }), speech).by).toBe("do not leave it");
    expect(sayPlannedRow(makeRow(), speech).by).toBe("");
  });

  test("a clock of 12 hours is kept to", () => {
    expect(sayPlannedRow(makeRow(), { ...speech, clock24: false }).from).toBe("6:00 pm");
  });
});

describe("a session", () => {
  test.each([
    [{}, "Mon 23 Mar, 18:00 to 21:00, 2 h 52 free"],
    [{ free: 0 }, "Mon 23 Mar, 18:00 to 21:00"],
    [{ rows: [], free: 180 }, "Mon 23 Mar, 18:00 to 21:00, nothing to do"],
    [{ outsideHours: true }, "Mon 23 Mar, in hand outside bench hours"],
  ])("%j", (changes, said) => {
    expect(sayPlannedSession(makeSession(changes), speech)).toBe(said);
  });

  test("that runs is told from now on", () => {
    const now = at("Mon 18:42");
    expect(sayPlannedSession(makeSession(), { ...speech, now })).toMatch(/^Mon 23 Mar, 18:42 to 21:00/);
  });
});

describe("a finish", () => {
  const said = (changes: Parameters<typeof makeForecast>[0]) =>
    sayForecasts([makeForecast(changes)], speech, null).join("\n");

  test("tells last hands-on and dry-through", () => {
    expect(said({})).toBe("\nFinished, and dry-through\n  14 smelt walker  Thu 19:02  Sun 19:02");
    expect(said({ dryThrough: null })).toContain("Thu 19:02  -");
    expect(said({ dryThrough: at("Mon 16:00") })).toContain("Thu 19:02  already");
  });

  test("tells a promise kept by the day it was given for", () => {
    // The promise for Friday ends as Saturday begins.
    expect(said({ due: at("Sat 00:00") })).toContain("promised Fri, kept");
  });

  test.each<[LateWhy, string]>([
    [{ because: "date passed" }, "its date has passed"],
    [{ because: "waits", soonest: at("Thu 05:46") }, "its own work and waits alone take until Thu 05:46"],
    [{ because: "hours", soonest: at("Thu 19:40") }, "alone it takes until Thu 19:40 in these bench hours"],
    [
      { because: "hours", soonest: null },
      "alone it takes longer than the days looked at in these bench hours",
    ],
    [{ because: "hook", place: "rack" }, "no hook is free at the rack"],
    [{ because: "hands", others: [] }, "the hands are needed for others first"],
    [
      { because: "hands", others: [makePiece(3), makePiece(5)] },
      "the hands are needed for others first; without 3 smelt walker or 5 smelt walker it is on time",
    ],
  ])("late because of %j", (why, reason) => {
    const lines = said({ due: at("Wed 00:00"), late: { minutes: 1142 + 1440, why } });
    // Tuesday ends, and Thursday 19:02 is 1 d 19 h 02 later.
    expect(lines).toContain("promised tomorrow, late");
    expect(lines).toContain(`\nLate\n  14 smelt walker: 43 h 02 late for tomorrow: ${reason}`);
  });

  test.each<[NoTime, string]>([
    [
      { because: "measure first", step: "pour", what: ["wood moisture"] },
      "pour waits for a measurement: wood moisture",
    ],
    [{ because: "touch first", step: "hangers" }, "hangers opens by a touch alone: feel it"],
    [
      { because: "too long", step: "carve", minutes: 500, longest: 420 },
      "carve needs 8 h 20 at a stretch, and no bench session is longer than 7 h",
    ],
    [
      { because: "too long", step: "carve", minutes: 50, longest: 0 },
      "no bench is open in the days looked at",
    ],
    [{ because: "beyond", days: 14 }, "not within the 14 days looked at"],
  ])("none because of %j", (noTime, reason) => {
    expect(said({ lastHandsOn: null, dryThrough: null, noTime })).toBe(
      `\nNot finished\n  14 smelt walker: ${reason}`,
    );
  });

  test("none, of a piece promised that is not known to be late, tells the promise too", () => {
    const noTime: NoTime = { because: "touch first", step: "hangers" };
    expect(said({ lastHandsOn: null, dryThrough: null, noTime, due: at("Sat 00:00") })).toContain(
      "hangers opens by a touch alone: feel it, promised Fri",
    );
  });
});

test("pieces of which the same is to be said share a line", () => {
  const noTime: NoTime = { because: "beyond", days: 14 };
  const pieces = [3, 4, 5].map((tag) =>
    makeForecast({ piece: makePiece(tag), lastHandsOn: null, dryThrough: null, noTime }),
  );
  expect(sayForecasts(pieces, speech, 80)).toEqual([
    "",
    "Not finished",
    "  3-5: not within the 14 days looked at",
  ]);
});

describe("what a what-if changes", () => {
  const whatIf = { days: [{ date: "2026-03-28", hours: [] }], added: [] };
  const nothing = { finishes: [], newlyLate: [], nowOnTime: [], amends: 0 };
  const change = (without: string | null, withIt: string | null) => ({
    piece: makePiece(14),
    without: without === null ? null : at(without),
    with: withIt === null ? null : at(withIt),
  });

  test("is told by what is supposed, then each finish that moves, then promises and preparing", () => {
    const finishes = [
      change("Fri 19:10", "Sat 15:20"),
      change("Fri 19:10", "Thu 18:10"),
      change("Fri 19:10", null),
      change(null, "Fri 19:10"),
    ];
    const changes = { finishes, newlyLate: [makePiece(14)], nowOnTime: [makePiece(3)], amends: 5 };
    expect(sayChanges(changes, whatIf, speech)).toEqual([
      "",
      "If the bench is shut Sat",
      "  14 smelt walker finished Sat 15:20, not Fri 19:10",
      "  14 smelt walker finished Thu 18:10, sooner than Fri 19:10",
      "  14 smelt walker not finished in the days looked at",
      "  14 smelt walker finished Fri 19:10, not beyond the days looked at",
      "  late by it: 14 smelt walker",
      "  on time by it: 3 smelt walker",
      "  5 min more of preparing and mending",
    ]);
  });

  test("is nothing, in words", () => {
    expect(sayChanges(nothing, whatIf, speech).at(-1)).toBe("  nothing, for the pieces that are tagged");
  });

  test("puts days of the same hours together, and names what is added", () => {
    const evening = [{ opens: 18 * 60, closes: 22 * 60 }];
    const days = ["2026-03-24", "2026-03-26"].map((date) => ({ date, hours: evening }));
    const added = [{ count: 6, definition: makeProcess("walker", [makeStep("cut", 5)]), due: "2026-05-01" }];
    expect(sayChanges(nothing, { days, added }, speech)[1]).toBe(
      "If the bench is open 18:00 to 22:00 tomorrow and Thu and 6 walker are tagged now, promised Fri 1 May",
    );
  });
});

describe("the whole plan", () => {
  test("says plainly that nothing is out, that the bench is shut, or that nothing can be worked", () => {
    const said = (changes: Parameters<typeof makePlan>[0]) =>
      sayPlan(makePlan(changes), speech, 80).join("\n");
    expect(said({ sessions: [], pieces: [] })).toContain("Nothing is out.");
    expect(said({ sessions: [] })).toContain("The bench is shut all 7 days");
    expect(said({ sessions: [], days: 1 })).toContain("The bench is shut all day");
    expect(said({ sessions: [makeSession({ rows: [] })] })).toContain("Nothing can be worked in 7 days.");
  });

  test("tells a rule that even the plan shown breaks", () => {
    const broken = ["task 3 begins at 1440 without its preparation"];
    const said = sayPlan(makePlan({ quality: quality({ basis: "dispatch", broken }) }), speech, 80);
    expect(said).toContain("It breaks a rule (task 3 begins at 1440 without its preparation): take it with");
  });

  test.each([40, 60, 80, 120])("keeps to %i columns, with nothing of a row lost at 80", (columns) => {
    const row = makeRow({
      setUp: { what: "load the airbrush with a long colour", minutes: 6 },
      looks: [5, 15, 40],
      station: "spray corner",
      finishes: [makePiece(14)],
    });
    const lines = sayPlan(makePlan({ sessions: [makeSession({ rows: [row] })] }), speech, columns);
    for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(columns);
    const text = lines.join(" ").replace(/\s+/g, " ");
    if (columns < 80) return;
    expect(text).toContain(
      "finished, spray corner, load the airbrush with a long colour 6 min first, look after 5, 15 and 40 min",
    );
  });

  test("lets nothing through that a terminal might obey", () => {
    const evil = makePiece(14, { name: "a\u001b[31mb\nc" });
    const plan = makePlan({
      sessions: [makeSession({ rows: [makeRow({ pieces: [evil], step: "x\u001b]0;y\u0007" })] })],
      pieces: [makeForecast({ piece: evil })],
    });
    expect(sayPlan(plan, speech, 80).join("")).not.toMatch(/\p{Cc}/u);
  });
});
