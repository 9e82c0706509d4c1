import { describe, expect, test } from "vitest";
import type { RouteChange } from "../../src/journal/event.ts";
import { makeStep, resin, varnish } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";
import { Bench, refusalOf, told } from "./bench.ts";

function tagged(count = 1): Bench {
  const bench = new Bench("Mon 18:00");
  bench.tag(count);
  return bench;
}

describe("tagging", () => {
  test("hands out the next numbers in one act, named alike, after the process where no name is said", () => {
    const bench = tagged();
    const answer = bench.tag(3, { name: " smelt ", due: "2026-04-03", price: 2800, for: "a friend" });
    expect(told(answer)).toEqual(["tagged 2", "tagged 3", "tagged 4"]);
    expect(bench.piece(4)).toMatchObject({ name: "smelt", due: "2026-04-03", price: 2800, for: "a friend" });
    expect(bench.piece(1).name).toBe("walker");
  });

  test("expects the next number to be free, and brings its process", () => {
    const bench = tagged();
    const process = { hash: "hash", definition: bench.piece(1).definition };
    const plain = { name: null, scheme: [], due: null, price: null, for: null, hung: null };
    const decision = bench.decision({ act: "tag", at: bench.clock, process, count: 1, ...plain });
    expect(decision.expects).toEqual({ tags: {}, stations: {}, nextTag: 2 });
    expect(decision.processes).toEqual([process]);
  });

  test("of a piece that hangs already names a step of its process, a time gone by, and leaves work to do", () => {
    const bench = tagged(0);
    const since = at("Mon 12:00");
    expect(told(bench.tag(1, { hung: { step: "SECOND", since } }))).toEqual(["tagged 1"]);
    expect(bench.state(1, "colours")).toMatchObject({ is: "open", since: at("Mon 16:00") });
    expect(refusalOf(bench.tag(1, { hung: { step: "sael", since } }))).toMatchObject({
      code: "no such step",
      nearest: "seal",
    });
    expect(refusalOf(bench.tag(1, { hung: { step: "seal", since: at("Mon 18:01") } }))).toMatchObject({
      code: "in the future",
    });
    expect(refusalOf(bench.tag(1, { hung: { step: "water test", since } }))).toMatchObject({ what: "step" });
  });

  test.each([
    ["a count of none", { count: 0 }],
    ["half a piece", { count: 1.5 }],
    ["an empty name", { name: "  " }],
    ["a date there is not", { due: "2026-02-30" }],
    ["a price below nothing", { price: -1 }],
    ["a colour without a name", { scheme: [{ colour: "", minutes: 5, flashOff: 5 }] }],
    ["a pass of less than no time", { scheme: [{ colour: "red", minutes: -5, flashOff: 5 }] }],
  ])("refuses %s", (_, more) => {
    const { count = 1, ...others } = more as { count?: number };
    expect(refusalOf(tagged(0).tag(count, others))).toMatchObject({ code: "unfit value", exit: 2 });
  });
});

describe("a change", () => {
  test("is written where it is one, and refused where it is none", () => {
    const bench = tagged(2);
    bench.change(1, { weight: 5 });
    expect(told(bench.change([1, 2], { weight: 5 }))).toEqual(["changed 2"]);
    expect(refusalOf(bench.change([1, 2], { weight: 5 }))).toMatchObject({
      code: "nothing changes",
      what: "which comes first",
    });
    expect(told(bench.change(1, { due: "2026-04-03" }))).toEqual(["changed 1"]);
    expect(told(bench.change(1, { due: null }))).toEqual(["changed 1"]);
    expect(refusalOf(bench.change(1, { weight: 0 }))).toMatchObject({ code: "unfit value" });
  });

  test("of the scheme waits until the brush is out of the hand", () => {
    const bench = new Bench("Mon 18:00");
    bench.tag(1, { hung: { step: "second seal", since: at("Mon 12:00") } });
    const scheme = [{ colour: "white", minutes: null, flashOff: null }];
    bench.take(1, { colour: "ochre" });
    expect(refusalOf(bench.change(1, { scheme }))).toMatchObject({
      code: "already in hand",
      step: "colours",
    });
    expect(told(bench.change(1, { name: "perch" }))).toEqual(["changed 1"]);
  });
});

