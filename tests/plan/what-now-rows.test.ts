import { describe, expect, test } from "vitest";
import { compareFinishes } from "../../src/plan/compare-finishes.ts";
import { sayHeld } from "../../src/words/say-hold.ts";
import { sayHeldWhat } from "../../src/words/say-work.ts";
import { Diary } from "../fixtures/diary.ts";
import { inARow, makeCoat, makeProcess, makeStep, mixResin, walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";
import { speechAt } from "../words/made-rows.ts";
import { askNow, contextAt, newPieceOf, saidRows } from "./ask-now.ts";

const aNewOne = { newPiece: newPieceOf(walker) };

describe("a new piece", () => {
  test("is asked for by an aim for how many are out, and by none when so many are on their way", () => {
    const diary = new Diary(walker);
    diary.settle({ of: "aim", from: "2026-03-01", finishedPerWeek: null, out: 2 }, "Mon 17:00");
    diary.tag(1, "Mon 18:00");
    const { work } = askNow(diary, "Mon 18:01", aNewOne);
    expect(saidRows(work)).toEqual(["1 shape", "shape"]);
    expect(work[1]).toMatchObject({
      tags: [],
      name: null,
      process: "walker",
      minutes: 40,
      why: { because: "aim" },
    });
    // Leaving it for tonight is found by dispatching without it.
    expect(work[1]?.ifLeft.finishLeft).toBeGreaterThan(work[1]?.ifLeft.finishNow ?? Number.POSITIVE_INFINITY);
    diary.tag(2, "Mon 18:01");
    expect(saidRows(askNow(diary, "Mon 18:02", aNewOne).work)).toEqual(["1 shape", "2 shape"]);
  });

  test("is asked for by an aim for the week, by Little's law", () => {
    // Alone a walker takes some days of evenings, more than 2 and less than 14. At 7 a week more than 2 must be on
    // their way; at 1 in 14 days' worth one is enough.
    const asked = (finishedPerWeek: number): string[] => {
      const diary = new Diary(walker);
      diary.settle({ of: "aim", from: "2026-03-01", finishedPerWeek, out: null }, "Mon 17:00");
      diary.tag([1, 2], "Mon 18:00");
      return saidRows(askNow(diary, "Mon 18:01", aNewOne).work);
    };
    expect(asked(7)).toContain("shape");
    expect(asked(1)).not.toContain("shape");
    expect(asked(0)).not.toContain("shape");
  });

  test("is offered without an aim when nothing else can be begun, as far as there are hooks", () => {
    const diary = new Diary(walker);
    expect(askNow(diary, "Mon 18:00", aNewOne).work).toMatchObject([
      { tags: [], step: "shape", why: { because: "nothing else to do" } },
    ]);
    expect(askNow(diary, "Mon 18:00").work).toEqual([]);
    diary.came(1, "seal", "Mon 17:00", "Mon 18:00");
    expect(saidRows(askNow(diary, "Mon 18:01", aNewOne).work)).toEqual(["shape"]);
    diary.settle({ of: "place", name: "rack", hooks: 1 }, "Mon 18:02");
    expect(askNow(diary, "Mon 18:02", aNewOne).work).toEqual([]);
  });
});

describe("what is in hand", () => {
  test("a coat keeps the hands full until it is usually hung", () => {
    const diary = new Diary(walker);
    diary.came(1, "drill", "last Sun 20:00", "Mon 18:00");
    diary.came(2, "pour the ballast", "last Sun 20:00", "Mon 18:00");
    diary.came(3, "hangers", "last Sun 20:00", "Mon 18:00");
    diary.take(2, "seal", "Mon 18:10");
    const answer = askNow(diary, "Mon 18:12");
    expect(answer.inHand).toMatchObject([
      { tags: [2], step: "seal", usualMinutes: 6, left: false, forgotten: null },
    ]);
    expect(answer.work).toEqual([]);
    // Taken 18:10, usually 6 min: 18:16.
    const test = answer.held.find(({ step }) => step === "water test");
    expect(test).toMatchObject({ tags: [3], until: at("Mon 18:16"), because: { code: "hands full" } });
    expect(answer.waiting[1]).toMatchObject({ tag: 2, state: "in hand" });
  });

  test("work that may be left keeps nothing else from being begun", () => {
    const diary = new Diary(walker);
    diary.came(3, "hangers", "last Sun 20:00", "Mon 18:00");
    diary.tag(1, "Mon 18:00");
    diary.take(1, "shape", "Mon 18:05");
    expect(saidRows(askNow(diary, "Mon 18:10").work)).toEqual(["3 water test"]);
  });

  test("what lies half-done has only the rest to do", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00");
    diary.take(1, "shape", "Mon 18:05");
    diary.leave(1, "shape", "Mon 18:15");
    const answer = askNow(diary, "Mon 18:20");
    // 40 usual, 10 of them done.
    expect(answer.work).toMatchObject([
      { tags: [1], step: "shape", minutes: 30, why: { because: "left half-done" } },
    ]);
    expect(answer.waiting).toMatchObject([{ tag: 1, state: "left" }]);
  });

  test("a coat in hand is warned of, too, while it can still be left unlaid", () => {
    const diary = new Diary(walker);
    diary.came(1, "pour the ballast", "Fri 20:00", "Sat 9:00");
    diary.take(1, "seal", "Sat 11:54");
    // Hung 12:00 it opens 16:00, as the bench shuts; the second seal takes 6 min: by 11:54.
    expect(askNow(diary, "Sat 11:54").inHand[0]?.warning).toMatchObject({
      opens: at("Sat 16:00"),
      shuts: at("Sun 13:00"),
      nextMinutes: 6,
      hangBy: at("Sat 11:54"),
      layFrom: at("next Mon 18:00"),
    });
  });
});

