import { describe, expect, test } from "vitest";
import { at } from "../fixtures/week-time.ts";
import { Bench, refusalOf, told } from "./bench.ts";
import { branching } from "./random-requests.ts";

function tagged(now = "Mon 18:00"): Bench {
  const bench = new Bench(now);
  bench.tag(2);
  return bench;
}

describe("a time", () => {
  test("lies neither in the future, nor before the tagging, nor before what came last", () => {
    const bench = tagged();
    bench.at("Mon 18:10").take(1);
    bench.at("Mon 18:30");
    expect(refusalOf(bench.hang(1, { at: at("Mon 18:31") }))).toMatchObject({
      code: "in the future",
      exit: 2,
    });
    expect(refusalOf(bench.note(1, "a knot", { at: at("Mon 17:00") }))).toMatchObject({
      code: "before it was tagged",
    });
    expect(refusalOf(bench.hang(1, { at: at("Mon 18:05") }))).toMatchObject({
      code: "before the last",
      lastAt: at("Mon 18:10"),
      what: "taken shape",
    });
    expect(told(bench.hang(1, { at: at("Mon 18:20") }))).toEqual(["hung 1 shape"]);
  });

  test("said as a whole minute is not before what happened within that minute", () => {
    const bench = tagged();
    bench.clock = at("Mon 18:10") + 30_000;
    bench.take(1);
    bench.clock += 20_000;
    expect(bench.hang(1, { at: at("Mon 18:10") })).toMatchObject({
      events: [{ at: at("Mon 18:10") + 30_000 }],
    });
  });

  test("is free between two branches of a route", () => {
    const bench = new Bench("Mon 18:00", branching);
    bench.tag();
    bench.hang(1);
    bench.at("Mon 18:30").hang(1, { step: "prime" });
    expect(told(bench.hang(1, { step: "wire", at: at("Mon 18:20") }))).toEqual(["hung 1 wire"]);
    expect(refusalOf(bench.mend(1, "wire", { at: at("Mon 18:25") }))).toMatchObject({
      code: "before the last",
    });
  });
});

describe("a better time", () => {
  test("moves the newest work of a tag, a note said since notwithstanding", () => {
    const bench = tagged();
    bench.take(1);
    bench.at("Mon 18:40").hang(1);
    bench.note(1);
    bench.at("Mon 19:00");
    expect(bench.amend(1, "Mon 18:35")).toMatchObject({
      events: [{ kind: "amended", target: 8, tag: 1 }, {}],
    });
    expect(bench.piece(1).work.get("shape")?.hangs[0]).toMatchObject({
      hungAt: at("Mon 18:35"),
      minutes: 35,
    });
  });

  test("keeps the order of its own piece: after the take it ends, before the hang that follows", () => {
    const bench = tagged();
    bench.at("Mon 18:05").take(1);
    bench.at("Mon 18:40").hang(1);
    const hung = bench.events.length;
    bench.at("Mon 18:50").hang(1);
    bench.at("Mon 19:00");
    expect(refusalOf(bench.amend({ act: hung }, "Mon 18:04"))).toMatchObject({
      code: "before the last",
      what: "taken shape",
    });
    expect(refusalOf(bench.amend({ act: hung }, "Mon 18:51"))).toMatchObject({
      code: "after the next",
      nextAt: at("Mon 18:50"),
      what: "hung drill",
    });
    expect(refusalOf(bench.amend({ act: hung }, "Mon 17:00"))).toMatchObject({
      code: "before it was tagged",
    });
    expect(refusalOf(bench.amend({ act: hung }, "Mon 19:01"))).toMatchObject({ code: "in the future" });
    expect(refusalOf(bench.amend({ act: hung }, "Mon 18:40"))).toMatchObject({ code: "nothing changes" });
    expect(told(bench.amend({ act: hung }, "Mon 18:45"))).toEqual(["amended 1", "amended bench"]);
  });

  test("of a tagging comes before all that was done, and not before it hung", () => {
    const bench = new Bench("Mon 18:00");
    bench.tag(1, { hung: { step: "shape", since: at("Mon 12:00") } });
    bench.hang(1);
    expect(refusalOf(bench.amend({ act: 1 }, "Mon 11:00"))).toMatchObject({
      code: "before the last",
      what: "hung shape",
    });
    bench.at("Mon 19:00");
    expect(refusalOf(bench.amend({ act: 1 }, "Mon 18:30"))).toMatchObject({
      code: "after the next",
      what: "hung drill",
    });
    expect(told(bench.amend({ act: 1 }, "Mon 17:00"))).toEqual(["amended 1"]);
  });

  test("of a pot stays between its lighting and its putting away", () => {
    const bench = new Bench("Mon 18:00");
    bench.tag(1, { hung: { step: "drill", since: at("Mon 12:00") } });
    bench.ready("lead pot", { beginning: true });
    bench.at("Mon 19:00").putAway("lead pot");
    const putAway = bench.events.length;
    bench.at("Mon 20:00");
    expect(refusalOf(bench.amend({ act: putAway }, "Mon 17:50"))).toMatchObject({
      code: "before the last",
      tag: null,
    });
    expect(refusalOf(bench.amend({ act: 2 }, "Mon 19:30"))).toMatchObject({
      code: "after the next",
      tag: null,
    });
  });

  test("can be bettered again, and taken back by undo", () => {
    const bench = tagged();
    bench.at("Mon 18:40").hang(1);
    bench.at("Mon 19:00").amend(1, "Mon 18:30");
    bench.amend(1, "Mon 18:20");
    expect(bench.piece(1).work.get("shape")?.hangs[0]?.hungAt).toBe(at("Mon 18:20"));
    bench.undo();
    expect(bench.piece(1).work.get("shape")?.hangs[0]?.hungAt).toBe(at("Mon 18:30"));
  });

  test("of an act that is not there is told", () => {
    expect(refusalOf(tagged().amend({ act: 99 }, "Mon 17:00"))).toMatchObject({
      code: "no such act",
      exit: 2,
    });
    expect(refusalOf(tagged().amend(9, "Mon 17:00"))).toMatchObject({ code: "no such tag", known: [1, 2] });
  });
});

