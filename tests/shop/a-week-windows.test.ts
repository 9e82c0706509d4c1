/** The openings and shuts of a made-up week at the bench, sums by hand: a varnish of 4 h to 24 h, a resin of two windows. */
import { describe, expect, test } from "vitest";
import { stepState } from "../../src/shop/step-state.ts";
import { Diary } from "../fixtures/diary.ts";
import { scuff, walker } from "../fixtures/walker.ts";
import { at, moment } from "../fixtures/week-time.ts";

const stateOf = (diary: Diary, tag: number, step: string, when: string) =>
  stepState(diary.piece(tag), step, moment(when));

describe("two walkers that hung before the program came", () => {
  const diary = new Diary(walker);
  diary.came(1, "seal", "last Sun 20:00", "Mon 18:00");
  diary.came(2, "seal", "Mon 12:30", "Mon 18:00");

  test("1 opened 00:00 (20:00 + 4 h) and shuts 20:00 (+ 24 h)", () => {
    expect(stateOf(diary, 1, "second seal", "Mon 18:01")).toEqual({
      is: "open",
      since: at("Mon 0:00"),
      shuts: at("Mon 20:00"),
      preparationAfter: scuff,
      opensAgain: true,
      nextOpens: at("Mon 20:00"),
    });
  });

  test("2 opens 16:30 (12:30 + 4 h) and shuts Tue 12:30", () => {
    expect(stateOf(diary, 2, "second seal", "Mon 16:29")).toMatchObject({
      is: "drying",
      opens: at("Mon 16:30"),
      shuts: at("Tue 12:30"),
      because: "window",
      coat: "varnish",
      step: "seal",
    });
    expect(stateOf(diary, 2, "second seal", "Mon 16:30")).toMatchObject({
      is: "open",
      shuts: at("Tue 12:30"),
    });
  });

  test("they are out since they hung, and nothing before the seal is to do", () => {
    const piece = diary.piece(1);
    expect(piece.begunAt).toBe(at("last Sun 20:00"));
    expect(piece.place).toBe("rack");
    expect(stateOf(diary, 1, "pour the ballast", "Mon 18:01")).toEqual({
      is: "done",
      at: at("last Sun 20:00"),
    });
    expect(stateOf(diary, 1, "colours", "Mon 18:01")).toEqual({ is: "blocked", by: ["second seal"] });
  });
});

describe("Monday evening and Tuesday", () => {
  const diary = new Diary(walker);
  diary.came(1, "seal", "last Sun 20:00", "Mon 18:00", [{ colour: "ochre", minutes: 10, flashOff: 5 }]);
  diary.came(2, "seal", "Mon 12:30", "Mon 18:00");
  diary.take([1, 2], "second seal", "Mon 18:52");
  diary.hang([1, 2], "second seal", "Mon 19:04");

  test("hung at 19:04 both open 23:04 and shut Tue 19:04; their 12 min are 6 each", () => {
    for (const tag of [1, 2]) {
      expect(stateOf(diary, tag, "colours", "Mon 20:59")).toMatchObject({
        is: "drying",
        opens: at("Mon 23:04"),
        shuts: at("Tue 19:04"),
      });
      expect(diary.piece(tag).work.get("second seal")?.hangs[0]?.minutes).toBe(6);
    }
  });

  test("2, never painted, asks 5 min of scuffing from 19:04 on, to the minute", () => {
    expect(stateOf(diary, 2, "colours", "Tue 19:03")).toMatchObject({ is: "open" });
    expect(stateOf(diary, 2, "colours", "Tue 19:04")).toEqual({
      is: "shut",
      since: at("Tue 19:04"),
      preparation: scuff,
      shuts: null,
      coat: "varnish",
      step: "second seal",
    });
  });

  test("scuffed, 2 is open and never shuts again", () => {
    const scuffed = new Diary(walker);
    scuffed.events.push(...diary.events);
    scuffed.take(2, "colours", "Wed 18:00", { part: "preparation" });
    scuffed.hang(2, "colours", "Wed 18:05", { part: "preparation", place: null });
    expect(stateOf(scuffed, 2, "colours", "Wed 18:05")).toMatchObject({ is: "open", shuts: null });
  });

  test("1 painted 18:15 to 18:25 with a flash-off of 5 min: done, and a colour not in its scheme is another pass", () => {
    const painted = new Diary(walker);
    painted.events.push(...diary.events);
    painted.take(1, "colours", "Tue 18:15", { colour: "ochre" });
    painted.hang(1, "colours", "Tue 18:25", { colour: "ochre" });
    expect(stateOf(painted, 1, "first clear", "Tue 18:29")).toMatchObject({
      is: "drying",
      opens: at("Tue 18:30"),
      shuts: null,
    });
    painted.take(1, "colours", "Tue 18:32", { colour: "moss", another: true });
    painted.hang(1, "colours", "Tue 18:39", { colour: "moss", another: true, flashOff: 8 });
    expect(painted.piece(1).scheme).toEqual([
      { colour: "ochre", minutes: 10, flashOff: 5 },
      { colour: "moss", minutes: 7, flashOff: 8 },
    ]);
    expect(stateOf(painted, 1, "first clear", "Tue 18:46")).toMatchObject({
      is: "drying",
      opens: at("Tue 18:47"),
    });
  });
});

