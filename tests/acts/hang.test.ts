import { describe, expect, test } from "vitest";
import { hookNeededUntil } from "../../src/shop/hook.ts";
import { makeProcess, makeStep, varnish } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";
import { Bench, refusalOf, told } from "./bench.ts";

/** Walkers that hang from a step since Sunday noon. */
function hanging(step: string, count: number, now: string, colours: readonly string[] = []): Bench {
  const bench = new Bench(now);
  const scheme = colours.map((colour) => ({ colour, minutes: null, flashOff: 5 }));
  bench.tag(count, { hung: { step, since: at("last Sun 12:00") }, scheme });
  return bench;
}

const coloursOf = (bench: Bench) =>
  bench
    .piece(1)
    .work.get("colours")
    ?.hangs.map(({ colour, pass }) => [pass, colour]);

describe("hung without being taken", () => {
  test("counts its waits, its hands-on time not known", () => {
    const bench = new Bench("Mon 18:00");
    bench.tag();
    bench.hang(1);
    expect(bench.piece(1).work.get("shape")?.hangs[0]).toMatchObject({ takenAt: null, minutes: null });
    expect(bench.state(1, "drill").is).toBe("open");
  });

  test("before its coat is fit, only as a fact with its reason", () => {
    const bench = hanging("seal", 1, "last Sun 14:00");
    expect(refusalOf(bench.hang(1))).toMatchObject({ code: "too early", until: at("last Sun 16:00") });
    const hung = bench.hang(1, { anyway: { reason: "felt dry" } });
    expect(hung).toMatchObject({ events: [{ overrides: [{ over: "too early", reason: "felt dry" }] }] });
  });
});

describe("hung as usual", () => {
  test("ends its usual 8 min after it was taken, two pieces together after 16, and teaches nothing", () => {
    const bench = hanging("detail", 2, "Mon 20:30");
    bench.take([1, 2]);
    const hung = bench.at("Tue 18:00").hang([1, 2], { asUsual: true });
    expect(hung).toMatchObject({
      events: [
        { at: at("Mon 20:46"), guessed: true },
        { at: at("Mon 20:46"), guessed: true },
      ],
    });
  });

  test("is only said of what is in hand", () => {
    const bench = new Bench("Mon 18:00");
    bench.tag();
    expect(told(bench.hang(1, { asUsual: true }))).toEqual(["no: not in hand"]);
    bench.take(1);
    bench.leave(1);
    expect(told(bench.hang(1, { asUsual: true }))).toEqual(["no: not in hand"]);
  });
});

describe("painting by the scheme", () => {
  test("takes its colours in order, one named out of order when it is said", () => {
    const bench = hanging("second seal", 1, "Mon 11:00", ["ochre", "white", "black"]);
    bench.hang(1, { colour: "White" });
    bench.at("Mon 11:10").hang(1);
    bench.at("Mon 11:20").hang(1);
    expect(coloursOf(bench)).toEqual([
      [1, "white"],
      [2, "ochre"],
      [3, "black"],
    ]);
    expect(bench.state(1, "colours").is).toBe("done");
  });

  test("takes another colour until the next step is begun", () => {
    const bench = hanging("second seal", 1, "Mon 11:00", ["ochre"]);
    bench.hang(1);
    expect(refusalOf(bench.hang(1, { colour: "red" }))).toMatchObject({
      code: "too early",
      until: at("Mon 11:05"),
    });
    expect(bench.at("Mon 11:05").hang(1, { colour: "red" })).toMatchObject({
      events: [{ kind: "readied" }, { colour: "red", another: true, pass: 2 }],
    });
    bench.at("Mon 11:10").take(1);
    expect(refusalOf(bench.hang(1, { step: "colours", colour: "blue" }))).toMatchObject({
      code: "already done",
    });
  });

  test("without a scheme is one pass of whatever colour is said", () => {
    const bench = hanging("second seal", 1, "Mon 11:00");
    expect(bench.hang(1, { colour: "red" })).toMatchObject({
      events: [{}, { colour: "red", another: false }],
    });
    expect(bench.state(1, "colours").is).toBe("done");
  });

  test("in another colour than was taken is as it was sprayed", () => {
    const bench = hanging("second seal", 1, "Mon 11:00", ["ochre"]);
    bench.take(1);
    bench.at("Mon 11:06").hang(1, { colour: "sand" });
    expect(bench.piece(1).scheme.map(({ colour }) => colour)).toEqual(["sand", "ochre"]);
    expect(bench.shop.setAside).toEqual([]);
  });

  test("has no meaning for a step of one pass", () => {
    const bench = hanging("colours", 1, "Mon 11:00");
    expect(refusalOf(bench.hang(1, { step: "first clear", colour: "red" }))).toMatchObject({
      code: "unfit value",
    });
  });
});

