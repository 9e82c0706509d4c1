import { describe, expect, test } from "vitest";
import type { Step } from "../../src/process/step.ts";
import { holdsOn } from "../../src/safety/fit-to-start.ts";
import type { Task } from "../../src/safety/task.ts";
import { Diary } from "../fixtures/diary.ts";
import { everyDay, inAir } from "../fixtures/shop-in-air.ts";
import { acrylic, makeProcess, makeStep, scuff, walker, walkerRules } from "../fixtures/walker.ts";
import { at, moment } from "../fixtures/week-time.ts";

function task(
  stepName: string,
  tags: readonly number[],
  more: Partial<Task> = {},
  definition = walker,
): Task {
  const step = definition.steps.find(({ name }) => name === stepName);
  if (step === undefined) throw new Error(`no step ${stepName}`);
  return { tags, step, part: "step", preparation: null, coats: definition.coats, leaves: [], ...more };
}

const holds = (diary: Diary, what: Task, when: string) =>
  holdsOn(what, diary.shop(), walkerRules, moment(when));

/** 1 and 2 sealed in one act, hung Mon 19:04; 3 drilled, its wood measured at 8 %. */
function monday(): Diary {
  const diary = new Diary(walker);
  diary.came(1, "seal", "last Sun 20:00", "Mon 18:00");
  diary.came(2, "seal", "Mon 12:30", "Mon 18:00");
  diary.came(3, "drill", "Mon 18:50", "Mon 18:50");
  diary.say(3, { kind: "measured", what: "wood moisture", value: 8, unit: "%" }, "Mon 18:51");
  diary.take([1, 2], "second seal", "Mon 18:52");
  diary.hang([1, 2], "second seal", "Mon 19:04");
  return diary;
}

describe("the evening the week begins with", () => {
  test("before anything is wet, shaping is free", () => {
    const diary = new Diary(walker);
    diary.came(1, "seal", "last Sun 20:00", "Mon 18:00");
    diary.came(2, "seal", "Mon 12:30", "Mon 18:00");
    expect(holds(diary, task("shape", [3]), "Mon 18:02")).toEqual([]);
  });

  test("in air in which no coat dries nothing is awaited: the coats are to be moved, or the air warmed", () => {
    const shop = inAir(
      monday().shop(),
      everyDay(() => 6),
    );
    expect(holdsOn(task("shape", [3]), shop, walkerRules, moment("Mon 19:10"))).toMatchObject([
      {
        because: "wet coat of 1 and 2",
        until: null,
        remedy: "move 1 and 2 to where it dries, or warm the air",
      },
    ]);
  });

  test("melting lead is held till 19:44, for the vapour of 1 and 2 (19:04 + 40 min)", () => {
    const diary = monday();
    const held = {
      code: "keep apart",
      because: "solvent vapour of 1 and 2",
      until: at("Mon 19:44"),
      tags: [1, 2],
      remedy: null,
    };
    expect(holds(diary, task("pour the ballast", [3]), "Mon 19:05")).toEqual([held]);
    expect(holds(diary, task("pour the ballast", [3], { part: "set-up" }), "Mon 19:43")).toEqual([held]);
    expect(holds(diary, task("pour the ballast", [3]), "Mon 19:44")).toEqual([]);
  });

  test("shaping is held till 19:49, for the wet coats of 1 and 2 (19:04 + 45 min)", () => {
    const diary = monday();
    expect(holds(diary, task("shape", []), "Mon 19:05")).toEqual([
      {
        code: "keep apart",
        because: "wet coat of 1 and 2",
        until: at("Mon 19:49"),
        tags: [1, 2],
        remedy: null,
      },
    ]);
    expect(holds(diary, task("shape", []), "Mon 19:49")).toEqual([]);
  });

  test("while the pot stands, sealing is held until it is put away, and nothing else is", () => {
    const diary = monday();
    diary.ready("lead pot", "melt lead", "Mon 19:50", {
      ready: at("Mon 20:10"),
      givesOff: ["heat", "lead fume"],
    });
    expect(holds(diary, task("seal", [3]), "Mon 19:51")).toEqual([
      {
        code: "keep apart",
        because: "heat of the lead pot",
        until: null,
        tags: [],
        remedy: "put the lead pot away",
      },
    ]);
    expect(holds(diary, task("pour the ballast", [3]), "Mon 20:12")).toEqual([]);
    expect(holds(diary, task("hangers", [1]), "Mon 20:12")).toEqual([]);
    diary.putAway("lead pot", "Mon 20:55");
    expect(holds(diary, task("seal", [3]), "Mon 20:55")).toEqual([]);
  });
});