describe("a first clear taken Tue 20:30 and never said done", () => {
  const diary = new Diary(walker);
  diary.came(1, "colours", "Tue 18:39", "Tue 18:40");
  diary.take(1, "first clear", "Tue 20:30");

  test("it is in hand, and forgotten once the bench has shut", () => {
    expect(stateOf(diary, 1, "first clear", "Tue 20:59")).toMatchObject({ is: "in hand", forgotten: false });
    expect(stateOf(diary, 1, "first clear", "Wed 18:00")).toEqual({
      is: "in hand",
      since: at("Tue 20:30"),
      part: "step",
      forgotten: true,
    });
  });

  test("hung 20:38 as usual: dry-hard 08:38 (12 h), shuts 20:38; amended to 20:45 all move by 7 min", () => {
    const act = diary.hang(1, "first clear", "Tue 20:38", { guessed: true });
    expect(stateOf(diary, 1, "detail", "Wed 8:00")).toMatchObject({
      is: "drying",
      because: "stage",
      stage: "dry-hard",
      opens: at("Wed 8:38"),
      shuts: at("Wed 20:38"),
    });
    diary.amend(act, "Tue 20:45", "Wed 18:01");
    expect(stateOf(diary, 1, "detail", "Wed 18:01")).toMatchObject({
      is: "open",
      since: at("Wed 8:45"),
      shuts: at("Wed 20:45"),
    });
  });

  test("tacky puts detail back to drying until a touch says hard, and its shut stays", () => {
    diary.touch(1, "first clear", "tacky", "Wed 18:05");
    expect(stateOf(diary, 1, "detail", "Wed 18:05")).toMatchObject({
      is: "drying",
      opens: null,
      because: "tacky",
      shuts: at("Wed 20:45"),
    });
    diary.touch(1, "first clear", "hard", "Wed 20:00");
    expect(stateOf(diary, 1, "detail", "Wed 20:00")).toMatchObject({
      is: "open",
      since: at("Wed 20:00"),
      shuts: at("Wed 20:45"),
    });
  });
});

describe("the run in the seal of 3", () => {
  const diary = new Diary(walker);
  diary.came(3, "pour the ballast", "Mon 20:18", "Mon 20:19");
  diary.take(3, "seal", "Tue 19:20");
  diary.hang(3, "seal", "Tue 19:26");
  diary.mend(3, "level the run", 10, "seal", "Wed 19:00");

  test("levelled and gone on from the seal, only that step and what follows are open again", () => {
    expect(stateOf(diary, 3, "pour the ballast", "Wed 19:01")).toMatchObject({ is: "done" });
    expect(stateOf(diary, 3, "seal", "Wed 19:01")).toMatchObject({
      is: "open",
      since: at("Wed 19:00"),
      shuts: null,
    });
    expect(stateOf(diary, 3, "second seal", "Wed 19:01")).toEqual({ is: "blocked", by: ["seal"] });
    expect(diary.piece(3).mends).toEqual([
      { at: at("Wed 19:00"), what: "level the run", minutes: 10, goOnFrom: "seal" },
    ]);
  });

  test("sealed again at 19:16 the second seal has Wed 23:16 to Thu 19:16", () => {
    diary.hang(3, "seal", "Wed 19:16");
    expect(stateOf(diary, 3, "second seal", "Wed 19:17")).toMatchObject({
      opens: at("Wed 23:16"),
      shuts: at("Thu 19:16"),
    });
  });

  test("its second seal, hung Thu 19:11, gives the colours Thu 23:11 to Fri 19:11", () => {
    diary.hang(3, "second seal", "Thu 19:11");
    expect(stateOf(diary, 3, "colours", "Fri 18:40")).toMatchObject({
      is: "open",
      since: at("Thu 23:11"),
      shuts: at("Fri 19:11"),
    });
  });
});

