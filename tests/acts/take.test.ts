import { describe, expect, test } from "vitest";
import { at } from "../fixtures/week-time.ts";
import { Bench, refusalOf, told } from "./bench.ts";
import { branching } from "./random-requests.ts";

const warm = { reason: "it is warm" };

/** Pieces sealed on Monday at 18:00 whose pot is put away: the second seal opens 22:00 and shuts Tue 18:00. */
function sealed(count: number, now: string): Bench {
  const bench = new Bench("last Sat 9:00");
  bench.tag(count);
  for (let tag = 1; tag <= count; tag += 1) bench.workUpTo(tag, "second seal", "Mon 18:00");
  bench.at("Mon 18:01").putAway("lead pot");
  return bench.at(now);
}

test("a colour said of a coat in hand that takes none is refused as such, not as a step that is done", () => {
  const bench = new Bench("Mon 18:00");
  bench.tag(1, { scheme: [{ colour: "ochre", minutes: null, flashOff: 5 }] });
  bench.workUpTo(1, "detail", "Tue 18:00");
  bench.at("Wed 18:00").take(1);
  expect(refusalOf(bench.hang(1, { colour: "black" }))).toMatchObject({
    code: "unfit value",
    what: "colour",
    expected: "a step painted by the scheme; detail is not",
  });
});

describe("what is in hand when another is taken", () => {
  test("shaping is left by itself, in the same act", () => {
    const bench = new Bench("Mon 18:00");
    bench.tag(2);
    bench.take(1);
    bench.at("Mon 18:10");
    expect(told(bench.take(2)).filter((what) => !what.startsWith("ticked"))).toEqual([
      "left 1 shape",
      "taken 2 shape",
    ]);
    // In hand 18:00 to 18:10, and again from 18:20 to 18:35: 10 + 15 min.
    bench.at("Mon 18:20").take(1);
    bench.at("Mon 18:35").hang(1);
    expect(bench.piece(1).work.get("shape")?.hangs[0]?.minutes).toBe(25);
  });

  test("a coat half laid stays: other in hand", () => {
    const bench = sealed(2, "Mon 22:30");
    bench.take(1);
    expect(refusalOf(bench.take(2))).toMatchObject({
      code: "other in hand",
      tags: [1],
      step: "second seal",
      tag: 2,
    });
  });

  test("its scuff may be left", () => {
    const bench = sealed(2, "Tue 18:30");
    bench.take(1);
    expect(told(bench.take(2))).toContain("left 1 second seal (preparation)");
  });

  test("work forgotten since an earlier session is asked about, not left", () => {
    const bench = new Bench("Mon 20:00");
    bench.tag(2);
    bench.take(1);
    bench.at("Tue 18:00");
    expect(refusalOf(bench.take(2))).toMatchObject({
      code: "other in hand",
      tags: [1],
      since: at("Mon 20:00"),
    });
  });

  test("with two pairs of hands two are in hand at once, the third leaves the first", () => {
    const bench = new Bench("Mon 18:00");
    bench.settle({ of: "hands", from: "2026-03-23", pairs: 2 });
    bench.tag(3);
    bench.take(1);
    bench.clock += 60_000;
    expect(told(bench.take(2))).not.toContain("left 1 shape");
    expect(told(bench.take(3))).toContain("left 1 shape");
    expect(bench.piece(2).hand?.takenAt).not.toBeNull();
  });
});

describe("the work that a shut window asks for first", () => {
  test("is what take takes: a scuff, then the coat", () => {
    const bench = sealed(1, "Tue 18:30");
    expect(told(bench.take(1)).at(-1)).toBe("taken 1 second seal (preparation)");
    bench.at("Tue 18:35").hang(1);
    expect(bench.state(1, "second seal").is).toBe("open");
    expect(told(bench.take(1)).at(-1)).toBe("taken 1 second seal");
  });

  test("may be named, and hung without having been taken", () => {
    const bench = sealed(1, "Tue 18:30");
    expect(told(bench.hang(1, { step: "Scuff" }))).toEqual(["hung 1 second seal (preparation)"]);
  });

  test("named before the window asks for it, is told what there is to do", () => {
    expect(refusalOf(sealed(1, "Mon 22:30").take(1, { step: "scuff" }))).toMatchObject({
      code: "nothing to do",
    });
  });

  test("may be gone over with a reason, which is written down", () => {
    const answer = sealed(1, "Tue 18:30").take(1, { anyway: warm });
    const taken = "events" in answer ? answer.events.at(-1) : null;
    expect(taken).toMatchObject({ part: "step", overrides: [{ over: "too late", reason: "it is warm" }] });
  });
});

