import { describe, expect, test } from "vitest";
import { at } from "../fixtures/week-time.ts";
import { Bench, refusalOf, told } from "./bench.ts";

/** Walkers that hang from a step since Sunday noon, all ready for the next. */
function hanging(step: string, count: number, now: string, colours: readonly string[] = []): Bench {
  const bench = new Bench(now);
  const scheme = colours.map((colour) => ({ colour, minutes: null, flashOff: null }));
  bench.tag(count, { hung: { step, since: at("last Sun 12:00") }, scheme });
  for (let tag = 1; tag <= count; tag += 1) bench.measure(tag, 8);
  return bench;
}

const readied = (bench: Bench, station: string) => bench.shop.stations.get(station)?.setUp;

describe("a pot that takes its time", () => {
  test("is lit now and ready 20 min later; work at it before then says it was ready sooner, and is the same melt", () => {
    const bench = hanging("drill", 2, "Mon 18:00");
    bench.ready("lead pot", { beginning: true });
    expect(readied(bench, "lead pot")).toMatchObject({ begun: at("Mon 18:00"), ready: at("Mon 18:20") });
    bench.reads = false;
    expect(told(bench.at("Mon 18:15").take(1))).toEqual([
      "readied lead pot melt lead",
      "taken 1 pour the ballast",
    ]);
    expect(readied(bench, "lead pot")).toMatchObject({ begun: at("Mon 18:00"), ready: at("Mon 18:15") });
  });

  test("cannot have been lit at a time that has not come", () => {
    const bench = hanging("drill", 1, "Mon 18:00");
    expect(refusalOf(bench.ready("lead pot", { begun: at("Mon 19:50") }))).toMatchObject({
      code: "in the future",
      at: at("Mon 19:50"),
      now: at("Mon 18:00"),
    });
  });

  test("serves a second pour without a second melt or reading", () => {
    const bench = hanging("drill", 2, "Mon 18:00");
    bench.ready("lead pot");
    bench.reads = false;
    bench.take(1);
    bench.at("Mon 18:06").hang(1);
    expect(told(bench.at("Mon 18:40").take(2))).toEqual(["taken 2 pour the ballast"]);
  });

  test("gone cold is melted anew, and the lead is read about again", () => {
    const bench = hanging("drill", 2, "Mon 18:00");
    bench.ready("lead pot");
    bench.take(1);
    bench.at("Mon 18:06").hang(1);
    bench.at("Mon 18:10").putAway("lead pot");
    // It keeps 45 min from its last use; put away it is cold at once.
    bench.at("Mon 18:30").reads = false;
    expect(refusalOf(bench.take(2))).toMatchObject({ code: "read the caution", cautions: ["molten lead"] });
    bench.reads = true;
    expect(told(bench.take(2))).toContain("readied lead pot melt lead");
  });

  test("gone cold and never put away, is a new melt the next evening, with a reading of its own", () => {
    const bench = hanging("drill", 2, "Mon 18:00");
    bench.ready("lead pot");
    bench.take(1);
    bench.at("Mon 18:06").hang(1);
    bench.at("Tue 18:30").reads = false;
    expect(refusalOf(bench.take(2))).toMatchObject({ code: "read the caution", cautions: ["molten lead"] });
    bench.reads = true;
    expect(told(bench.take(2))).toContain("readied lead pot melt lead");
  });

  test("asks for the reading before it is lit, and for a measurement before the pour", () => {
    const bench = new Bench("Mon 18:00");
    bench.tag(1, { hung: { step: "drill", since: at("last Sun 12:00") } });
    expect(refusalOf(bench.ready("lead pot", { beginning: true, ticked: [] }))).toMatchObject({
      code: "read the caution",
      tags: [],
    });
    expect(refusalOf(bench.take(1))).toMatchObject({
      code: "held",
      until: null,
      holds: [{ code: "measure first" }],
    });
    bench.measure(1, 12, { what: "moisture" });
    expect(refusalOf(bench.take(1))).toMatchObject({ code: "held", holds: [{ code: "measured too high" }] });
  });

  test("lit twice, or readied while it is hot, changes nothing", () => {
    const bench = hanging("drill", 1, "Mon 18:00");
    bench.ready("lead pot", { beginning: true });
    expect(told(bench.ready("lead pot", { beginning: true }))).toEqual(["no: nothing changes"]);
    expect(told(bench.at("Mon 18:18").ready("lead pot"))).toContain("readied lead pot melt lead");
    expect(readied(bench, "lead pot")).toMatchObject({ begun: at("Mon 18:00"), ready: at("Mon 18:18") });
    expect(told(bench.at("Mon 18:19").ready("lead pot"))).toEqual(["no: nothing changes"]);
  });
});