describe("the route of one piece", () => {
  const wax: RouteChange = {
    do: "put",
    name: "wax",
    like: "seal",
    after: "seal",
    coat: resin,
    handsOn: null,
  };

  test("takes a step put in, which works like another with its own coat", () => {
    const bench = tagged(2);
    expect(told(bench.route(1, wax, "for the salt"))).toEqual(["routed 1"]);
    expect(
      bench
        .piece(1)
        .route.map(({ name }) => name)
        .slice(3, 6),
    ).toEqual(["seal", "wax", "second seal"]);
    expect(bench.piece(2).route).toHaveLength(11);
    bench.at("Mon 18:30").workUpTo(1, "wax", "Mon 18:20");
    expect(told(bench.hang(1, { anyway: { reason: "wet on wet" } }))).toEqual(["hung 1 wax"]);
  });

  test("leaves begun steps as they are, and puts nothing before them", () => {
    const bench = tagged();
    bench.at("Mon 18:30").workUpTo(1, "second seal", "Mon 18:20");
    expect(refusalOf(bench.route(1, { do: "skip", step: "seal" }))).toMatchObject({ code: "already done" });
    expect(refusalOf(bench.route(1, { do: "swap", step: "drill", like: "shape", coat: null }))).toMatchObject(
      {
        code: "already done",
        step: "drill",
      },
    );
    expect(refusalOf(bench.route(1, { ...wax, after: "drill" }))).toMatchObject({
      code: "already done",
      step: "pour the ballast",
    });
    expect(told(bench.route(1, wax))).toEqual(["routed 1"]);
  });

  test("skips a step: what waited for it goes on; once all that is left is skipped the piece is finished", () => {
    const bench = tagged();
    bench.route(1, { do: "skip", step: "dri" });
    bench.hang(1);
    expect(bench.state(1, "pour the ballast").is).toBe("open");
    expect(refusalOf(bench.take(1, { step: "drill" }))).toMatchObject({ code: "no such step" });
    for (const { name } of bench.piece(1).route.slice(1)) bench.route(1, { do: "skip", step: name });
    expect(bench.piece(1).end).toMatchObject({ how: "finished", at: at("Mon 18:00") });
  });

  test("after a mend may change again from where it goes on", () => {
    const bench = tagged();
    bench.hang(1);
    bench.mend(1, "shape");
    expect(told(bench.route(1, { do: "swap", step: "shape", like: "drill", coat: varnish }))).toEqual([
      "routed 1",
    ]);
  });

  test.each<[string, RouteChange, object]>([
    ["a name it has", { ...wax, name: "Drill" }, { what: "name" }],
    ["no name", { ...wax, name: " " }, { what: "name" }],
    ["a pattern there is not", { ...wax, like: "waks" }, { code: "no such step" }],
    [
      "a step swapped for itself",
      { do: "swap", step: "seal", like: "seal", coat: null },
      { code: "nothing changes" },
    ],
  ])("refuses %s", (_, change, facts) => {
    expect(refusalOf(tagged().route(1, change))).toMatchObject(facts);
  });

  test("keeps its only step", () => {
    const bench = new Bench("Mon 18:00", {
      name: "one",
      piece: "lure",
      steps: [makeStep("all", 5)],
      coats: {},
      note: null,
    });
    bench.tag();
    expect(refusalOf(bench.route(1, { do: "skip", step: "all" }))).toMatchObject({ code: "unfit value" });
  });
});

describe("a piece hanging", () => {
  test("moves once it is begun, and not to where it hangs", () => {
    const bench = tagged();
    expect(told(bench.move(1, "rack"))).toEqual(["no: not begun"]);
    expect(told(bench.touch(1, "dry"))).toEqual(["no: no coat"]);
    bench.hang(1);
    expect(told(bench.move(1, "rack"))).toEqual(["moved 1"]);
    expect(told(bench.move(1, "rack"))).toEqual(["no: nothing changes"]);
  });

  test("is touched on its newest coat", () => {
    const bench = new Bench("Mon 18:00");
    bench.tag(1, { hung: { step: "seal", since: at("Mon 12:00") } });
    bench.hang(1);
    expect(told(bench.touch(1, "tacky"))).toEqual(["touched 1 second seal"]);
    expect(refusalOf(bench.at("Mon 23:00").take(1))).toMatchObject({ code: "too early", until: null });
    bench.touch(1, "dry");
    expect(bench.state(1, "colours").is).toBe("open");
  });
});

test("what is measured goes by the name a step asks for", () => {
  const bench = tagged();
  expect(bench.measure(1, 8, { what: "MOISTURE" })).toMatchObject({
    events: [{ what: "wood moisture", value: 8 }],
  });
  expect(bench.measure(1, 12, { what: "grams", unit: "g" })).toMatchObject({ events: [{ what: "grams" }] });
  expect(refusalOf(bench.measure(1, Number.NaN))).toMatchObject({ code: "unfit value" });
});

test("a note without tags is of the whole shop, undone like any other", () => {
  const bench = tagged(1);
  const answer = bench.note([], " the heater was off ");
  expect(answer).toMatchObject({ events: [{ kind: "noted", tag: null, text: "the heater was off" }] });
  expect(bench.piece(1).notes).toEqual([]);
  expect(refusalOf(bench.note([], " "))).toMatchObject({ code: "unfit value", what: "note" });
  expect(told(bench.undo())).toEqual(["undone"]);
});

test("an unknown tag refuses all, naming those there are", () => {
  const bench = tagged(2);
  expect(refusalOf(bench.note([1, 7]))).toMatchObject({
    code: "no such tag",
    tag: 7,
    known: [1, 2],
    exit: 2,
  });
  expect(told(bench.note([2, 2, 1]))).toEqual(["noted 2", "noted 1"]);
  bench.scrap(1, "split");
  expect(refusalOf(bench.note([7]))).toMatchObject({ known: [2] });
});
