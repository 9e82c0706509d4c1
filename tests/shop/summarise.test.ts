import { describe, expect, test } from "vitest";
import { summarise } from "../../src/shop/summarise.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";

const summaryOf = (diary: Diary, tag = 1) =>
  summarise(
    tag,
    diary.events.filter((event) => event.tag === tag || event.kind === "clock"),
    () => walker,
  );

function tagged(): Diary {
  const diary = new Diary(walker);
  diary.tag(1, "Mon 18:00");
  return diary;
}

describe("where the life of a piece stands", () => {
  test("a piece not begun is out already, as work still to do", () => {
    expect(summaryOf(tagged())).toEqual({
      row: {
        tag: 1,
        out: true,
        name: "lure 1",
        process: "hash",
        processName: "walker",
        taggedAt: at("Mon 18:00"),
        finishedAt: null,
        scrappedAt: null,
      },
      stepTimes: [],
    });
  });

  test("finished it is out no more; mended it is again; sold it keeps when it was finished", () => {
    const diary = new Diary(walker);
    diary.came(1, "hangers", "Sat 14:00", "Sat 14:00");
    diary.hang(1, "water test", "Sat 15:30", { result: "passes" });
    expect(summaryOf(diary)?.row).toMatchObject({ out: false, finishedAt: at("Sat 15:30") });
    const mend = diary.mend(1, "glue the hanger", 10, "hangers", "Sat 15:40");
    expect(summaryOf(diary)?.row).toMatchObject({ out: true, finishedAt: null });
    diary.undo(mend, "Sat 15:41");
    diary.say(1, { kind: "gone", how: "sold", price: 2800, to: null }, "Sun 10:00");
    expect(summaryOf(diary)?.row).toMatchObject({
      out: false,
      finishedAt: at("Sat 15:30"),
      scrappedAt: null,
    });
  });

  test("scrapped after it was finished it keeps both moments", () => {
    const diary = new Diary(walker);
    diary.came(1, "hangers", "Sat 14:00", "Sat 14:00");
    diary.hang(1, "water test", "Sat 15:30", { result: "passes" });
    diary.say(1, { kind: "scrapped", why: "sat upon" }, "Sun 10:00");
    expect(summaryOf(diary)?.row).toMatchObject({
      out: false,
      finishedAt: at("Sat 15:30"),
      scrappedAt: at("Sun 10:00"),
    });
  });

  test("is nothing where the tagging was undone", () => {
    const diary = new Diary(walker);
    const act = diary.tag(1, "Mon 18:00");
    diary.undo(act, "Mon 18:01");
    expect(summaryOf(diary)).toBeNull();
  });
});

describe("hands-on times to learn from", () => {
  test("are those of passes taken and hung: 18:02 to 18:40 is 38 min", () => {
    const diary = tagged();
    diary.take(1, "shape", "Mon 18:02");
    diary.hang(1, "shape", "Mon 18:40");
    expect(summaryOf(diary)?.stepTimes).toEqual([
      { process: "walker", step: "shape", tag: 1, pass: 1, minutes: 38, at: at("Mon 18:40") },
    ]);
  });

  test("follow an amended time, and a clock set right", () => {
    const diary = tagged();
    const take = diary.take(1, "shape", "Mon 18:02");
    const hang = diary.hang(1, "shape", "Mon 18:40");
    diary.amend(take, "Mon 18:05", "Mon 18:41");
    expect(summaryOf(diary)?.stepTimes).toMatchObject([{ minutes: 35 }]);
    diary.act("Mon 18:45", [{ tag: null, body: { kind: "clock", since: hang, minutes: 5 } }]);
    // The amendment was written by the wrong clock too: 18:05 was 18:00, and 18:40 was 18:35.
    expect(summaryOf(diary)?.stepTimes).toMatchObject([{ minutes: 35, at: at("Mon 18:35") }]);
  });

  test("are each piece's share where several were worked together, seen from one piece alone", () => {
    const diary = new Diary(walker);
    diary.tag([1, 2, 3], "Mon 18:00");
    diary.take([1, 2, 3], "drill", "Mon 18:00");
    diary.hang([1, 2, 3], "drill", "Mon 18:24");
    expect(summaryOf(diary, 2)?.stepTimes).toEqual([]);
    const shaped = new Diary(walker);
    for (const tag of [1, 2, 3]) shaped.came(tag, "shape", "Mon 17:00", "Mon 18:00");
    shaped.take([1, 2, 3], "drill", "Mon 18:00");
    shaped.hang([1, 2, 3], "drill", "Mon 18:24");
    expect(summaryOf(shaped, 2)?.stepTimes).toMatchObject([{ tag: 2, minutes: 8 }]);
  });

  test("leave out what was not seen: not taken, hung as usual, or from before the program came", () => {
    const diary = tagged();
    diary.hang(1, "shape", "Mon 18:40");
    diary.take(1, "drill", "Mon 18:45");
    diary.hang(1, "drill", "Mon 18:53", { guessed: true });
    expect(summaryOf(diary)?.stepTimes).toEqual([]);
    const came = new Diary(walker);
    came.came(1, "seal", "Mon 12:00", "Mon 18:00");
    expect(summaryOf(came)?.stepTimes).toEqual([]);
  });

  test("leave out a guess even if it was amended, and a timer that ran for more than 4 times the highest", () => {
    const guess = tagged();
    guess.take(1, "shape", "Mon 20:30");
    const act = guess.hang(1, "shape", "Mon 21:10", { guessed: true });
    guess.amend(act, "Mon 20:55", "Tue 18:01");
    expect(summaryOf(guess)?.stepTimes).toEqual([]);
    const forgotten = tagged();
    forgotten.take(1, "shape", "Mon 18:00");
    // 40 min are its highest: 160 min are believed, 161 are not.
    const hang = forgotten.hang(1, "shape", "Mon 20:41");
    expect(summaryOf(forgotten)?.stepTimes).toEqual([]);
    forgotten.amend(hang, "Mon 20:40", "Mon 20:42");
    expect(summaryOf(forgotten)?.stepTimes).toMatchObject([{ minutes: 160 }]);
  });

  test("keep work that a mend took back: the time was spent all the same", () => {
    const diary = tagged();
    diary.take(1, "shape", "Mon 18:00");
    diary.hang(1, "shape", "Mon 18:40");
    diary.mend(1, "fill the split", 20, "shape", "Mon 19:00");
    diary.take(1, "shape", "Mon 19:00");
    diary.hang(1, "shape", "Mon 19:30");
    expect(summaryOf(diary)?.stepTimes.map(({ pass, minutes }) => [pass, minutes])).toEqual([
      [1, 40],
      [2, 30],
    ]);
  });
});