describe("holds", () => {
  test("all that holds a row is told, what lasts longest first", () => {
    const diary = new Diary(walker);
    diary.tag(3, "Mon 18:00");
    for (const step of ["shape", "drill"]) diary.hang(3, step, "Mon 18:10");
    for (const tag of [1, 2]) {
      diary.came(tag, "pour the ballast", "Mon 12:00", "Mon 18:00");
      diary.hang(tag, "seal", "Mon 19:04");
    }
    const [pour] = askNow(diary, "Mon 19:04").held;
    expect(pour).toMatchObject({
      tags: [3],
      because: { code: "measure first" },
      also: [{ because: "solvent vapour of 1 and 2", until: at("Mon 19:44") }],
    });
    expect(pour && sayHeld(pour, speechAt("Mon 19:04"))).toBe(
      "wood moisture of 3 is not measured, at most 10 %: measure the wood moisture; also solvent vapour of 1 and 2 till 19:44",
    );
  });

  test("a scuff that is held says what it comes before", () => {
    const diary = new Diary(walker);
    diary.came(1, "seal", "last Sun 17:00", "Mon 18:00");
    diary.came(2, "pour the ballast", "Mon 12:00", "Mon 18:00");
    diary.hang(2, "seal", "Mon 18:05");
    // 1 shut Mon 17:00; 2 is wet for 45 min.
    const [row] = askNow(diary, "Mon 18:10").held;
    expect(row).toMatchObject({
      tags: [1],
      step: "second seal",
      preparation: { do: "scuff" },
      until: at("Mon 18:50"),
    });
    expect(row && sayHeldWhat(row)).toBe("scuff, then second seal");
    expect(row && sayHeld(row, speechAt("Mon 18:10"))).toBe("till 18:50, wet coat of 2");
  });

  test("a window that shut for good is held for a mend, by name", () => {
    const diary = new Diary({
      ...walker,
      coats: {
        ...walker.coats,
        varnish: { ...walker.coats.varnish, windows: [{ opens: 240, shuts: 1440, first: null }] },
      },
    } as typeof walker);
    diary.came(1, "seal", "last Sun 17:00", "Mon 18:00");
    const { work, held } = askNow(diary, "Mon 18:01");
    expect(work).toEqual([]);
    expect(held).toMatchObject([
      { tags: [1], step: "second seal", until: null, because: { code: "shut for good", remedy: "mend 1" } },
    ]);
  });

  test("a step longer than any session says so", () => {
    const diary = new Diary(walker);
    const [shape, ...rest] = walker.steps;
    const long = new Diary({
      ...walker,
      steps: [{ ...(shape as typeof shape & object), mayStop: false }, ...rest],
    });
    long.tag(1, "Mon 18:00");
    diary.tag(1, "Mon 18:00");
    const all = { usualMinutes: () => 500 };
    expect(askNow(long, "Mon 18:01", all).held[0]?.because.because).toBe(
      "takes longer than any bench session",
    );
    // One that may be left half-done is begun all the same.
    expect(saidRows(askNow(diary, "Mon 18:01", all).work)).toEqual(["1 shape"]);
  });

  test("a full rack holds a coat until a hook is free", () => {
    const diary = new Diary(walker);
    diary.settle({ of: "place", name: "rack", hooks: 1 }, "Mon 17:00");
    diary.came(1, "seal", "Mon 9:00", "Mon 18:00");
    diary.came(2, "pour the ballast", "last Sun 20:00", "Mon 18:00");
    const { work, held } = askNow(diary, "Mon 18:00");
    // 1 gives its own hook up and takes it again; 2 waits for dry-hard of 1: 9:00 + 12 h, when the bench has shut.
    expect(saidRows(work)).toEqual(["1 second seal"]);
    expect(held).toMatchObject([
      { tags: [2], step: "seal", until: at("Tue 18:00"), because: { code: "no hook" } },
    ]);
  });
});

