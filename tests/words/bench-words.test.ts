import { describe, expect, test } from "vitest";
import type { HandRow, WorkRow } from "../../src/plan/now-answer.ts";
import { sayHold } from "../../src/words/say-hold.ts";
import { sayBench, sayOpening, sayPrepared, sayStage } from "../../src/words/say-waiting.ts";
import { sayHandRow, sayWhy, sayWorkRow } from "../../src/words/say-work.ts";
import { scuff } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";

import { costsNothing, hanging, nothing, pot, sealing, speechAt } from "./made-rows.ts";

describe("a row of work", () => {
  test("has who, what, how long and by when", () => {
    expect(sayWorkRow(sealing, speechAt("Mon 18:01"))).toEqual({
      who: "1 2",
      what: "second seal",
      effort: "12 min",
      by: "begin by 20:00",
      ifLeft: "",
    });
  });

  test("names one piece, its colour, and the set-up that comes first or stands", () => {
    const row = {
      ...sealing,
      tags: [14],
      name: "smelt",
      step: "colours",
      colour: "ochre",
      shuts: null,
      beginBy: null,
    };
    const load = { what: "load ochre", minutes: 6, standing: false };
    expect(sayWorkRow({ ...row, setUp: load }, speechAt("Mon 18:01"))).toMatchObject({
      who: "14 smelt",
      what: "colours, ochre",
      effort: "12 min + load ochre 6 min",
      by: "any time",
    });
    const standing = { ...load, minutes: 0, standing: true };
    expect(sayWorkRow({ ...row, setUp: standing }, speechAt("Mon 18:01")).effort).toBe(
      "12 min, load ochre stands ready",
    );
    const lit = { what: "melt lead", minutes: 20, standing: true };
    expect(sayWorkRow({ ...row, setUp: lit }, speechAt("Mon 18:01")).effort).toBe(
      "12 min, melt lead is ready in 20 min",
    );
  });

  test("a late window's preparation comes before the step, and a new piece has no tag", () => {
    const scuffing = { ...sealing, part: "preparation", preparation: scuff } as const;
    expect(sayWorkRow(scuffing, speechAt("Tue 18:01")).what).toBe("scuff, then second seal");
    expect(sayWorkRow({ ...sealing, tags: [] }, speechAt("Tue 18:01")).who).toBe("a new one");
  });

  test("tells what leaving it brings, and to whom", () => {
    const ifLeft = {
      ...costsNothing,
      preparation: scuff,
      preparationFrom: at("Tue 12:30"),
      shut: [{ tag: 2, at: at("Tue 12:30") }],
      finishNow: at("Thu 19:02"),
      finishLeft: at("Fri 19:10"),
    };
    expect(sayWorkRow({ ...sealing, ifLeft }, speechAt("Mon 18:01")).ifLeft).toBe(
      "if left: scuff 5 min for 2 from Tue 12:30, finished Fri 19:10, not Thu 19:02",
    );
    const others = { amends: 0, broken: [], delay: 600, later: [{ tag: 4, minutes: 600 }] };
    const better = { ...costsNothing, others, finishNow: at("Fri 19:10"), finishLeft: at("Thu 19:02") };
    expect(sayWorkRow({ ...sealing, ifLeft: better }, speechAt("Mon 18:01")).ifLeft).toBe(
      "if left: finished Thu 19:02, sooner than Fri 19:10, the others 10 h later in all",
    );
    // What nobody pays for is no reason to leave it.
    const free = { ...better, others: { ...others, delay: 20 } };
    expect(sayWorkRow({ ...sealing, ifLeft: free }, speechAt("Mon 18:01")).ifLeft).toBe("");
    // A plan is never that exact.
    const same = { ...better, finishNow: at("Fri 19:10"), finishLeft: at("Fri 19:02") };
    expect(sayWorkRow({ ...sealing, ifLeft: same }, speechAt("Mon 18:01")).ifLeft).toBe(
      "if left: the others 10 h later in all",
    );
    const lost = {
      ...costsNothing,
      mend: true,
      shut: [
        { tag: 1, at: at("Mon 20:00") },
        { tag: 2, at: at("Tue 12:30") },
      ],
    };
    expect(sayWorkRow({ ...sealing, ifLeft: lost }, speechAt("Mon 18:01")).ifLeft).toBe(
      "if left: only a mend helps from 20:00",
    );
  });

  test("tells why it stands where it stands", () => {
    const say = (why: WorkRow["why"]) => sayWhy(why, speechAt("Mon 18:01"));
    expect(say(sealing.why)).toBe("shuts 20:00");
    expect(say({ because: "shuts before the bench opens again", at: at("Tue 12:30") })).toBe(
      "shuts Tue 12:30, before the bench opens again",
    );
    expect(say({ because: "set-up keeps", what: "melt lead", until: at("Mon 21:03") })).toBe(
      "melt lead keeps till 21:03",
    );
    for (const because of [
      "left half-done",
      "in the order of finishing",
      "due",
      "this one first",
      "aim",
      "nothing else to do",
    ] as const) {
      expect(say({ because })).toMatch(/^[a-z ,-]+$/);
    }
  });
});