describe("a clock that was wrong", () => {
  test("sets back what was recorded ahead of now, not further than needed to keep the order", () => {
    const bench = tagged("Mon 18:00");
    // The clock runs an hour fast from here.
    bench.at("Mon 19:10").take(1);
    bench.at("Mon 19:40").hang(1);
    bench.at("Mon 18:45");
    expect(refusalOf(bench.take(1))).toMatchObject({ code: "before the last", lastAt: at("Mon 19:40") });
    // Recorded 19:40, 55 min ahead of now.
    expect(refusalOf(bench.setClock(54))).toMatchObject({
      code: "unfit value",
      expected: "a whole number from 55 to 70",
    });
    expect(told(bench.setClock(60))).toEqual(["clock"]);
    expect(bench.piece(1).work.get("shape")?.hangs[0]).toMatchObject({
      takenAt: at("Mon 18:10"),
      hungAt: at("Mon 18:40"),
    });
    expect(told(bench.take(1)).at(-1)).toBe("taken 1 drill");
  });

  test("sets back nothing that a right clock has stamped since", () => {
    const bench = tagged("Mon 18:00");
    // Written by a clock five days ahead; the next ones by a right clock.
    bench.at("Sat 20:00").note(1);
    bench.at("Mon 20:05").note(2);
    bench.at("Tue 18:00").take(1);
    bench.at("Tue 18:30");
    expect(told(bench.setClock(5 * 1440))).toEqual(["clock", "clock"]);
    expect(bench.piece(1).notes[0]?.at).toBe(at("Mon 20:00"));
    expect(bench.piece(2).notes[0]?.at).toBe(at("Mon 20:05"));
    expect(bench.piece(1).hand?.takenAt).toBe(at("Tue 18:00"));
    expect(told(bench.hang(1)).at(-1)).toBe("hung 1 shape");
  });

  test("is leaned on by everything said since: times were given by it", () => {
    const bench = tagged("Mon 18:00");
    bench.at("Mon 19:10").note(1);
    bench.at("Mon 18:45").setClock(60);
    const clock = bench.events.length;
    bench.note(2);
    expect(refusalOf(bench.undo(clock))).toMatchObject({
      code: "leaned on",
      what: "clock",
      byWhat: "noted, 2",
    });
  });

  test("and was slow is set forward for what it wrote, and only that", () => {
    const bench = tagged("Mon 18:00");
    // The clock is 40 min slow for a while.
    const since = bench.events.length + 1;
    bench.at("Mon 18:05").take(1);
    bench.at("Mon 18:45").hang(1);
    const until = bench.events.length + 1;
    bench.at("Mon 19:30").take(2);
    expect(told(bench.setClock(-40, { since, until }))).toEqual(["clock", "clock"]);
    // Taken 18:45 by a right clock, hung 19:25; 2 was taken by the right clock already.
    expect(bench.piece(1).work.get("shape")?.hangs[0]).toMatchObject({
      takenAt: at("Mon 18:45"),
      hungAt: at("Mon 19:25"),
    });
    expect(bench.piece(2).hand?.takenAt).toBe(at("Mon 19:30"));
    // Another terminal that saw the clock jump too asks for the same.
    expect(told(bench.setClock(-40, { since, until }))).toEqual(["no: nothing changes"]);
    expect(told(bench.undo())).toEqual(["undone"]);
    expect(bench.piece(1).work.get("shape")?.hangs[0]?.hungAt).toBe(at("Mon 18:45"));
  });

  test("is not set forward past now, nor past what a right clock wrote after it", () => {
    const bench = tagged("Mon 18:00");
    const since = bench.events.length + 1;
    bench.at("Mon 18:05").take(1);
    const until = bench.events.length + 1;
    bench.at("Mon 18:30").hang(1);
    bench.at("Mon 18:40");
    // Taken 18:05: hung by a right clock 18:30, at most 25 min later. Now is 35 min later.
    expect(refusalOf(bench.setClock(-30, { since, until }))).toMatchObject({
      expected: "a whole number from 0 to 25",
    });
    // As it is written now, no minute fits in.
    bench.note(1);
    const newest = bench.events.length;
    expect(refusalOf(bench.setClock(-30, { since: newest }))).toMatchObject({
      value: "30",
      expected: "no minute forward, for what was written since would then lie ahead of now",
    });
    bench.undo();
    bench.at("Mon 18:40");
    // The hanging too: at most until now, 10 min.
    expect(refusalOf(bench.setClock(-30, { since }))).toMatchObject({
      expected: "a whole number from 0 to 10",
    });
  });

  test("that is not ahead changes nothing", () => {
    expect(told(tagged().setClock(10))).toEqual(["no: nothing changes"]);
  });
});
