import { describe, expect, test } from "vitest";
import { at } from "../fixtures/week-time.ts";
import { Bench, refusalOf, told } from "./bench.ts";

function tagged(count: number): Bench {
  const bench = new Bench("Mon 18:00");
  bench.tag(count);
  return bench;
}

describe("undo", () => {
  test("takes back the newest act, then the one before it, never the same twice", () => {
    const bench = tagged(1);
    bench.note(1, "one");
    bench.note(1, "two");
    expect(bench.undo()).toMatchObject({ events: [{ kind: "undone", target: 3 }] });
    expect(bench.undo()).toMatchObject({ events: [{ target: 2 }] });
    expect(refusalOf(bench.undo(2))).toMatchObject({ code: "no such act", act: 2, exit: 2 });
    // The undo itself, act 4, is no act of the bench.
    expect(refusalOf(bench.undo(4))).toMatchObject({ code: "no such act" });
    bench.undo();
    expect(bench.shop.pieces.size).toBe(0);
    expect(refusalOf(bench.undo())).toMatchObject({ code: "nothing to undo", exit: 3 });
  });

  test("gives a tag's number never again", () => {
    const bench = tagged(1);
    bench.undo();
    expect(bench.tag()).toMatchObject({ events: [{ tag: 2 }] });
  });

  test("takes back several pieces and a pot as they were done: in one act", () => {
    const bench = new Bench("Mon 18:00");
    bench.tag(2, { hung: { step: "detail", since: at("last Sun 12:00") } });
    bench.take([1, 2]);
    expect(told(bench.undo())).toEqual(["undone 1", "undone 2", "undone bench"]);
    expect(bench.shop.stations.get("bench")?.setUp ?? null).toBeNull();
    expect(bench.state(1, "last clear").is).toBe("open");
  });

  test("of an older act works while nothing leans on it, and names both when something does", () => {
    const bench = tagged(2);
    bench.note(1);
    bench.note(2);
    expect(told(bench.undo(3))).toEqual(["undone 1"]);
    bench.take(2);
    const taken = bench.shop.acts.at(-1)?.act ?? 0;
    bench.at("Mon 18:30").hang(2);
    expect(refusalOf(bench.undo(taken))).toMatchObject({
      code: "leaned on",
      act: taken,
      what: "taken shape, 2",
      byWhat: "hung shape, 2",
    });
  });

  test("names the newest act that leans on it: that one can be undone at once", () => {
    const bench = tagged(1);
    bench.take(1);
    bench.at("Mon 18:30").hang(1);
    bench.at("Mon 18:40").take(1);
    const refusal = refusalOf(bench.undo(1));
    expect(refusal).toMatchObject({ code: "leaned on", byWhat: "taken drill, 1" });
    expect(told(bench.undo("byAct" in refusal ? refusal.byAct : null))).toEqual(["undone 1", "undone bench"]);
  });

  test("of work is not leaned on by other pieces worked at its station since", () => {
    const bench = tagged(2);
    bench.at("Mon 18:10").hang(1);
    bench.at("Mon 18:20").hang(2);
    bench.at("Mon 18:30").take(2);
    expect(told(bench.undo(3))).toEqual(["undone 1", "undone bench"]);
    expect(bench.state(1, "shape").is).toBe("open");
    expect(bench.state(2, "drill").is).toBe("in hand");
    expect(bench.shop.setAside).toEqual([]);
  });

  test("of a cup is leaned on by what was laid of it and by its putting away, not by other work there", () => {
    const bench = new Bench("Mon 18:00");
    bench.tag(1, { hung: { step: "detail", since: at("last Sun 12:00") } });
    bench.tag(1);
    bench.ready("bench");
    const cup = bench.shop.acts.at(-1)?.act ?? 0;
    bench.at("Mon 18:10").hang(2);
    const ask = { act: "undo", at: bench.clock, target: cup } as const;
    expect(bench.decision(ask).events).toMatchObject([{ kind: "undone", station: "bench" }]);
    bench.hang(1);
    const laid = bench.shop.acts.at(-1)?.act ?? 0;
    expect(refusalOf(bench.undo(cup))).toMatchObject({ code: "leaned on", byWhat: "hung last clear, 1" });
    bench.undo(laid);
    bench.putAway("bench");
    expect(refusalOf(bench.undo(cup))).toMatchObject({ code: "leaned on", byWhat: "put away" });
  });

  test("of a setting is leaned on by a later one of its kind alone", () => {
    const bench = tagged(1);
    bench.settle({ of: "hands", from: "2026-03-23", pairs: 2 });
    bench.settle({ of: "place", name: "rack", hooks: 8 });
    bench.settle({ of: "hands", from: "2026-03-24", pairs: 1 });
    expect(refusalOf(bench.undo(2))).toMatchObject({ code: "leaned on", byAct: 4 });
    expect(told(bench.undo(3))).toEqual(["undone"]);
    expect(bench.shop.settings.places.size).toBe(0);
  });

  test("takes back what the same one did: a demo never the maker's", () => {
    const bench = tagged(1);
    bench.by = "demo";
    expect(refusalOf(bench.undo())).toMatchObject({ code: "nothing to undo" });
    bench.note(1);
    expect(bench.undo()).toMatchObject({ events: [{ target: 2 }] });
  });

  test("leans on the whole journal and on every tag and station of its act", () => {
    const bench = tagged(2);
    bench.hang([1, 2]);
    const { expects } = bench.decision({ act: "undo", at: bench.clock, target: null });
    expect(expects).toEqual({ tags: { 1: 3, 2: 4 }, stations: { bench: 4 }, newest: 4 });
  });
});