describe("what is in hand", () => {
  const row: HandRow = {
    tags: [1],
    step: "first clear",
    part: "step",
    station: "spray corner",
    since: at("Tue 20:30"),
    usualMinutes: 8,
    left: false,
    forgotten: null,
    cautions: [],
    warning: null,
  };
  test("is told with its usual time, half-done or forgotten with the question", () => {
    expect(sayHandRow(row, speechAt("Tue 20:31"))).toBe("1 first clear in hand since 20:30, usually 8 min");
    expect(sayHandRow({ ...row, left: true }, speechAt("Tue 20:50"))).toBe(
      "1 first clear half-done since 20:30",
    );
    const forgotten = { usual: at("Tue 20:38"), latest: at("Tue 21:00") };
    expect(sayHandRow({ ...row, forgotten }, speechAt("Wed 18:00"))).toBe(
      "1 first clear in hand since Tue 20:30: hung Tue 20:38, as usual?",
    );
  });
});

describe("what waits", () => {
  test("is told with its stage and both ends of its window", () => {
    expect(sayStage(hanging)).toBe("dust-free 31 %");
    expect(sayOpening(hanging, speechAt("Mon 21:00"))).toBe("opens 23:04, shuts Tue 19:04");
    expect(sayOpening({ ...hanging, state: "open" }, speechAt("Tue 18:00"))).toBe(
      "open since Mon 23:04, shuts 19:04",
    );
    expect(sayOpening({ ...hanging, state: "shut" }, speechAt("Tue 19:10"))).toBe("shut 19:04");
  });

  test("by both ends of a forgotten step too, and by a touch where only that can say", () => {
    const otherEnd = { opens: at("Mon 23:26"), shuts: at("Tue 19:26") };
    expect(sayOpening({ ...hanging, otherEnd }, speechAt("Mon 21:00"))).toBe(
      "opens between 23:04 and 23:26, shuts between Tue 19:04 and Tue 19:26",
    );
    expect(sayOpening({ ...hanging, because: "tacky", opens: null }, speechAt("Mon 21:00"))).toBe(
      "was tacky: a touch must say dry",
    );
    expect(sayOpening({ ...hanging, because: "feel first", opens: null }, speechAt("Mon 21:00"))).toBe(
      "opens by a touch alone: feel it",
    );
  });

  test("a piece not begun tells its step", () => {
    expect(sayStage({ ...hanging, state: "not begun", stage: null, step: "shape" })).toBe("shape not begun");
  });
});

test("what stands at a station is told with how long it keeps", () => {
  expect(sayPrepared(pot, speechAt("Mon 20:20"))).toBe(
    "lead pot: melt lead, keeps till 21:03, 5 min to put away",
  );
  expect(sayPrepared({ ...pot, state: "getting ready" }, speechAt("Mon 20:00"))).toBe(
    "lead pot: melt lead, ready 20:10, 5 min to put away",
  );
  expect(sayPrepared({ ...pot, state: "kept too long" }, speechAt("Mon 21:10"))).toBe(
    "lead pot: melt lead, kept too long, since 21:03, 5 min to put away",
  );
  expect(sayPrepared({ ...pot, until: null, putAwayMinutes: 0 }, speechAt("Mon 20:20"))).toBe(
    "lead pot: melt lead, until another load",
  );
});

test("the bench is told open, shut, or by assumed hours", () => {
  expect(sayBench({ ...nothing.bench, minutesLeft: 138, putAway: 5 }, speechAt("Mon 18:42"))).toBe(
    "bench till 21:00, 2 h 18 left, 5 min of it to put away",
  );
  expect(sayBench({ ...nothing.bench, minutesLeft: 2, putAway: 5 }, speechAt("Mon 20:58"))).toBe(
    "bench till 21:00, 2 min left, 5 min to put away",
  );
  expect(sayBench({ ...nothing.bench, closes: null, assumedHours: true }, speechAt("Mon 22:00"))).toBe(
    "bench shut till Tue 18:00 (hours assumed: say yours)",
  );
});

test("a hold tells until when, by what, and what can be done", () => {
  const hold = {
    code: "keep apart",
    because: "solvent vapour of 1 and 2",
    until: at("Mon 19:44"),
    tags: [1, 2],
    remedy: null,
  } as const;
  expect(sayHold(hold, hold.until, speechAt("Mon 19:05"))).toBe("till 19:44, solvent vapour of 1 and 2");
  const unmeasured = { ...hold, because: "wood moisture not measured", remedy: "measure it" };
  expect(sayHold(unmeasured, null, speechAt("Mon 19:05"))).toBe("wood moisture not measured: measure it");
});
