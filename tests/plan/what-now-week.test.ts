import { describe, expect, test } from "vitest";
import { Diary } from "../fixtures/diary.ts";
import { inARow, makeCoat, makeProcess, makeStep, scuff, varnish, walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";
import { askNow, newPieceOf, saidRows } from "./ask-now.ts";

/** Two walkers hang sealed: 1 since Sunday 20:00, 2 since Monday 12:30. The varnish's window is 4 h to 24 h. */
function sealedOnce(): Diary {
  const diary = new Diary(walker);
  diary.came(1, "seal", "last Sun 20:00", "Mon 18:00");
  diary.came(2, "seal", "Mon 12:30", "Mon 18:00");
  return diary;
}

/** The same, and 3 is shaped and drilled, and both were sealed again in one act, hung 19:04. */
function sealedTwice(): Diary {
  const diary = sealedOnce();
  diary.tag(3, "Mon 18:02");
  diary.take(3, "shape", "Mon 18:03");
  diary.hang(3, "shape", "Mon 18:43");
  diary.take(3, "drill", "Mon 18:43");
  diary.hang(3, "drill", "Mon 18:50");
  diary.take([1, 2], "second seal", "Mon 18:52");
  diary.hang([1, 2], "second seal", "Mon 19:04");
  return diary;
}

describe("Monday", () => {
  test("18:01: the second seal of 1 and 2 stands first, together, to be begun by 20:00", () => {
    const { work } = askNow(sealedOnce(), "Mon 18:01");
    expect(saidRows(work)).toEqual(["1 2 second seal"]);
    // Two of 6 min. 1 hung Sunday 20:00, and 20:00 + 24 h is Monday 20:00; 2 opened last, 12:30 + 4 h.
    expect(work[0]).toMatchObject({
      minutes: 12,
      coat: "varnish",
      opens: at("Mon 16:30"),
      shuts: at("Mon 20:00"),
      beginBy: at("Mon 20:00"),
      why: { because: "shuts tonight", at: at("Mon 20:00") },
    });
  });

  test("18:01: leaving them costs a scuff each, of 2 too, for the bench opens again after 12:30", () => {
    const [row] = askNow(sealedOnce(), "Mon 18:01").work;
    // 2 shuts Tuesday 12:30 (12:30 + 24 h), the bench opens Tuesday 18:00.
    expect(row?.ifLeft).toMatchObject({
      preparation: scuff,
      preparationFrom: at("Mon 20:00"),
      mend: false,
      shut: [
        { tag: 1, at: at("Mon 20:00") },
        { tag: 2, at: at("Tue 12:30") },
      ],
    });
    const { finishNow, finishLeft } = row?.ifLeft ?? { finishNow: null, finishLeft: null };
    expect(finishNow).not.toBeNull();
    expect(finishLeft).toBeGreaterThan(finishNow ?? 0);
  });

  test("18:02: a new walker can be shaped now, before the coats: once they are laid it waits till they are dry", () => {
    const diary = sealedOnce();
    diary.tag(3, "Mon 18:02");
    const answer = askNow(diary, "Mon 18:02");
    // 40 min of shaping and a quarter more end 18:52, well before 20:00.
    expect(saidRows(answer.work)).toEqual(["3 shape", "1 2 second seal"]);
    expect(answer.work[0]?.why).toEqual({ because: "would be held after", what: "wet coat" });
    expect(answer.held).toEqual([]);
    expect(answer.waiting.map(({ state }) => state)).toEqual(["open", "open", "not begun"]);
  });

  test("19:15: with the window so near, the coats come first and shaping after", () => {
    const diary = sealedOnce();
    diary.tag(3, "Mon 18:02");
    // 40 min and a quarter more from 19:15 would end 20:05.
    expect(saidRows(askNow(diary, "Mon 19:15").work)).toEqual(["1 2 second seal", "3 shape"]);
  });

  test("19:04: melting lead is held till 19:44 by the vapour of 1 and 2", () => {
    const { held, work } = askNow(sealedTwice(), "Mon 19:04", { newPiece: null });
    expect(saidRows(work)).toEqual([]);
    // No moisture was measured either, and that the clock does not end.
    expect(held[0]).toMatchObject({ tags: [3], step: "pour the ballast", until: null });
    const diary = sealedTwice();
    diary.say(3, { kind: "measured", what: "wood moisture", value: 8, unit: "%" }, "Mon 19:04");
    const [pour] = askNow(diary, "Mon 19:04").held;
    // Vapour lasts 40 min: 19:04 + 40.
    expect(pour).toMatchObject({ tags: [3], until: at("Mon 19:44"), setUp: { minutes: 20 } });
    expect(pour?.because).toMatchObject({ code: "keep apart", because: "solvent vapour of 1 and 2" });
  });

  test("19:04: shaping a new one is held till 19:49, when the coats are dust-free", () => {
    const { held } = askNow(sealedTwice(), "Mon 19:04", { newPiece: newPieceOf(walker) });
    // 19:04 + 45 min. Nothing else can be begun, so a new one is thought of.
    expect(held).toContainEqual(expect.objectContaining({ tags: [], step: "shape", until: at("Mon 19:49") }));
  });

  test("20:18: the pot keeps till 21:03, and a second pour needs no second melt", () => {
    const diary = sealedTwice();
    diary.tag(4, "Mon 19:00");
    for (const step of ["shape", "drill"]) diary.hang(4, step, "Mon 19:01");
    for (const tag of [3, 4]) {
      diary.say(tag, { kind: "measured", what: "wood moisture", value: 8, unit: "%" }, "Mon 19:50");
    }
    diary.ready("lead pot", "melt lead", "Mon 20:10", {
      keeps: { way: "heat", minutes: 45 },
      givesOff: ["heat", "lead fume"],
    });
    diary.take(3, "pour the ballast", "Mon 20:12");
    diary.hang(3, "pour the ballast", "Mon 20:18");
    const answer = askNow(diary, "Mon 20:18");
    expect(saidRows(answer.work)).toEqual(["4 pour the ballast"]);
    expect(answer.work[0]).toMatchObject({
      setUp: { what: "melt lead", minutes: 0, standing: true },
      why: { because: "set-up keeps", until: at("Mon 21:03") },
    });
    // 20:18 + 45 min, with 5 min of putting away before 21:00.
    expect(answer.prepared).toMatchObject([{ station: "lead pot", state: "ready", until: at("Mon 21:03") }]);
    expect(answer.bench).toMatchObject({ minutesLeft: 42, putAway: 5, closes: at("Mon 21:00") });
  });

  test("20:35: a melt no longer fits tonight: 20 + 6 + 5 min are more than 25", () => {
    const diary = sealedTwice();
    diary.say(3, { kind: "measured", what: "wood moisture", value: 8, unit: "%" }, "Mon 20:00");
    const { work, held } = askNow(diary, "Mon 20:35");
    expect(saidRows(work)).toEqual([]);
    expect(held[0]).toMatchObject({ tags: [3], until: at("Tue 18:00") });
    expect(held[0]?.because).toMatchObject({ code: "does not fit", because: "does not fit tonight" });
  });

  test("19:52: a melt is too late after the wait for the vapour, which is not said to be gone then", () => {
    const diary = sealedOnce();
    diary.tag(3, "Mon 18:02");
    for (const step of ["shape", "drill"]) diary.hang(3, step, "Mon 18:50");
    diary.say(3, { kind: "measured", what: "wood moisture", value: 8, unit: "%" }, "Mon 19:00");
    diary.take([1, 2], "second seal", "Mon 19:40");
    diary.hang([1, 2], "second seal", "Mon 19:52");
    const { held } = askNow(diary, "Mon 19:52", { newPiece: null });
    // 19:52 + 40 min of vapour is 20:32, and 20 + 6 + 5 min are more than the 28 left.
    const because = "does not fit tonight, after the wait for solvent vapour of 1 and 2";
    expect(held[0]).toMatchObject({
      tags: [3],
      because: { code: "does not fit", because },
      until: at("Tue 18:00"),
    });
  });

  test("21:10: the bench is shut, and what could be worked is held till it opens", () => {
    const { work, held, bench } = askNow(sealedOnce(), "Mon 19:59");
    expect(saidRows(work)).toEqual(["1 2 second seal"]);
    expect(held).toEqual([]);
    const shut = askNow(sealedOnce(), "Mon 21:10");
    expect(shut.work).toEqual([]);
    expect(shut.held.map(({ because, until }) => [because.code, until])).toContainEqual([
      "no bench hours",
      at("Tue 18:00"),
    ]);
    expect(bench.closes).toBe(at("Mon 21:00"));
    expect(shut.bench).toMatchObject({ closes: null, minutesLeft: 0, opensNext: at("Tue 18:00") });
  });
});

describe("Tuesday and Wednesday", () => {
  test("Tue 19:04: 2 was never painted, and asks a scuff of 5 min from then on", () => {
    const { work } = askNow(sealedTwice(), "Tue 19:04");
    const scuffs = work.filter(({ part }) => part === "preparation");
    expect(scuffs).toMatchObject([{ tags: [1, 2], step: "colours", preparation: scuff, minutes: 10 }]);
    expect(saidRows(askNow(sealedTwice(), "Tue 19:03").work)).toContain("1 2 colours");
  });

  test("a coat taken 20:30 and forgotten shows both ends of its window the next day", () => {
    const diary = sealedTwice();
    diary.hang(1, "colours", "Tue 18:30");
    diary.take(1, "first clear", "Tue 20:30");
    const answer = askNow(diary, "Wed 18:00");
    // Usually 8 min: 20:38; at the latest when the bench shut: 21:00.
    expect(answer.inHand).toMatchObject([
      { tags: [1], step: "first clear", forgotten: { usual: at("Tue 20:38"), latest: at("Tue 21:00") } },
    ]);
    // detail waits for dry-hard, 12 h: 08:38 and 09:00; the window shuts 24 h after: 20:38 and 21:00.
    expect(answer.waiting[0]).toMatchObject({
      tag: 1,
      opens: at("Wed 8:38"),
      shuts: at("Wed 20:38"),
      otherEnd: { opens: at("Wed 9:00"), shuts: at("Wed 21:00") },
    });
    // Nothing else may be begun before the maker has said what became of it.
    expect(answer.work).toEqual([]);
    expect(answer.held.map(({ because }) => because.code)).toContain("hands full");
  });

  test("tacky takes the clock's word away until a touch says otherwise", () => {
    const diary = sealedTwice();
    diary.hang(1, "colours", "Tue 18:30");
    diary.hang(1, "first clear", "Tue 20:45");
    diary.touch(1, "first clear", "tacky", "Wed 18:05");
    const tacky = askNow(diary, "Wed 18:06");
    expect(tacky.waiting[0]).toMatchObject({ state: "drying", opens: null, because: "tacky" });
    expect(saidRows(tacky.work)).not.toContain("1 detail");
    diary.touch(1, "first clear", "hard", "Wed 20:00");
    expect(saidRows(askNow(diary, "Wed 20:00").work)).toContain("1 detail");
  });
});

describe("Thursday to Saturday", () => {
  test("Thu 18:30: one row with three tags and one cup", () => {
    const diary = new Diary(walker);
    for (const tag of [1, 4, 5]) diary.came(tag, "detail", "Wed 20:15", "Thu 18:25");
    const { work } = askNow(diary, "Thu 18:30");
    expect(saidRows(work)).toEqual(["1 4 5 last clear"]);
    // Three of 8 min, one cup of 4 min that serves four.
    expect(work[0]).toMatchObject({
      minutes: 24,
      name: null,
      setUp: { what: "mix resin", minutes: 4, standing: false },
    });
  });

  test("a cup that serves four makes a second row for the fifth", () => {
    const diary = new Diary(walker);
    for (const tag of [1, 2, 3, 4, 5]) diary.came(tag, "detail", "Wed 20:15", "Thu 18:25");
    expect(saidRows(askNow(diary, "Thu 18:30").work)).toEqual(["1 2 3 4 last clear", "5 last clear"]);
  });

  test("Sat 11:52: varnish hung at 12:00 opens as the bench shuts: lay it Monday, or count on a scuff", () => {
    const brushing = makeCoat("brushing varnish", { ...varnish, name: "brushing varnish" });
    const process = makeProcess(
      "two coats",
      inARow([
        makeStep("sand", 10),
        makeStep("one coat", 8, { coat: brushing.name }),
        makeStep("next coat", 8, { coat: brushing.name }),
      ]),
      [brushing],
    );
    const diary = new Diary(process);
    diary.came(1, "sand", "Fri 20:00", "Sat 9:00");
    const [row] = askNow(diary, "Sat 11:52").work;
    // Hung 12:00: opens 16:00, when the bench shuts; shuts 24 h later, Sunday 13:00 by the new clock. Nothing is open
    // on Sunday. For 8 min before 16:00 it had to open by 15:52, so to hang by 11:52. Monday 18:08 shuts Tuesday 18:08.
    expect(row?.warning).toEqual({
      opens: at("Sat 16:00"),
      shuts: at("Sun 13:00"),
      preparation: scuff,
      nextMinutes: 8,
      hangBy: at("Sat 11:52"),
      layFrom: at("next Mon 18:00"),
    });
    expect(askNow(diary, "Sat 11:44").work[0]?.warning).toBeNull();
  });

  test("the hours of a Monday after clocks went forward are 18:00 by the new clock", () => {
    const answer = askNow(sealedOnce(), "Sun 2:10");
    expect(answer.bench.opensNext).toBe(at("next Mon 18:00"));
    // 17:00 by Greenwich.
    expect(answer.bench.opensNext).toBe(Date.UTC(2026, 2, 30, 17));
  });
});