describe("a reason", () => {
  test("goes over the clock and over a hold, each named", () => {
    const bench = sealed(2, "Mon 18:02");
    bench.tag();
    const early = bench.take(1, { anyway: warm });
    expect("events" in early ? early.events.at(-1) : null).toMatchObject({
      overrides: [{ over: "too early", reason: "it is warm" }],
    });
    bench.hang(1);
    const dusty = bench.take(3, { anyway: warm });
    expect("events" in dusty ? dusty.events.at(-1) : null).toMatchObject({
      overrides: [{ over: "keep apart", reason: "it is warm" }],
    });
  });

  test("never goes over what cannot be, nor over reading a caution", () => {
    const bench = sealed(1, "Mon 22:30");
    expect(refusalOf(bench.take(1, { step: "hangers", anyway: warm }))).toMatchObject({ code: "blocked" });
    expect(refusalOf(bench.take(1, { ticked: [], anyway: warm }))).toMatchObject({
      code: "read the caution",
      cautions: ["solvent vapour"],
    });
  });

  test("of a caution said too short names those it could be", () => {
    const bench = sealed(1, "Mon 22:30");
    const { "solvent vapour": vapour, ...others } = bench.rules.cautions;
    if (vapour === undefined) throw new Error("the rules have no such caution");
    const cautions = {
      ...others,
      "solvent vapour": vapour,
      "solvent rags": { ...vapour, name: "solvent rags" },
    };
    bench.rules = { ...bench.rules, cautions };
    expect(refusalOf(bench.take(1, { ticked: ["solvent"] }))).toMatchObject({
      code: "unfit value",
      expected: "solvent rags, solvent vapour",
    });
  });

  test("must say something", () => {
    expect(refusalOf(sealed(1, "Mon 18:30").take(1, { anyway: { reason: "  " } }))).toMatchObject({
      code: "unfit value",
      what: "reason",
    });
  });
});

describe("which step is meant", () => {
  test("the open one, while one alone is open", () => {
    const bench = new Bench("Mon 18:00", branching);
    bench.tag(1);
    expect(told(bench.take(1)).at(-1)).toBe("taken 1 cut");
    bench.at("Mon 18:10").hang(1);
    expect(refusalOf(bench.take(1))).toMatchObject({
      code: "several steps fit",
      steps: ["prime", "wire"],
      exit: 2,
    });
    expect(told(bench.take(1, { step: "wi" })).at(-1)).toBe("taken 1 wire");
  });

  test("the one in hand comes before all; another step of the same piece leaves it", () => {
    const bench = new Bench("Mon 18:00", branching);
    bench.tag(1);
    bench.hang(1);
    bench.take(1, { step: "wire" });
    expect(refusalOf(bench.take(1))).toMatchObject({ code: "already in hand", step: "wire" });
    bench.at("Mon 18:05");
    expect(told(bench.take(1, { step: "prime" }))).toEqual(
      expect.arrayContaining(["left 1 wire", "taken 1 prime"]),
    );
    expect(told(bench.at("Mon 18:10").hang(1))).toEqual(["hung 1 prime"]);
    expect(told(bench.at("Mon 18:11").take(1)).at(-1)).toBe("taken 1 wire");
  });

  test("a name of several steps means the one that can be worked; a wrong name is told the nearest", () => {
    const bench = sealed(1, "Mon 22:30");
    expect(told(bench.take(1, { step: "SEAL" }))).toEqual(["no: already done"]);
    expect(told(bench.take(1, { step: "sec" })).at(-1)).toBe("taken 1 second seal");
    expect(refusalOf(bench.take(1, { step: "secnd seal" }))).toMatchObject({
      code: "no such step",
      nearest: "second seal",
      exit: 2,
    });
  });

  test("pieces taken together do one thing", () => {
    const bench = sealed(1, "Mon 22:30");
    bench.tag();
    expect(refusalOf(bench.take([1, 2]))).toMatchObject({
      code: "several steps fit",
      tag: 2,
      steps: ["second seal", "shape"],
    });
  });
});

test("a colour said before its coat may be laid is refused as coming after, not as all being done", () => {
  const bench = new Bench("Mon 18:00");
  bench.tag(1, { scheme: [{ colour: "ochre", minutes: null, flashOff: 5 }] });
  expect(refusalOf(bench.take(1, { colour: "ochre" }))).toMatchObject({ code: "blocked", step: "colours" });
});
