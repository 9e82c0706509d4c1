/** What was taken back, amended or stamped by a wrong clock: every later reader sees only what is now held to be true. */
import { describe, expect, test } from "vitest";
import { foldShop } from "../../src/shop/fold.ts";
import { liveEvents } from "../../src/shop/live-events.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";

describe("an act taken back", () => {
  test("is as if it had never been: hung and undone, 1 is in hand again", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00");
    diary.take(1, "shape", "Mon 18:02");
    const before = diary.piece(1);
    const act = diary.hang(1, "shape", "Mon 18:40");
    expect(diary.piece(1).work.get("shape")?.hangs).toHaveLength(1);
    diary.undo(act, "Mon 18:41");
    expect({ ...diary.piece(1), lastSeq: before.lastSeq }).toEqual(before);
    expect(diary.shop().acts.map((record) => record.act)).toEqual([1, 2]);
    expect(diary.shop().setAside).toEqual([]);
  });

  test("takes all its pieces back: one act, two tags", () => {
    const diary = new Diary(walker);
    const act = diary.tag([1, 2], "Mon 18:00");
    diary.undo(act, "Mon 18:01");
    expect(diary.shop().pieces.size).toBe(0);
    // The numbers are used up all the same.
    expect(diary.shop().nextTag).toBe(3);
  });

  test("an undo that was itself taken back takes nothing back", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00");
    const take = diary.take(1, "shape", "Mon 18:02");
    const undo = diary.undo(take, "Mon 18:03");
    diary.undo(undo, "Mon 18:04");
    expect(diary.piece(1).hand?.step).toBe("shape");
  });

  test("three notes by mistake and three undos leave no note, newest first", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Sat 15:50");
    const before = diary.piece(1);
    const notes = ["a", "b", "c"].map((text) => diary.say(1, { kind: "noted", text }, "Sat 15:55"));
    for (const note of notes.toReversed()) diary.undo(note, "Sat 15:56");
    expect(diary.piece(1).notes).toEqual([]);
    expect({ ...diary.piece(1), lastSeq: 0 }).toEqual({ ...before, lastSeq: 0 });
  });

  test("an undo of an act still to come is nobody's undo", () => {
    const diary = new Diary(walker);
    diary.act("Mon 18:00", [{ tag: 1, body: { kind: "undone", target: 2 } }]);
    diary.tag(1, "Mon 18:01");
    expect(diary.piece(1).tag).toBe(1);
  });
});

describe("a better time said later", () => {
  test("holds for every piece of the act and in its record", () => {
    const diary = new Diary(walker);
    diary.came(1, "seal", "last Sun 20:00", "Mon 18:00");
    diary.came(2, "seal", "Mon 12:30", "Mon 18:00");
    const act = diary.hang([1, 2], "second seal", "Mon 19:10");
    diary.amend(act, "Mon 19:04", "Mon 19:11");
    for (const tag of [1, 2]) {
      expect(diary.piece(tag).work.get("second seal")?.hangs[0]?.hungAt).toBe(at("Mon 19:04"));
    }
    expect(diary.shop().acts.find((record) => record.act === act)?.at).toBe(at("Mon 19:04"));
  });

  test("of two the newer holds, and taken back the older holds again", () => {
    const diary = new Diary(walker);
    diary.tag(1, "Mon 18:00");
    const act = diary.take(1, "shape", "Mon 18:10");
    diary.amend(act, "Mon 18:05", "Mon 18:20");
    const second = diary.amend(act, "Mon 18:07", "Mon 18:21");
    expect(diary.piece(1).hand?.since).toBe(at("Mon 18:07"));
    diary.undo(second, "Mon 18:22");
    expect(diary.piece(1).hand?.since).toBe(at("Mon 18:05"));
  });

  test("a pot seen ready at 20:10 and amended to 20:05 was ready then, lit when it was lit", () => {
    const diary = new Diary(walker);
    const act = diary.ready("lead pot", "melt lead", "Mon 20:10", { begun: at("Mon 19:50") });
    diary.amend(act, "Mon 20:05", "Mon 20:11");
    expect(diary.shop().stations.get("lead pot")?.setUp).toMatchObject({
      begun: at("Mon 19:50"),
      ready: at("Mon 20:05"),
    });
  });

  test("a pot lit at 19:50 and amended to 19:45 is hot at 20:05 instead of 20:10", () => {
    const diary = new Diary(walker);
    const act = diary.ready("lead pot", "melt lead", "Mon 19:50", {
      begun: at("Mon 19:50"),
      ready: at("Mon 20:10"),
    });
    diary.amend(act, "Mon 19:45", "Mon 19:55");
    expect(diary.shop().stations.get("lead pot")?.setUp).toMatchObject({
      begun: at("Mon 19:45"),
      ready: at("Mon 20:05"),
    });
  });

  test("a better time of the tagging leaves since when the piece hung as it was said", () => {
    const diary = new Diary(walker);
    const act = diary.came(1, "seal", "last Sun 20:00", "Mon 18:10");
    diary.amend(act, "Mon 18:00", "Mon 18:11");
    expect(diary.piece(1)).toMatchObject({ taggedAt: at("Mon 18:00"), begunAt: at("last Sun 20:00") });
  });
});

describe("a clock that was an hour ahead for two acts", () => {
  const diary = new Diary(walker);
  diary.tag(1, "Mon 18:00");
  const since = diary.take(1, "shape", "Mon 19:05");
  diary.hang(1, "shape", "Mon 19:45");
  diary.act("Mon 18:50", [{ tag: null, body: { kind: "clock", since, minutes: 60 } }]);
  diary.take(1, "drill", "Mon 18:52");

  test("sets those two back, and neither what came before nor what came after", () => {
    expect(diary.piece(1).taggedAt).toBe(at("Mon 18:00"));
    expect(diary.piece(1).work.get("shape")?.hangs[0]).toMatchObject({
      takenAt: at("Mon 18:05"),
      hungAt: at("Mon 18:45"),
      minutes: 40,
    });
    expect(diary.piece(1).hand?.since).toBe(at("Mon 18:52"));
  });

  test("sets the moments of writing back too", () => {
    expect(liveEvents(diary.events).map(({ recorded }) => recorded)).toEqual(
      ["Mon 18:00", "Mon 18:05", "Mon 18:45", "Mon 18:50", "Mon 18:52"].map(at),
    );
  });
});

test("facts dated after a moment can be left out, as they were known then; settings are those of now", () => {
  const diary = new Diary(walker);
  diary.tag(1, "Mon 18:00");
  diary.take(1, "shape", "Mon 18:02");
  diary.hang(1, "shape", "Mon 18:40");
  diary.settle({ of: "zone", name: "Europe/Dublin" }, "Mon 18:45");
  const then = foldShop(diary.reading(), at("Mon 18:30"));
  expect(then.pieces.get(1)?.hand?.step).toBe("shape");
  expect(then.settings.zone).toBe("Europe/Dublin");
});