describe("both ways", () => {
  test("a coat is not begun beside sanding in hand, unless the same act puts that down", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00");
    diary.came(2, "seal", "Mon 12:30", "Mon 18:00");
    diary.take(1, "shape", "Mon 18:05");
    const sealing = task("second seal", [2]);
    expect(holds(diary, sealing, "Mon 18:10")).toEqual([
      { code: "keep apart", because: "dust of 1", until: null, tags: [1], remedy: "finish 1 first" },
    ]);
    expect(holds(diary, { ...sealing, leaves: [1] }, "Mon 18:10")).toEqual([]);
  });

  test("dust that lasts is still in the room once its sanding was put down half-done, for as long as after it is done", () => {
    const dusty = { what: "dust", lasts: 20 } as const;
    const steps = walker.steps.map((step) => (step.name === "shape" ? { ...step, givesOff: [dusty] } : step));
    const diary = new Diary({ ...walker, steps });
    diary.tag(1, "Mon 18:00");
    diary.came(2, "seal", "Mon 12:30", "Mon 18:00");
    diary.take(1, "shape", "Mon 18:05");
    const sealing = task("second seal", [2]);
    // Nobody knows when it will be put down, so no clock says when the dust is gone.
    expect(holds(diary, { ...sealing, leaves: [1] }, "Mon 18:10")).toMatchObject([
      { because: "dust of 1", until: null, remedy: "finish 1 first" },
    ]);
    diary.leave(1, "shape", "Mon 18:11");
    expect(holds(diary, sealing, "Mon 18:12")).toMatchObject([
      { because: "dust of 1", until: at("Mon 18:31"), remedy: null },
    ]);
    expect(holds(diary, sealing, "Mon 18:31")).toEqual([]);
    // Taken again and put down again, it counts from then.
    diary.take(1, "shape", "Mon 18:40");
    diary.leave(1, "shape", "Mon 18:50");
    expect(holds(diary, sealing, "Mon 18:51")).toMatchObject([{ until: at("Mon 19:10") }]);
  });

  test("nor is sanding begun beside a coat in hand; its own piece is no stranger to a task", () => {
    const diary = monday();
    diary.came(4, "seal", "Mon 12:30", "Mon 19:50");
    diary.take(4, "second seal", "Mon 20:00");
    expect(holds(diary, task("shape", [5]), "Mon 20:01")).toMatchObject([
      { because: "wet coat of 4", until: null, remedy: "finish 4 first" },
    ]);
    expect(holds(diary, task("drill", [4]), "Mon 20:01")).toEqual([]);
  });

  test("a scuff gives off dust too, a preparation only that", () => {
    const diary = monday();
    const scuffing = task("second seal", [7], { part: "preparation", preparation: scuff });
    expect(holds(diary, scuffing, "Mon 19:10")).toMatchObject([{ because: "wet coat of 1 and 2" }]);
  });
});

describe("what lingers", () => {
  test("a step forgotten in hand counts as hung when its bench session ended: vapour till 21:40, wet till 21:45", () => {
    const diary = new Diary(walker);
    diary.came(1, "colours", "Tue 18:30", "Tue 18:30");
    diary.take(1, "first clear", "Tue 20:30");
    expect(holds(diary, task("pour the ballast", []), "Tue 21:20")).toMatchObject([
      { because: "solvent vapour of 1", until: at("Tue 21:40"), remedy: "finish 1 first" },
    ]);
    expect(holds(diary, task("shape", []), "Tue 21:20")).toMatchObject([{ until: at("Tue 21:45") }]);
    expect(holds(diary, task("shape", []), "Wed 18:00")).toEqual([]);
  });

  test("vapour of a piece scrapped or gone is still in the room, its wet coat is not", () => {
    const diary = monday();
    diary.say(1, { kind: "scrapped", why: "dropped" }, "Mon 19:10");
    expect(holds(diary, task("pour the ballast", [3]), "Mon 19:11")).toMatchObject([{ tags: [1, 2] }]);
    expect(holds(diary, task("shape", []), "Mon 19:11")).toMatchObject([{ tags: [2] }]);
  });

  test("vapour of a coat taken back by a mend is still in the room", () => {
    const diary = monday();
    diary.mend(1, "wipe it off", 5, "second seal", "Mon 19:15");
    expect(holds(diary, task("pour the ballast", [3]), "Mon 19:16")).toMatchObject([{ tags: [1, 2] }]);
    expect(holds(diary, task("shape", []), "Mon 19:16")).toMatchObject([{ tags: [2] }]);
  });

  test("a touch that says dry frees the room of a wet coat sooner", () => {
    const diary = monday();
    for (const tag of [1, 2]) diary.touch(tag, "second seal", "dry", "Mon 19:30");
    expect(holds(diary, task("shape", []), "Mon 19:30")).toEqual([]);
  });

  test("a coat whose sheet names no stage is wet until its flash-off ends", () => {
    const bare = makeProcess(
      "bare",
      [makeStep("paint", 5, { coat: "acrylic" })],
      [{ ...acrylic, stages: {} }],
    );
    const diary = new Diary(bare);
    diary.tag(1, "Mon 18:00");
    diary.hang(1, "paint", "Mon 18:10", { flashOff: 12 });
    expect(holds(diary, task("shape", []), "Mon 18:11")).toMatchObject([{ until: at("Mon 18:22") }]);
  });

  test("of two moments the later holds: sealed 19:04 and 19:20, vapour till 20:00", () => {
    const diary = monday();
    diary.hang(3, "pour the ballast", "Mon 19:10");
    diary.hang(3, "seal", "Mon 19:20");
    expect(holds(diary, task("pour the ballast", [8]), "Mon 19:21")).toContainEqual({
      code: "keep apart",
      because: "solvent vapour of 1, 2 and 3",
      until: at("Mon 20:00"),
      tags: [1, 2, 3],
      remedy: null,
    });
  });
});

test("with no rules nothing is kept apart, and work that gives off nothing meets nothing", () => {
  const diary = monday();
  const noRules = { ...walkerRules, keepApart: [] };
  expect(holdsOn(task("shape", []), diary.shop(), noRules, moment("Mon 19:05"))).toEqual([]);
  const quiet: Step = makeStep("carve initials", 5);
  expect(holds(diary, { ...task("shape", []), step: quiet }, "Mon 19:05")).toEqual([]);
});
