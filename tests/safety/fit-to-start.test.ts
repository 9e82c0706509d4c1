import { describe, expect, test } from "vitest";
import { holdsOn } from "../../src/safety/fit-to-start.ts";
import type { Task } from "../../src/safety/task.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker, walkerRules } from "../fixtures/walker.ts";
import { at, moment } from "../fixtures/week-time.ts";

function task(stepName: string, tags: readonly number[]): Task {
  const step = walker.steps.find(({ name }) => name === stepName);
  if (step === undefined) throw new Error(`no step ${stepName}`);
  return { tags, step, part: "step", preparation: null, coats: walker.coats, leaves: [] };
}

const holds = (diary: Diary, what: Task, when: string) =>
  holdsOn(what, diary.shop(), walkerRules, moment(when));

describe("a free hook", () => {
  /** A rack of two hooks: 1 on it since Mon 12:00, 2 since Mon 13:00, varnish of 12 h to dry-hard. */
  function rack(hooks: number): Diary {
    const diary = new Diary(walker);
    diary.settle({ of: "place", name: "rack", hooks }, "Mon 10:00");
    for (const tag of [1, 2, 3, 4]) diary.came(tag, "pour the ballast", "Mon 11:00", "Mon 11:00");
    diary.hang(1, "seal", "Mon 12:00");
    diary.hang(2, "seal", "Mon 13:00");
    return diary;
  }

  test("is missing until the first is dry-hard: Tue 0:00 (12:00 + 12 h), for two pieces Tue 1:00", () => {
    const full = {
      code: "no hook",
      because: "the rack has 2 hooks, 2 of them taken",
      until: at("Tue 0:00"),
      tags: [1, 2],
      remedy: "hang a dry one elsewhere",
    };
    expect(holds(rack(2), task("seal", [3]), "Mon 20:00")).toEqual([full]);
    expect(holds(rack(2), task("seal", [3, 4]), "Mon 20:00")).toEqual([{ ...full, until: at("Tue 1:00") }]);
    expect(holds(rack(2), task("seal", [3]), "Tue 0:00")).toEqual([]);
  });

  test("that are too few for all of them may be enough for some: of three, two find a hook beside 1 and 2", () => {
    expect(holds(rack(4), task("seal", [3, 4, 5]), "Mon 20:00")).toMatchObject([
      { because: "the rack has 4 hooks, 2 of them taken", remedy: "take only 2 of them" },
    ]);
    const empty = new Diary(walker);
    empty.settle({ of: "place", name: "rack", hooks: 1 }, "Mon 10:00");
    for (const tag of [3, 4]) empty.came(tag, "pour the ballast", "Mon 11:00", "Mon 11:00");
    expect(holds(empty, task("seal", [3, 4]), "Mon 20:00")).toMatchObject([
      { because: "the rack has 1 hook, none of them taken", remedy: "take only 1 of them" },
    ]);
  });

  test("is there with a third hook, when one is taken, moved, or is the very piece to be worked", () => {
    expect(holds(rack(3), task("seal", [3]), "Mon 20:00")).toEqual([]);
    const moved = rack(2);
    moved.say(1, { kind: "moved", place: "warm box" }, "Mon 19:00");
    expect(holds(moved, task("seal", [3]), "Mon 20:00")).toEqual([]);
    const taken = rack(2);
    taken.take(1, "second seal", "Mon 19:00");
    expect(holds(taken, task("seal", [3]), "Mon 20:00").map(({ code }) => code)).not.toContain("no hook");
    expect(holds(rack(2), task("second seal", [1]), "Mon 20:00")).toEqual([]);
  });

  test("has no hour where one of those it waits for was found tacky", () => {
    const diary = rack(1);
    diary.touch(1, "seal", "tacky", "Mon 19:00");
    diary.touch(2, "seal", "tacky", "Mon 19:00");
    expect(holds(diary, task("seal", [3]), "Tue 18:00")).toMatchObject([{ code: "no hook", until: null }]);
  });

  test("more pieces than the place has hooks never fit", () => {
    expect(holds(rack(2), task("seal", [3, 4, 1, 2]), "Mon 20:00")).toMatchObject([
      { code: "no hook", until: null },
    ]);
  });

  test("is not asked of a place whose hooks nobody counted", () => {
    const diary = new Diary(walker);
    diary.came(3, "pour the ballast", "Mon 11:00", "Mon 11:00");
    expect(holds(diary, task("seal", [3]), "Mon 12:00")).toEqual([]);
  });
});

describe("what must be measured first: wood moisture at most 10 % before lead", () => {
  test("not measured, the pour is held without an hour", () => {
    const diary = new Diary(walker);
    for (const tag of [3, 4]) diary.came(tag, "drill", "Mon 18:50", "Mon 18:50");
    expect(holds(diary, task("pour the ballast", [3, 4]), "Mon 19:00")).toEqual([
      {
        code: "measure first",
        because: "wood moisture of 3 and 4 is not measured, at most 10 %",
        until: null,
        tags: [3, 4],
        remedy: "measure the wood moisture",
      },
    ]);
  });

  test.each([
    [8, "%", []],
    [10, "%", []],
    [10.5, "%", ["measured too high"]],
    [8, "g", ["measure first"]],
  ] as const)("%d %s: %o", (value, unit, codes) => {
    const diary = new Diary(walker);
    diary.came(3, "drill", "Mon 18:50", "Mon 18:50");
    diary.say(3, { kind: "measured", what: "wood moisture", value, unit }, "Mon 18:55");
    expect(holds(diary, task("pour the ballast", [3]), "Mon 19:00").map(({ code }) => code)).toEqual(codes);
  });

  test("too high, the hold says how high, and the newest measure rules", () => {
    const diary = new Diary(walker);
    diary.came(3, "drill", "Mon 18:50", "Mon 18:50");
    diary.say(3, { kind: "measured", what: "wood moisture", value: 14, unit: "%" }, "Mon 18:55");
    expect(holds(diary, task("pour the ballast", [3]), "Mon 19:00")).toMatchObject([
      { because: "wood moisture of 3 is 14 %, at most 10 %", remedy: "let it dry and measure again" },
    ]);
    diary.say(3, { kind: "measured", what: "wood moisture", value: 9, unit: "%" }, "Tue 18:55");
    expect(holds(diary, task("pour the ballast", [3]), "Tue 19:00")).toEqual([]);
  });

  test("a pot may be lit, and a piece scuffed, before anything is measured", () => {
    const diary = new Diary(walker);
    diary.came(3, "drill", "Mon 18:50", "Mon 18:50");
    expect(holds(diary, { ...task("pour the ballast", [3]), part: "set-up" }, "Mon 19:00")).toEqual([]);
  });
});