describe("a cup that serves four and keeps 30 min", () => {
  test("is mixed once for three, and once more for the two it cannot serve", () => {
    const bench = hanging("detail", 5, "Mon 18:00");
    expect(told(bench.take([1, 2, 3])).filter((what) => what.startsWith("readied"))).toEqual([
      "readied bench mix resin",
    ]);
    bench.at("Mon 18:10").hang([1, 2, 3]);
    expect(told(bench.at("Mon 18:11").take([4, 5]))).toContain("readied bench mix resin");
  });

  test("too old, is mixed anew with the work; not put away, it may be renewed by hand", () => {
    const bench = hanging("detail", 2, "Mon 18:00");
    bench.ready("bench", { what: "mix" });
    expect(told(bench.at("Mon 18:30").take(1))).toContain("readied bench mix resin");
    bench.at("Mon 18:35").hang(1);
    expect(told(bench.ready("bench", { what: "mix" }))).toContain("readied bench mix resin");
    expect(readied(bench, "bench")).toMatchObject({ ready: at("Mon 18:35"), served: 0 });
  });
});

describe("a colour loaded", () => {
  test("stands until another: the next of the scheme needs a load of its own", () => {
    const bench = hanging("second seal", 2, "Mon 11:00", ["ochre", "white"]);
    expect(told(bench.take([1, 2]))).toContain("readied spray corner load ochre");
    bench.at("Mon 11:10").hang([1, 2]);
    expect(told(bench.at("Mon 11:20").take(1))).toContain("readied spray corner load white");
    bench.at("Mon 11:25").hang(1);
    expect(told(bench.take(2))).not.toContain("readied spray corner load white");
  });

  test("is one at a time: two pieces in two colours are not taken together", () => {
    const bench = hanging("second seal", 2, "Mon 11:00", ["ochre", "white"]);
    bench.take(1);
    bench.at("Mon 11:05").hang(1);
    expect(refusalOf(bench.at("Mon 11:15").take([1, 2]))).toMatchObject({
      code: "unfit value",
      value: "load white, load ochre",
    });
  });

  test("may be readied by hand: the next one unasked, any by name or colour", () => {
    const bench = hanging("second seal", 1, "Mon 11:00", ["ochre", "white"]);
    expect(told(bench.ready("spray")).at(0)).toBe("readied spray corner load ochre");
    expect(told(bench.ready("spray corner", { what: "white" })).at(0)).toBe(
      "readied spray corner load white",
    );
    expect(told(bench.ready("spray corner", { what: "load red oxide" })).at(0)).toBe(
      "readied spray corner load red oxide",
    );
    expect(refusalOf(bench.ready("oven"))).toMatchObject({ code: "no such station", exit: 2 });
    expect(refusalOf(bench.ready("lead pot", { what: "boil" }))).toMatchObject({
      code: "no such set-up",
      setUps: ["melt lead"],
    });
  });
});

test("work hung without being taken makes its set-up ready too; a hang of what was taken does not", () => {
  const bench = hanging("detail", 2, "Mon 18:00");
  expect(told(bench.hang(1))).toEqual(["readied bench mix resin", "hung 1 last clear"]);
  bench.take(2);
  // 40 min later the cup is too old, but what was taken was taken from it.
  expect(told(bench.at("Mon 18:40").hang(2))).toEqual(["hung 2 last clear"]);
});

test("what does not stand cannot be put away, nor before it was lit", () => {
  const bench = hanging("drill", 1, "Mon 18:00");
  expect(told(bench.putAway("lead pot"))).toEqual(["no: nothing stands"]);
  bench.ready("lead pot", { beginning: true });
  expect(told(bench.putAway("lead pot", { at: at("Mon 17:59") }))).toEqual(["no: nothing stands"]);
  expect(told(bench.putAway("LEAD"))).toEqual(["put away lead pot"]);
});
