import { describe, expect, test } from "vitest";
import { SURE } from "../../../src/cure/air-ahead.ts";
import { planAhead } from "../../../src/plan/ahead/plan-ahead.ts";
import type { ProcessDefinition } from "../../../src/process/definition.ts";
import { hoursOf } from "../../../src/shop/settings-at.ts";
import { Diary } from "../../fixtures/diary.ts";
import { everyDay, inAir } from "../../fixtures/shop-in-air.ts";
import { inARow, makeCoat, makeProcess, makeStep, varnish, walker } from "../../fixtures/walker.ts";
import { at } from "../../fixtures/week-time.ts";
import { contextAt } from "../ask-now.ts";
import { askPlan, searching, short } from "./ask-plan.ts";

/** Pieces tagged Mon 17:00, each with its promise (null: none). */
function promised(definition: ProcessDefinition, ...dues: (string | null)[]): Diary {
  const diary = new Diary(definition);
  for (const [index, due] of dues.entries()) diary.tag(index + 1, "Mon 17:00", { due });
  return diary;
}

const MONDAY = "2026-03-23";
const TUESDAY = "2026-03-24";

/** Two tasks of 100 min that may not be split: one an evening. */
const two = makeProcess("two", inARow([makeStep("shape", 100), makeStep("polish", 100)]));
const one = makeProcess("one", [makeStep("shape", 100)]);

describe("a piece that is late says why", () => {
  test("its own waits: 30 + 6 + 12 h + 10 are more than the day has left, whatever the hours", () => {
    const waits = makeProcess(
      "waits",
      inARow([makeStep("cut", 30), makeStep("coat", 6, { coat: "varnish" }), makeStep("hangers", 10)]),
      [varnish],
    );
    const [forecast] = askPlan(promised(waits, MONDAY), "Mon 17:00").pieces;
    // Always open: 17:00 + 30 + 6 + 720 + 10 = Tue 05:46. As planned Tue 18:10, 18 h 10 after midnight.
    expect(forecast?.late).toEqual({
      minutes: 18 * 60 + 10,
      why: { because: "waits", soonest: at("Tue 05:46") },
    });
    expect(forecast?.due).toBe(at("Tue 00:00"));
  });

  test("the bench hours: alone it takes till Tuesday, with the bench always open only till Mon 20:20", () => {
    const [forecast] = askPlan(promised(two, MONDAY), "Mon 17:00").pieces;
    expect(forecast?.late).toEqual({
      minutes: 19 * 60 + 40,
      why: { because: "hours", soonest: at("Tue 19:40") },
    });
  });

  test("the air: in these hours it is too cold for its coat till the next morning, and then the bench opens in the evening", () => {
    const coated = makeProcess("coated", [makeStep("coat", 30, { coat: "varnish" })], [varnish]);
    // 6 °C till Monday 22:00, then rising to 18 °C at 8:00 on Tuesday: 10 °C is passed at 1:20.
    const monday = { at: at("Mon 17:00"), celsius: 6, humidityPercent: 40 };
    const byHour = Array.from({ length: 24 }, () => ({ celsius: 18, humidityPercent: 40 }));
    const line = {
      since: at("Mon 0:00"),
      readings: [monday, { ...monday, at: at("Mon 22:00") }, { ...monday, at: at("Tue 8:00"), celsius: 18 }],
      ahead: { rests: "daily pattern" as const, byHour, last: null, unsure: SURE },
    };
    const context = contextAt("Mon 17:00", { hours: hoursOf({ hours: null }) });
    const shop = inAir(promised(coated, MONDAY).shop(), line);
    const [forecast] = planAhead(shop, context, 7, searching).answer.pieces;
    expect(forecast?.late?.why).toEqual({ because: "air", soonest: at("Tue 18:30") });
  });

  test("the hands: two of 100 min are promised for one evening of 180, and each would be on time without the other", () => {
    const { pieces } = askPlan(promised(one, MONDAY, MONDAY), "Mon 17:00");
    const late = pieces.filter((forecast) => forecast.late !== null);
    const kept = pieces.filter((forecast) => forecast.late === null);
    expect([late.length, kept.length]).toEqual([1, 1]);
    expect(late[0]?.late?.why).toEqual({ because: "hands", others: [kept[0]?.piece] });
  });

  test("a hook: the only one is taken by a finished piece till Wed 16:56", () => {
    const place = { place: "rack", until: { minutes: 2 * 1440 } };
    const hung = makeProcess("hung", [makeStep("coat", 6, { coat: "slow", ...place })], [makeCoat("slow")]);
    const diary = new Diary(hung);
    diary.settle({ of: "place", name: "rack", hooks: 1 }, "Mon 16:00");
    diary.tag(1, "Mon 16:00");
    diary.take(1, "coat", "Mon 16:50");
    diary.hang(1, "coat", "Mon 16:56", { place: "rack" });
    diary.tag(2, "Mon 17:00", { due: TUESDAY });
    const [forecast] = askPlan(diary, "Mon 17:00").pieces;
    // The bench opens Wed 18:00, 18 h and the coat's 6 min after Tuesday ended.
    expect(forecast?.late).toEqual({ minutes: 18 * 60 + 6, why: { because: "hook", place: "rack" } });
  });

  test("a date that has passed", () => {
    const [forecast] = askPlan(promised(one, "2026-03-20"), "Mon 17:00").pieces;
    expect(forecast?.late?.why).toEqual({ because: "date passed" });
  });

  test("and one that is on time, or was promised to nobody, says nothing", () => {
    const { pieces } = askPlan(promised(one, TUESDAY, null), "Mon 17:00");
    expect(pieces.map(({ late }) => late)).toEqual([null, null]);
    expect(pieces.map(({ due }) => due)).toEqual([at("Wed 00:00"), null]);
  });

  test("this one first promises nothing, so it is never late", () => {
    const diary = promised(one, null);
    diary.say(1, { kind: "changed", weight: 10 }, "Mon 17:00");
    expect(askPlan(diary, "Mon 17:00").pieces[0]?.late).toBeNull();
  });
});

