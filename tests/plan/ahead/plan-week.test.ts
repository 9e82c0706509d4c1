import { describe, expect, test } from "vitest";
import { Diary } from "../../fixtures/diary.ts";
import { walker } from "../../fixtures/walker.ts";
import { at } from "../../fixtures/week-time.ts";
import { askIf, askPlan, clock, short } from "./ask-plan.ts";

/** Moments of the made-up week of Monday 23 March 2026, Dublin, as a plan must tell them. */

/** Two walkers hang sealed, 1 since Sunday 20:00 and 2 since Monday 12:30; a third is tagged. */
function monday(): Diary {
  const diary = new Diary(walker);
  diary.came(1, "seal", "last Sun 20:00", "Mon 18:00");
  diary.came(2, "seal", "Mon 12:30", "Mon 18:00");
  diary.tag(3, "Mon 18:00");
  return diary;
}

test("Mon 18:01: the second seal of 1 and 2 is done in one go, 1 begun before its window shuts at 20:00", () => {
  const plan = askPlan(monday(), "Mon 18:01");
  const row = plan.sessions[0]?.rows.find(({ step }) => step === "second seal");
  expect(row?.pieces.map(short)).toEqual(["1", "2"]);
  expect(row?.part).toBe("step");
  // 1 shuts at 20:00 and comes first of the two; 2 stays open till Tuesday 12:30.
  expect(row?.shuts).toEqual({ by: at("Mon 20:00") });
  expect(row?.from).toBeLessThanOrEqual(at("Mon 19:59"));
});

test("Mon 18:01: wood that will be poured was not measured yet, and the row says what to measure", () => {
  const rows = askPlan(monday(), "Mon 18:01").sessions.flatMap((session) => session.rows);
  expect(rows.find(({ step }) => step === "pour the ballast")?.measures).toEqual(["wood moisture"]);
  expect(rows.find(({ step }) => step === "shape")?.measures).toEqual([]);
});

test("a piece not tagged yet was measured as little, and its row says so too", () => {
  const added = [{ count: 1, definition: walker, due: null }];
  const answer = askIf(new Diary(walker), "Mon 18:01", { added });
  if ("fitsNoSession" in answer) throw new Error("a walker fits in");
  const rows = answer.answer.sessions.flatMap((session) => session.rows);
  expect(rows.find(({ step }) => step === "pour the ballast")?.measures).toEqual(["wood moisture"]);
});

test("Mon 19:05: no lead is melted before the vapour of the seal is gone at 19:44", () => {
  const diary = monday();
  diary.workUpTo(3, "pour the ballast", "Mon 18:50");
  diary.say(3, { kind: "measured", what: "wood moisture", value: 8, unit: "%" }, "Mon 18:50");
  diary.take([1, 2], "second seal", "Mon 18:52");
  diary.hang([1, 2], "second seal", "Mon 19:04");
  const plan = askPlan(diary, "Mon 19:05");
  const pour = plan.sessions.flatMap(({ rows }) => rows).find(({ step }) => step === "pour the ballast");
  expect(pour?.setUp).toEqual({ what: "melt lead", minutes: 20 });
  expect(pour?.measures).toEqual([]);
  expect(pour?.from).toBeGreaterThanOrEqual(at("Mon 19:44"));
  // 3 poured 20:10 to 20:16, the pot away by 20:21: the seal of 3, whose vapour keeps apart from its heat, begins at once.
  const seal = plan.sessions[0]?.rows.find(({ step, from }) => step === "seal" && from > (pour?.until ?? 0));
  expect(plan.sessions[0]?.putAway).toEqual([
    { station: "lead pot", what: "melt lead", minutes: 5, by: seal?.from },
  ]);
});

test("Thu 18:30: three last clears are one row and one cup", () => {
  const diary = new Diary(walker);
  for (const tag of [1, 4, 5]) diary.came(tag, "detail", "Wed 20:15", "Thu 18:30");
  const plan = askPlan(diary, "Thu 18:30");
  const cups = plan.sessions.flatMap(({ rows }) => rows).filter(({ step }) => step === "last clear");
  expect(cups.map(({ pieces }) => pieces.map(short))).toEqual([["1", "4", "5"]]);
  // Mixing 4, then three of 8.
  expect(cups[0]).toMatchObject({ setUp: { what: "mix resin", minutes: 4 }, minutes: 24 });
  expect(clock(cups[0]?.until ?? 0)).toBe("Thu 18:58");
});

test("Sun 02:10: the clocks went forward, Monday's session is 18:00 by the new clock", () => {
  const plan = askPlan(monday(), "Sun 02:10", 2);
  expect(plan.sessions.map(({ opens }) => opens)).toEqual([at("next Mon 18:00")]);
});

describe("Sun 20:00: away 30 March to 12 April", () => {
  const promised = (away: boolean): Diary => {
    const diary = new Diary(walker);
    diary.tag(1, "Sun 19:00", { due: "2026-04-09" });
    diary.tag(2, "Sun 19:00", { due: "2026-04-20" });
    if (away) diary.settle({ of: "away", from: "2026-03-30", to: "2026-04-12" }, "Sun 20:00");
    return diary;
  };

  test("nothing is planned for those days", () => {
    const { sessions } = askPlan(promised(true), "Sun 20:01", 21);
    expect(Math.min(...sessions.map(({ opens }) => opens))).toBeGreaterThan(
      at("Sun 20:00") + 14 * 86_400_000,
    );
  });

  test("the week shown is shut, and still each finish is told: it is looked past the days away", () => {
    const { sessions, pieces } = askPlan(promised(true), "Sun 20:01", 7);
    expect(sessions).toEqual([]);
    expect(pieces.map(({ noTime }) => noTime)).toEqual([null, null]);
  });

  test("promises move: what was kept is late by the hours, and what has time is kept still", () => {
    const before = askPlan(promised(false), "Sun 20:01", 21).pieces;
    const after = askPlan(promised(true), "Sun 20:01", 21).pieces;
    expect(before.map(({ late }) => late)).toEqual([null, null]);
    expect(after[0]?.late?.why.because).toBe("hours");
    expect(after[1]?.late).toBeNull();
    for (const [index, forecast] of after.entries()) {
      expect(forecast.lastHandsOn).toBeGreaterThan(before[index]?.lastHandsOn ?? Number.POSITIVE_INFINITY);
    }
  });
});
