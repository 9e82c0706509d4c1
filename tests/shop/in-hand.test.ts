import { describe, expect, test } from "vitest";
import { foldShop } from "../../src/shop/fold.ts";
import { stepState, stepStates } from "../../src/shop/step-state.ts";
import { isForgotten, usualHang } from "../../src/shop/usual-hang.ts";
import { Diary } from "../fixtures/diary.ts";
import { inARow, makeProcess, makeStep, walker } from "../fixtures/walker.ts";
import { at, moment } from "../fixtures/week-time.ts";

describe("hands-on minutes", () => {
  test("of three pieces taken in one act and hung 12 min later are 4 each", () => {
    const diary = new Diary(walker);
    diary.tag([1, 2, 3], "Mon 18:00");
    diary.take([1, 2, 3], "shape", "Mon 18:00");
    diary.hang([1, 2, 3], "shape", "Mon 18:12");
    for (const tag of [1, 2, 3]) expect(diary.piece(tag).work.get("shape")?.hangs[0]?.minutes).toBe(4);
  });

  test("are the same share when one of them is in the reading alone", () => {
    const diary = new Diary(walker);
    diary.tag([1, 2, 3], "Mon 18:00");
    diary.take([1, 2, 3], "shape", "Mon 18:00");
    diary.hang([1, 2, 3], "shape", "Mon 18:12");
    const alone = foldShop({ ...diary.reading(), events: diary.events.filter(({ tag }) => tag === 2) });
    expect(alone.pieces.get(2)).toEqual(diary.piece(2));
  });

  test("leave out the time it lay: 10 min, left for an hour, 5 min more are 15", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00");
    diary.take(1, "shape", "Mon 18:00");
    diary.leave(1, "shape", "Mon 18:10");
    expect(stepState(diary.piece(1), "shape", moment("Mon 18:30"))).toEqual({
      is: "left",
      since: at("Mon 18:10"),
      part: "step",
    });
    diary.take(1, "shape", "Mon 19:10");
    diary.hang(1, "shape", "Mon 19:15");
    expect(diary.piece(1).work.get("shape")?.hangs[0]).toMatchObject({
      takenAt: at("Mon 18:00"),
      minutes: 15,
    });
  });

  test("of a piece hung without being taken are not known", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00");
    diary.hang(1, "shape", "Mon 18:40");
    expect(diary.piece(1).work.get("shape")?.hangs[0]).toMatchObject({ takenAt: null, minutes: null });
  });

  test("of a piece left and then hung are at least those before: kept as a guess", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00");
    diary.take(1, "shape", "Mon 18:00");
    diary.leave(1, "shape", "Mon 18:10");
    diary.hang(1, "shape", "Mon 20:00");
    expect(diary.piece(1).work.get("shape")?.hangs[0]).toMatchObject({ minutes: 10, guessed: true });
  });

  test("of a preparation stand with the pass that follows it", () => {
    const diary = new Diary(walker);
    diary.came(1, "seal", "last Sun 12:00", "Mon 18:00");
    diary.take(1, "second seal", "Mon 18:00", { part: "preparation" });
    diary.hang(1, "second seal", "Mon 18:07", { part: "preparation" });
    diary.hang(1, "second seal", "Mon 18:15");
    expect(diary.piece(1).work.get("second seal")?.hangs[0]?.preparedFirst).toBe(7);
  });

  test("of a preparation whose time is not known are the usual 5", () => {
    const diary = new Diary(walker);
    diary.came(1, "seal", "last Sun 12:00", "Mon 18:00");
    diary.hang(1, "second seal", "Mon 18:07", { part: "preparation" });
    diary.hang(1, "second seal", "Mon 18:15");
    expect(diary.piece(1).work.get("second seal")?.hangs[0]?.preparedFirst).toBe(5);
  });
});

describe("a piece in hand", () => {
  test("is on no hook, and out from its first hands-on", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00");
    expect(diary.piece(1).begunAt).toBeNull();
    diary.came(2, "seal", "last Sun 12:00", "Mon 18:00");
    diary.take(2, "second seal", "Mon 18:10");
    expect(diary.piece(2)).toMatchObject({ place: null, begunAt: at("last Sun 12:00") });
    diary.take(1, "shape", "Mon 18:20");
    expect(diary.piece(1).begunAt).toBe(at("Mon 18:20"));
  });
});