describe("a step with a result", () => {
  test("asks for an answer and lists them", () => {
    const bench = hanging("hangers", 1, "Mon 18:00");
    expect(refusalOf(bench.hang(1))).toMatchObject({
      code: "no such answer",
      answers: ["passes", "tune"],
      exit: 2,
    });
    expect(refusalOf(bench.hang(1, { result: "sinks" }))).toMatchObject({ code: "no such answer" });
    expect(bench.hang(1, { result: "TUN" })).toMatchObject({ events: [{ result: "tune" }] });
    expect(bench.piece(1).sentBack).toMatchObject([{ to: "hangers", answer: "tune" }]);
  });

  test("cannot send a piece back to a step its route has not", () => {
    const bench = new Bench("Mon 18:00");
    bench.tag();
    bench.route(1, { do: "skip", step: "hangers" });
    bench.workUpTo(1, "water test", "Mon 19:00");
    bench.at("Tue 20:00");
    expect(refusalOf(bench.hang(1, { result: "tune" }))).toMatchObject({
      code: "no such step",
      step: "hangers",
    });
  });

  test("is the only kind that takes an answer", () => {
    const bench = hanging("seal", 1, "last Sun 18:00");
    expect(refusalOf(bench.hang(1, { result: "passes" }))).toMatchObject({
      code: "no such answer",
      answers: [],
    });
  });
});

test("it hangs where it is said, else where the step hangs it; a scuffed piece lies on the bench", () => {
  const bench = hanging("seal", 2, "last Sun 18:00");
  bench.hang(1, { place: " warm box " });
  expect(bench.piece(1).place).toBe("warm box");
  bench.hang(2);
  expect(bench.piece(2).place).toBe("rack");
  bench.at("Mon 18:30").hang(2, { step: "scuff" });
  expect(bench.piece(2).place).toBeNull();
});

test("several tags hang all or none, each its own step", () => {
  const bench = hanging("seal", 1, "last Sun 18:00");
  bench.tag();
  expect(told(bench.hang([1, 2]))).toEqual(["hung 1 second seal", "hung 2 shape"]);
  const written = bench.events.length;
  // 2 is open again at once, 1 dries for 4 h.
  expect(refusalOf(bench.hang([2, 1]))).toMatchObject({ code: "too early", tag: 1 });
  expect(bench.events.length).toBe(written);
});

describe("bench work beside a coat that dries", () => {
  // Dry-hard after 12 h; the wire and the tail need nothing of the lure.
  const branching = makeProcess(
    "branching",
    [
      makeStep("coat", 6, { coat: "varnish", place: "rack" }),
      makeStep("bend the wire", 8),
      makeStep("tie the tail", 8),
      makeStep("hangers", 10, { after: ["coat", "bend the wire", "tie the tail"] }),
    ],
    [varnish],
  );

  test("hangs the piece where it was, in that air and on that hook, for as long as its coat needs it", () => {
    const bench = new Bench("Mon 18:00", branching);
    bench.tag();
    bench.hang(1, { step: "coat" });
    bench.at("Mon 19:00").move(1, "warm box");
    bench.at("Mon 20:00").take(1, { step: "bend the wire" });
    expect(bench.at("Mon 20:08").hang(1)).toMatchObject({ events: [{ place: "warm box" }] });
    expect(bench.piece(1).place).toBe("warm box");
    expect(hookNeededUntil(bench.piece(1), bench.clock)).toBe(at("Tue 06:00"));
    // Dry-hard: it is put down on the bench.
    expect(bench.at("Tue 18:00").hang(1, { step: "tie the tail" })).toMatchObject({
      events: [{ place: null }],
    });
    expect(bench.hang(1, { step: "hangers" })).toMatchObject({ events: [{ place: null }] });
  });
});