describe("the resin's two windows", () => {
  // A second coat of the resin: the walker's own last clear is swapped in twice.
  const diary = new Diary(walker);
  diary.came(4, "detail", "Wed 18:00", "Thu 18:30");
  diary.route(
    4,
    { do: "put", name: "gloss", like: "last clear", after: "last clear", coat: null, handsOn: null },
    "Thu 18:31",
  );
  diary.hang(4, "last clear", "Thu 19:00");

  test("hung 19:00: open at once to 21:00, wet on wet, and after that from Fri 19:00 with a scuff", () => {
    expect(stateOf(diary, 4, "gloss", "Thu 19:00")).toEqual({
      is: "open",
      since: at("Thu 19:00"),
      shuts: at("Thu 21:00"),
      preparationAfter: scuff,
      opensAgain: true,
      nextOpens: at("Fri 19:00"),
    });
  });

  test("between the two it is drying and names the next opening", () => {
    expect(stateOf(diary, 4, "gloss", "Thu 21:00")).toEqual({
      is: "drying",
      opens: at("Fri 19:00"),
      shuts: null,
      because: "between windows",
      coat: "bar-top resin",
      step: "last clear",
      stage: null,
      preparation: scuff,
    });
    expect(stateOf(diary, 4, "gloss", "Fri 19:00")).toMatchObject({
      is: "shut",
      since: at("Thu 21:00"),
      preparation: scuff,
    });
  });

  test("tacky in the wet-on-wet window is as it should be", () => {
    diary.touch(4, "last clear", "tacky", "Thu 20:00");
    expect(stateOf(diary, 4, "gloss", "Thu 20:00")).toMatchObject({ is: "open", shuts: at("Thu 21:00") });
    expect(stateOf(diary, 4, "gloss", "Thu 21:00")).toMatchObject({
      is: "drying",
      opens: null,
      because: "tacky",
    });
  });
});

describe("the end of the week", () => {
  test("varnish hung Sat 12:00 opens 16:00 and shuts Sunday 13:00 by the new clock", () => {
    const diary = new Diary(walker);
    diary.came(6, "pour the ballast", "Fri 20:00", "Fri 20:00");
    diary.hang(6, "seal", "Sat 12:00");
    expect(stateOf(diary, 6, "second seal", "Sat 12:01")).toMatchObject({
      opens: at("Sat 16:00"),
      // Clocks go forward at 01:00: 12:00 and 24 h are 13:00.
      shuts: at("Sun 13:00"),
    });
  });

  test("hangers wait for the resin to be dry-hard, 24 h, and never shut", () => {
    const diary = new Diary(walker);
    diary.came(5, "last clear", "Thu 19:00", "Thu 19:01");
    expect(stateOf(diary, 5, "hangers", "Fri 18:59")).toMatchObject({
      is: "drying",
      opens: at("Fri 19:00"),
      shuts: null,
      because: "stage",
    });
    expect(stateOf(diary, 5, "hangers", "Fri 19:00")).toMatchObject({ is: "open", shuts: null });
  });

  test("a failed water test goes on from the hangers; a mend opens a finished piece again", () => {
    const diary = new Diary(walker);
    diary.came(4, "hangers", "Sat 14:40", "Sat 14:40");
    diary.hang(4, "water test", "Sat 15:00", { result: "tune" });
    expect(diary.piece(4).end).toBeNull();
    expect(diary.piece(4).sentBack).toEqual([
      { at: at("Sat 15:00"), step: "water test", answer: "tune", to: "hangers" },
    ]);
    expect(stateOf(diary, 4, "hangers", "Sat 15:01")).toMatchObject({ is: "open", since: at("Sat 15:00") });
    expect(stateOf(diary, 4, "last clear", "Sat 15:01")).toMatchObject({ is: "done" });
    diary.hang(4, "hangers", "Sat 15:10");
    diary.hang(4, "water test", "Sat 15:20", { result: "passes" });
    expect(diary.piece(4).end).toEqual({ how: "finished", at: at("Sat 15:20") });
    diary.mend(4, "glue the hanger", 10, "hangers", "Sat 15:40");
    expect(diary.piece(4).end).toBeNull();
    expect(stateOf(diary, 4, "hangers", "Sat 15:41")).toMatchObject({ is: "open" });
    diary.hang(4, "hangers", "Sat 15:45");
    diary.hang(4, "water test", "Sat 15:50", { result: "passes" });
    expect(diary.piece(4).end).toEqual({ how: "finished", at: at("Sat 15:50") });
  });
});
