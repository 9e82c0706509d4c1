import { describe, expect, test } from "vitest";
import type { LeftOthers, NowAnswer, PlanStanding } from "../../src/plan/now-answer.ts";
import { sayPlanStanding } from "../../src/words/say-plan-standing.ts";
import { sayIfLeft, sayWhy } from "../../src/words/say-work.ts";
import { at } from "../fixtures/week-time.ts";
import { costsNothing, speechAt } from "./made-rows.ts";

describe("how an answer was found", () => {
  const say = (basis: NowAnswer["basis"], is: PlanStanding["is"], gap: number | null = null) =>
    sayPlanStanding({ basis, plan: { is, gap } });

  test("is told in a word, and nothing where no plan was ever searched for", () => {
    expect(say("dispatch", "none")).toBe("");
    expect(say("dispatch", "searching")).toBe("planning");
    expect(say("dispatch", "older")).toBe("not by plan: it is older than the last act");
    expect(say("dispatch", "unfit")).toBe("not by plan: the settings have changed since");
    expect(say("dispatch", "stopped")).toBe("not by plan: the planner stopped");
    expect(say("plan", "stopped")).toBe("by plan, the planner stopped");
    expect(say("plan", "kept")).toBe("by plan");
  });

  test("tells a gap rounded up, and one over 15 % only as not proven", () => {
    expect(say("plan", "kept", 0)).toBe("by plan, proven best");
    expect(say("plan", "kept", 0.031)).toBe("by plan, at most 4 % over the best");
    expect(say("plan", "kept", 0.15)).toBe("by plan, at most 15 % over the best");
    expect(say("plan", "kept", 0.151)).toBe("by plan, not proven best");
    expect(say("plan", "kept", Number.POSITIVE_INFINITY)).toBe("by plan, not proven best");
  });
});

test("a row that the plan begins later says when, and the one it begins with says so", () => {
  const speech = speechAt("Fri 18:00");
  expect(sayWhy({ because: "planned", at: at("Fri 18:00") }, speech)).toBe("the plan begins with it");
  expect(sayWhy({ because: "planned", at: at("Fri 19:20") }, speech)).toBe("planned for 19:20");
  expect(sayWhy({ because: "planned", at: at("Sat 09:10") }, speech)).toBe("planned for Sat 09:10");
});

describe("what leaving work does to the others", () => {
  const none: LeftOthers = { amends: 0, broken: [], delay: 0, later: [] };
  const say = (others: LeftOthers, more = {}) =>
    sayIfLeft({ ...costsNothing, ...more, others }, { tags: [5] }, speechAt("Fri 18:00"));

  test("is not told where it does nothing, or less than an hour's worth", () => {
    expect(say(none)).toBe("");
    expect(say({ ...none, delay: 59, later: [{ tag: 4, minutes: 59 }] })).toBe("");
    // 4 a day later, and others as much sooner.
    expect(say({ ...none, delay: 0, later: [{ tag: 4, minutes: 1440 }] })).toBe("");
    expect(say({ ...none, amends: -5 })).toBe("");
  });

  test("promises broken, work it makes and how much later the others are, in one sentence after its own finish", () => {
    const later = [
      { tag: 4, minutes: 2863 },
      { tag: 2, minutes: 90 },
      { tag: 3, minutes: 20 },
    ];
    const finishes = { finishNow: at("Sat 10:00"), finishLeft: at("Sat 15:50") };
    expect(say({ amends: 12, broken: [4, 2], delay: 2863, later }, finishes)).toBe(
      "if left: finished Sat 15:50, not Sat 10:00, 2 and 4 too late for the day promised, 12 min more of preparation, the others 2 d later in all",
    );
  });

  test("work that it makes is told once: as its own scuff, where that is it", () => {
    const scuff = { do: "scuff", handsOn: { low: 5, likely: 5, high: 5 }, givesOff: [], cautions: [] };
    const own = { preparation: scuff, preparationFrom: at("Sat 10:00") };
    expect(say({ ...none, amends: 5 }, own)).toBe("if left: scuff 5 min from Sat 10:00");
  });
});