describe("a piece that found no time says why", () => {
  const noTime = (diary: Diary, when = "Mon 17:00") => askPlan(diary, when).pieces[0]?.noTime;

  test("its wood was not measured", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 10:00");
    diary.workUpTo(1, "pour the ballast", "Mon 12:00");
    expect(noTime(diary)).toEqual({
      because: "measure first",
      step: "pour the ballast",
      what: ["wood moisture"],
    });
  });

  test("its coat opens by a touch alone", () => {
    const felt = makeProcess(
      "felt",
      inARow([makeStep("coat", 6, { coat: "felt" }), makeStep("hangers", 10)]),
      [makeCoat("felt", { feelFirst: true, stages: { "dry-hard": 60 } })],
    );
    const diary = new Diary(felt);
    diary.tag(1, "Mon 10:00");
    diary.take(1, "coat", "Mon 10:00");
    diary.hang(1, "coat", "Mon 10:06");
    expect(noTime(diary)).toEqual({ because: "touch first", step: "hangers" });
    // Promised, it is not called late by anything but its date: nobody knows before it is felt.
    diary.say(1, { kind: "changed", due: TUESDAY }, "Mon 11:00");
    expect(askPlan(diary, "Mon 17:00").pieces[0]?.late).toBeNull();
    expect(askPlan(diary, "next Mon 17:00").pieces[0]?.late?.why).toEqual({ because: "date passed" });
  });

  test("no bench session is long enough: 500 min at a stretch, Saturday has 420", () => {
    const long = makeProcess("long", [makeStep("carve", 500)]);
    expect(noTime(promised(long, null))).toEqual({
      because: "too long",
      step: "carve",
      minutes: 500,
      longest: 420,
    });
  });

  // On Monday at 18:05 the last session looked at goes on beyond the fourteen days of which the air is known.
  test.each(["Mon 17:00", "Mon 18:05"])(
    "in all bench hours the air is too cold for its coat (%s)",
    (when) => {
      const coated = makeProcess("coated", [makeStep("coat", 6, { coat: "varnish" })], [varnish]);
      const shop = inAir(
        promised(coated, null).shop(),
        everyDay(() => 6),
      );
      const context = contextAt(when, { hours: hoursOf({ hours: null }) });
      const [forecast] = planAhead(shop, context, 7, searching).answer.pieces;
      expect(forecast?.noTime).toEqual({ because: "air", step: "coat", coat: "varnish" });
    },
  );

  test("it waits longer than is looked ahead", () => {
    const slow = makeProcess("slow", inARow([makeStep("soak", 5, { wait: 20 * 1440 }), makeStep("rub", 5)]));
    expect(noTime(promised(slow, null))).toEqual({ because: "beyond", days: 14 });
    expect(short(askPlan(promised(slow, null), "Mon 17:00").pieces[0]?.piece ?? never())).toBe("1");
  });
});

function never(): never {
  throw new Error("the plan told no piece");
}