test("this one first: a weight delays the others, and the finish times say by how much", () => {
  const diary = new Diary(walker);
  for (const tag of [1, 2]) diary.came(tag, "last clear", "Wed 18:00", "Thu 18:00");
  const before = diary.shop();
  diary.say(2, { kind: "changed", weight: 10 }, "Thu 18:30");
  const finishes = compareFinishes(before, diary.shop(), contextAt("Thu 18:30"), null);
  // Both open: hangers 10 and test 10 of the one, then of the other.
  expect([...finishes.before]).toEqual([
    [1, at("Thu 18:50")],
    [2, at("Thu 19:10")],
  ]);
  expect([...finishes.after]).toEqual([
    [1, at("Thu 19:10")],
    [2, at("Thu 18:50")],
  ]);
  expect(finishes.broken).toEqual([]);
  const [row] = askNow(diary, "Thu 18:30").work;
  expect(row).toMatchObject({ tags: [2], why: { because: "this one first" } });
});

test("work is begun so much sooner as another cup takes to mix, where the one that stands keeps no longer", () => {
  const laid = (keeps: number) => {
    const setUp = { ...mixResin, keeps: { way: "mix", minutes: keeps, serves: 4 } } as const;
    const twice = makeProcess(
      "twice",
      inARow([
        makeStep("first", 8, { coat: "resin", setUp }),
        makeStep("second", 8, { coat: "resin", setUp }),
      ]),
      [
        makeCoat("resin", {
          windows: [
            { opens: 0, shuts: 120, first: null },
            { opens: 1440, shuts: null, first: null },
          ],
        }),
      ],
    );
    const diary = new Diary(twice);
    diary.tag(1, "Mon 18:00");
    diary.ready("bench", "mix resin", "Mon 18:04", { keeps: setUp.keeps });
    diary.take(1, "first", "Mon 18:04");
    diary.hang(1, "first", "Mon 18:12");
    return askNow(diary, "Mon 18:13").work[0];
  };
  // The window shuts 20:12; the cup of 18:04 keeps till 18:34, mixing takes 4 min.
  expect(laid(30)).toMatchObject({ setUp: { minutes: 0, standing: true }, beginBy: at("Mon 20:08") });
  // Till 20:10, two minutes before it shuts: that is later than 20:08.
  expect(laid(126)).toMatchObject({ beginBy: at("Mon 20:10") });
  expect(laid(200)).toMatchObject({ beginBy: at("Mon 20:12") });
});
