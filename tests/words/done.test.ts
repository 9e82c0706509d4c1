import { describe, expect, test } from "vitest";
import type { EventBody } from "../../src/journal/event.ts";
import { sayAct, sayDone } from "../../src/words/say-done.ts";
import { Diary } from "../fixtures/diary.ts";
import { scuff, walker } from "../fixtures/walker.ts";
import { at, dublin } from "../fixtures/week-time.ts";

const speechAt = (when: string) => ({ zone: dublin, now: at(when), clock24: true });

/** What is said of the newest act of a diary, at its own time. */
function saidOfLast(diary: Diary, when: string): string[] {
  const act = diary.events.at(-1)?.act;
  const events = diary.events.filter((event) => event.act === act);
  return sayDone(events, diary.shop(), speechAt(when));
}

/** A diary in which 1 and 2 are about to be sealed on Monday evening. */
function beforeSealing(): Diary {
  const diary = new Diary(walker);
  diary.tag([1, 2], "Mon 12:00", { scheme: [{ colour: "ochre", minutes: 10, flashOff: 5 }] });
  diary.workUpTo(1, "seal", "Mon 12:10");
  diary.workUpTo(2, "seal", "Mon 12:30");
  return diary;
}

describe("a done act", () => {
  test("hung: what happened, and what comes when", () => {
    const diary = beforeSealing();
    diary.hang([1, 2], "seal", "Mon 19:04");
    // Varnish: 4 h to 24 h after the hang.
    expect(saidOfLast(diary, "Mon 19:04")).toEqual([
      "1 and 2 hung 19:04, seal. Opens 23:04, shuts Tue 19:04.",
    ]);
  });

  test("pieces that fare otherwise have a line of their own", () => {
    const diary = beforeSealing();
    diary.hang(1, "seal", "Mon 13:00");
    diary.hang(1, "second seal", "Mon 17:00");
    diary.act("Mon 19:04", [
      { tag: 2, body: hung("seal", 1) },
      { tag: 1, body: hung("colours", 1) },
    ]);
    expect(saidOfLast(diary, "Mon 19:04")).toEqual([
      "2 hung 19:04, seal. Opens 23:04, shuts Tue 19:04.",
      // Acrylic in ochre opens when its flash-off of 5 min ends, and never shuts.
      "1 hung 19:04, colours. Opens 19:09.",
    ]);
  });

  test("tagged where it hangs: both ends of its window", () => {
    const diary = new Diary(walker);
    diary.came(1, "seal", "last Sun 20:00", "Mon 18:00");
    expect(saidOfLast(diary, "Mon 18:00")).toEqual([
      "1 tagged, lure 1, hanging since Sun 20:00, seal. Second seal is open, shuts 20:00.",
    ]);
  });

  test("tagged with the day it is due, so that a day read otherwise is seen", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00", { due: "2026-04-03" });
    expect(saidOfLast(diary, "Mon 18:00")).toEqual(["1 tagged, lure 1, due Fri 3 Apr. Shape is open."]);
  });

  test("hung a day after it was taken: that it may have been hung back then, and how to say so", () => {
    const diary = beforeSealing();
    diary.take(1, "seal", "Mon 20:30");
    diary.hang(1, "seal", "Tue 18:05");
    expect(saidOfLast(diary, "Tue 18:05")).toEqual([
      "1 hung 18:05, seal. Opens 22:05, shuts Wed 18:05. It was in hand since Mon 20:30: if it was hung then, dryline amend TAG TIME sets it right.",
    ]);
  });

  test("taken, left and gone on with", () => {
    const diary = new Diary(walker);
    diary.tag(3, "Mon 18:00");
    expect(saidOfLast(diary, "Mon 18:00")).toEqual(["3 tagged, lure 3. Shape is open."]);
    diary.take(3, "shape", "Mon 18:02");
    expect(saidOfLast(diary, "Mon 18:02")).toEqual(["3 in hand 18:02, shape."]);
    diary.leave(3, "shape", "Mon 18:20");
    expect(saidOfLast(diary, "Mon 18:20")).toEqual([
      "3 put down half-done 18:20, shape. Shape lies half-done since 18:20.",
    ]);
  });

  test("a shut window names its preparation", () => {
    const diary = beforeSealing();
    diary.hang(1, "seal", "Mon 13:00");
    diary.touch(1, "seal", "hard", "Tue 18:00");
    expect(saidOfLast(diary, "Tue 18:00")).toEqual([
      "1 touched 18:00, hard. Second seal shut 13:00: scuff 5 min first.",
    ]);
    diary.take(1, "second seal", "Tue 18:01", { part: "preparation" });
    expect(saidOfLast(diary, "Tue 18:01")).toEqual(["1 in hand 18:01, scuff for second seal."]);
    expect(scuff.do).toBe("scuff");
  });

  test("tacky: nothing opens before a touch says so", () => {
    const diary = beforeSealing();
    diary.hang(1, "seal", "Mon 13:00");
    diary.touch(1, "seal", "tacky", "Mon 18:05");
    expect(saidOfLast(diary, "Mon 18:05")).toEqual([
      "1 touched 18:05, tacky. Second seal waits for a touch that says dry: it was tacky.",
    ]);
  });

  test("tacky: that the coat waits comes before another branch that is open", () => {
    // The ballast is poured meanwhile, and the second seal waits for both.
    const steps = walker.steps.map((step) => ({
      ...step,
      after: { seal: ["drill"], "second seal": ["seal", "pour the ballast"] }[step.name] ?? step.after,
    }));
    const diary = new Diary({ ...walker, steps });
    diary.tag(1, "Mon 11:00");
    for (const step of ["shape", "drill"]) diary.hang(1, step, "Mon 12:00");
    diary.hang(1, "seal", "Mon 13:00");
    diary.touch(1, "seal", "tacky", "Mon 18:05");
    expect(saidOfLast(diary, "Mon 18:05")).toEqual([
      "1 touched 18:05, tacky. Seal waits until it is touched dry or hard; pour the ballast is open.",
    ]);
    diary.hang(1, "pour the ballast", "Mon 18:30");
    expect(saidOfLast(diary, "Mon 18:30")).toEqual([
      "1 hung 18:30, pour the ballast. Second seal waits for a touch that says dry: it was tacky.",
    ]);
  });

  test("a mend tells the step to go on from; a test that sends back too; a last step finishes", () => {
    const diary = new Diary(walker);
    diary.tag(4, "Mon 12:00");
    diary.workUpTo(4, "water test", "last Sun 12:00");
    diary.hang(4, "water test", "Mon 15:00", { result: "tune" });
    expect(saidOfLast(diary, "Mon 15:00")).toEqual(["4 hung 15:00, water test: tune. Hangers is open."]);
    diary.hang(4, "hangers", "Mon 15:10");
    diary.hang(4, "water test", "Mon 15:20", { result: "passes" });
    expect(saidOfLast(diary, "Mon 15:20")).toEqual(["4 hung 15:20, water test: passes. Finished 15:20."]);
    diary.mend(4, "glue the hanger", 5, "hangers", "Mon 15:30");
    expect(saidOfLast(diary, "Mon 15:30")).toEqual([
      "4 mended 15:30, glue the hanger, 5 min. Hangers is open.",
    ]);
  });

  test("an amended hang tells the new ends", () => {
    const diary = beforeSealing();
    const act = diary.hang(1, "seal", "Mon 19:04");
    diary.amend(act, "Mon 19:11", "Mon 19:20");
    expect(saidOfLast(diary, "Mon 19:20")).toEqual([
      "1 amended, that was 19:11. Second seal opens 23:11, shuts Tue 19:11.",
    ]);
  });

  test("an undo names what it took back", () => {
    const diary = beforeSealing();
    const act = diary.say(1, { kind: "noted", text: "runs deep" }, "Mon 18:30");
    const before = diary.shop();
    diary.undo(act, "Mon 18:31");
    const events = diary.events.filter(({ kind }) => kind === "undone");
    expect(sayDone(events, diary.shop(), speechAt("Mon 18:31"), before)).toEqual([
      'Undone: 1 noted 18:30, "runs deep".',
    ]);
  });

  test("set-ups and settings are told without a tag", () => {
    const diary = beforeSealing();
    diary.ready("lead pot", "melt lead", "Mon 20:10");
    expect(saidOfLast(diary, "Mon 20:10")).toEqual(["Melt lead ready 20:10 at the lead pot."]);
    expect(saidOfLast(diary, "Mon 20:00")).toEqual(["Melt lead will be ready 20:10 at the lead pot."]);
    diary.putAway("lead pot", "Mon 20:55");
    expect(saidOfLast(diary, "Mon 20:55")).toEqual(["Lead pot put away 20:55."]);
    diary.settle({ of: "away", from: "2026-03-30", to: "2026-04-12" }, "Sun 20:00");
    expect(saidOfLast(diary, "Sun 20:00")).toEqual(["Away tomorrow to Sun 12 Apr: the bench is shut."]);
    diary.settle({ of: "day", date: "2026-03-23", hours: [{ opens: 1080, closes: 1335 }] }, "Mon 19:20");
    expect(saidOfLast(diary, "Mon 19:20")).toEqual(["Bench today 18:00 to 22:15."]);
  });

  test("every other kind has its words, and hostile ones are made plain", () => {
    const said = (body: EventBody): string[] => {
      const diary = beforeSealing();
      diary.say(1, body, "Mon 18:30");
      return saidOfLast(diary, "Mon 18:30");
    };
    expect(said({ kind: "moved", place: "warm box" })).toEqual(["1 moved to the warm box 18:30."]);
    expect(said({ kind: "measured", what: "wood moisture", value: 8, unit: "%" })).toEqual([
      "1 measured 18:30, wood moisture 8 %.",
    ]);
    expect(said({ kind: "scrapped", why: "split" })).toEqual(["1 scrapped 18:30: split."]);
    expect(said({ kind: "changed", name: "dace", due: "2026-03-27", price: 2800, for: "Ann" })).toEqual([
      "1 named dace, due Fri, price 28.00, for Ann.",
    ]);
    expect(said({ kind: "changed", weight: 10 })).toEqual(["1 comes first."]);
    expect(said({ kind: "routed", change: { do: "skip", step: "seal" }, why: null })).toEqual([
      "1 goes without seal. Second seal is open.",
    ]);
    expect(said({ kind: "noted", text: "a\u001b[2Jb\nc" })).toEqual(['1 noted 18:30, "ab c".']);
  });
});

test("acts that can be undone are named with their tags", () => {
  const diary = beforeSealing();
  diary.hang([1, 2], "seal", "Mon 19:04");
  const shop = diary.shop();
  const record = shop.acts.at(-1);
  expect(record === undefined ? "" : sayAct(record, shop, speechAt("Mon 20:00"))).toBe(
    "1 and 2 hung 19:04, seal",
  );
});

function hung(step: string, pass: number): EventBody {
  return {
    kind: "hung",
    step,
    pass,
    part: "step",
    place: "rack",
    colour: null,
    another: false,
    flashOff: null,
    result: null,
    guessed: false,
    overrides: [],
  };
}