describe("several steps open at once", () => {
  // The lip is cut while the body dries; both come together at the end.
  const twoBranches = makeProcess("branched", [
    makeStep("body", 20, { mayStop: true }),
    makeStep("lip", 10, { mayStop: true }),
    makeStep("join", 5, { after: ["body", "lip"] }),
  ]);

  test("body and lip are open, the join waits for both and names them", () => {
    const diary = new Diary(twoBranches);
    diary.tag(1, "Mon 18:00");
    const states = stepStates(diary.piece(1), moment("Mon 18:01"));
    expect([...states].map(([name, { is }]) => [name, is])).toEqual([
      ["body", "open"],
      ["lip", "open"],
      ["join", "blocked"],
    ]);
    expect(states.get("join")).toEqual({ is: "blocked", by: ["body", "lip"] });
  });

  test("one left half-done stays left while the other is in hand, and both are gone on with", () => {
    const diary = new Diary(twoBranches);
    diary.tag(1, "Mon 18:00");
    diary.take(1, "body", "Mon 18:00");
    diary.leave(1, "body", "Mon 18:05");
    diary.take(1, "lip", "Mon 18:05");
    const states = () => [...stepStates(diary.piece(1), moment("Mon 18:06")).values()].map(({ is }) => is);
    expect(states()).toEqual(["left", "in hand", "blocked"]);
    diary.leave(1, "lip", "Mon 18:08");
    expect(states()).toEqual(["left", "left", "blocked"]);
    diary.hang(1, "lip", "Mon 18:20");
    expect(states()).toEqual(["left", "done", "blocked"]);
    diary.take(1, "body", "Mon 18:30");
    diary.hang(1, "body", "Mon 18:45");
    expect(diary.piece(1).work.get("body")?.hangs[0]?.minutes).toBe(20);
    expect(diary.piece(1).hand).toBeNull();
  });
});

describe("a step nobody said was done", () => {
  test("taken 20:30, usually 8 min, the bench open till 21:00: hung 20:38 as usual, 21:00 at the latest", () => {
    const diary = new Diary(walker);
    diary.came(1, "colours", "Tue 18:30", "Tue 18:30");
    diary.take(1, "first clear", "Tue 20:30");
    const hand = diary.piece(1).hand;
    if (hand === null) throw new Error("1 is in hand");
    expect(usualHang(hand, 8, moment("Wed 18:00"))).toEqual({
      usual: at("Tue 20:38"),
      latest: at("Tue 21:00"),
    });
    // Asked while it is still in hand, neither end can lie ahead.
    expect(usualHang(hand, 8, moment("Tue 20:34"))).toEqual({
      usual: at("Tue 20:34"),
      latest: at("Tue 20:34"),
    });
  });

  test("three taken together take three times as long: 20:54", () => {
    const diary = new Diary(walker);
    for (const tag of [1, 2, 3]) diary.came(tag, "colours", "Tue 18:30", "Tue 18:30");
    diary.take([1, 2, 3], "first clear", "Tue 20:30");
    const hand = diary.piece(1).hand;
    if (hand === null) throw new Error("1 is in hand");
    expect(usualHang(hand, 8, moment("Wed 18:00")).usual).toBe(at("Tue 20:54"));
  });

  test("is not forgotten before even its highest hands-on time has passed", () => {
    const slow = makeProcess("slow", [
      makeStep("carve", 90, { handsOn: { low: 60, likely: 90, high: 180 } }),
    ]);
    const diary = new Diary(slow);
    diary.tag(1, "Mon 20:00");
    diary.take(1, "carve", "Mon 20:30");
    const forgotten = (when: string) => stepState(diary.piece(1), "carve", moment(when));
    // The bench shut at 21:00, but three hours from 20:30 last till 23:30.
    expect(forgotten("Mon 23:29")).toMatchObject({ forgotten: false });
    expect(forgotten("Mon 23:30")).toMatchObject({ forgotten: true });
  });

  test("taken ten minutes before the bench opens belongs to that session", () => {
    const diary = new Diary(makeProcess("quick", inARow([makeStep("drill", 8)])));
    diary.tag(1, "Mon 17:00");
    diary.take(1, "drill", "Mon 17:50");
    expect(stepState(diary.piece(1), "drill", moment("Mon 20:59"))).toMatchObject({ forgotten: false });
    expect(stepState(diary.piece(1), "drill", moment("Mon 21:00"))).toMatchObject({ forgotten: true });
  });

  test("taken after the bench shut is forgotten after 12 h; one left half-done never is", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 17:00");
    diary.take(1, "shape", "Mon 21:30");
    expect(stepState(diary.piece(1), "shape", moment("Tue 9:29"))).toMatchObject({ forgotten: false });
    expect(stepState(diary.piece(1), "shape", moment("Tue 9:30"))).toMatchObject({ forgotten: true });
    diary.leave(1, "shape", "Mon 21:50");
    const left = diary.piece(1);
    expect(left.hand !== null && isForgotten(left, left.hand, moment("Wed 9:30"))).toBe(false);
  });
});
