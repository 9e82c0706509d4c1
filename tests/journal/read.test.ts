import { describe, expect, test } from "vitest";
import type { NewEvent } from "../../src/journal/event.ts";
import type { Journal, Wanted } from "../../src/journal/journal.ts";
import { foldShop } from "../../src/shop/fold.ts";
import { anAct, days, hours, hung, monday, onPiece, readied, shopWide, tagged, taken } from "./made-acts.ts";
import { bareFile, scratchJournal } from "./scratch.ts";

/** The pieces that a reading holds whole. (Of others it may hold the newest event of a station.) */
async function tagsOf(journal: Journal, wanted: Wanted): Promise<number[]> {
  const { events } = await journal.read(wanted);
  return events.flatMap(({ kind, tag }) => (kind === "tagged" && tag !== null ? [tag] : []));
}

/** A piece tagged and finished at that moment, in two acts. */
async function finish(journal: Journal, tag: number, at: number): Promise<void> {
  await journal.append(anAct([tagged(tag, at)]));
  await journal.append(anAct([hung(tag, "water test", at)]));
}

/** Notes written down a day apart, so that what was before is neither recent nor among the newest acts. */
async function letPass(journal: Journal, from: number, count = 30): Promise<void> {
  for (let day = 0; day < count; day++) {
    const at = from + days(day);
    await journal.append(anAct([shopWide({ kind: "noted", text: `day ${day}` }, at)]));
  }
}

describe("a reading of the present", () => {
  test("holds the pieces that are out, however old, and not those long finished", async () => {
    const { journal } = await scratchJournal();
    await journal.append(anAct([tagged(1)]));
    await finish(journal, 2, monday);
    await letPass(journal, monday);
    expect(await tagsOf(journal, { of: "out" })).toEqual([1]);
    expect(await tagsOf(journal, { of: "tags", tags: [2, 77] })).toEqual([1, 2]);
    // Acts 1 and 2 tagged, act 3 finished piece 2.
    expect(await tagsOf(journal, { of: "acts", acts: [3] })).toEqual([1, 2]);
    expect(await tagsOf(journal, { of: "all" })).toEqual([1, 2]);
  });

  test("holds what was finished in the last 7 days: it still hangs and still smells", async () => {
    const { journal } = await scratchJournal();
    await finish(journal, 1, monday);
    await finish(journal, 2, monday + days(3));
    // 30 acts in an hour push both out of the newest acts; the newest is written on the ninth day.
    for (let minute = 0; minute < 30; minute++) {
      const at = monday + days(9) + minute * 60_000;
      await journal.append(anAct([shopWide({ kind: "noted", text: "…" }, at)]));
    }
    expect(await tagsOf(journal, { of: "out" })).toEqual([2]);
  });

  test("goes back until 20 acts that stand have been met, whatever was undone since", async () => {
    const { journal } = await scratchJournal();
    await finish(journal, 1, monday);
    await letPass(journal, monday + days(1), 19);
    // Acts 2 and 3..21: the finishing and 19 notes are 20 that stand; the tagging is one too many, but the same piece.
    expect(await tagsOf(journal, { of: "out" })).toEqual([1]);
    for (let act = 21; act > 11; act--) {
      await journal.append(anAct([shopWide({ kind: "undone", target: act }, monday + days(20))]));
    }
    // 10 notes and 10 undoings of them count nothing: 9 notes stand, then the finishing, then the tagging.
    const { events } = await journal.read({ of: "out" });
    expect(events.map(({ seq }) => seq)).toContain(1);
  });

  test("holds settings that hold on, and single days and days away of the last 400 days", async () => {
    const { journal } = await scratchJournal();
    const settle = (setting: Parameters<typeof shopWide>[0] & { kind: "settled" }) =>
      journal.append(anAct([shopWide(setting, monday)]));
    await settle({ kind: "settled", setting: { of: "zone", name: "Europe/Dublin" } });
    await settle({ kind: "settled", setting: { of: "day", date: "2026-03-23", hours: [] } });
    await settle({ kind: "settled", setting: { of: "away", from: "2026-03-30", to: "2026-06-30" } });
    await settle({ kind: "settled", setting: { of: "back", from: "2026-04-12" } });
    await letPass(journal, monday + days(400), 30);
    // The newest is 429 days after Monday: 400 days before that is 20 April 2026.
    const { events } = await journal.read({ of: "out" });
    const settings = events.flatMap((event) => (event.kind === "settled" ? [event.setting.of] : []));
    expect(settings).toEqual(["zone", "away", "back"]);
    // A span needs the days of its own time.
    const span = await journal.read({ of: "span", from: monday, to: monday + days(7) });
    expect(span.events.filter(({ kind }) => kind === "settled")).toHaveLength(4);
  });

  test("holds what stands at a station, though it was loaded long ago", async () => {
    const { journal } = await scratchJournal();
    await journal.append(anAct([readied("spray corner", "load white", monday)]));
    await journal.append(anAct([readied("spray corner", "load ochre", monday)]));
    await journal.append(anAct([readied("spray corner", "load black", monday)]));
    const undo = { ...shopWide({ kind: "undone", target: 3 }, monday), station: "spray corner" };
    await journal.append(anAct([undo]));
    await letPass(journal, monday + hours(1));
    const { events } = await journal.read({ of: "out" });
    const loads = events.filter(({ station }) => station === "spray corner");
    // Black was undone, so ochre stands; white gave way long ago. The undoing is the newest at the station.
    expect(loads.map(({ kind, seq }) => [kind, seq])).toEqual([
      ["readied", 2],
      ["readied", 3],
      ["undone", 4],
    ]);
  });

  test("comes with the newest at each station of any kind, which acts expect", async () => {
    const { journal } = await scratchJournal();
    await finish(journal, 1, monday);
    await journal.append(anAct([taken(1, "shape", monday, "lathe")]));
    await letPass(journal, monday + hours(1));
    const { events } = await journal.read({ of: "out" });
    expect(events.filter(({ station }) => station === "lathe").map(({ seq }) => seq)).toEqual([3]);
  });
});

describe("a reading of a span", () => {
  test("holds the pieces with an event dated in it, its last moment not included", async () => {
    const { journal } = await scratchJournal();
    await finish(journal, 1, monday - 1);
    await finish(journal, 2, monday);
    await finish(journal, 3, monday + days(7));
    await letPass(journal, monday + days(60));
    expect(await tagsOf(journal, { of: "span", from: monday, to: monday + days(7) })).toEqual([2]);
  });

  test("comes with what stood before something of it was put away, so that the putting away fits", async () => {
    const { journal } = await scratchJournal();
    const putAway = (at: number): NewEvent => ({ kind: "put away", at, tag: null, station: "spray corner" });
    await journal.append(anAct([readied("spray corner", "load white", monday - days(90))]));
    await journal.append(anAct([putAway(monday - days(80))]));
    await journal.append(anAct([readied("spray corner", "load ochre", monday - days(60))]));
    await journal.append(anAct([putAway(monday)]));
    await journal.append(anAct([readied("spray corner", "load black", monday + days(20))]));
    await letPass(journal, monday + days(60));
    const reading = await journal.read({ of: "span", from: monday, to: monday + days(7) });
    // Ochre, put away in the span; the black stands. White is over.
    const seqs = reading.events.filter(({ station }) => station !== null).map(({ seq }) => seq);
    expect(seqs).toEqual([3, 4, 5]);
    expect(foldShop(reading).setAside).toEqual([]);
  });

  test("holds a piece that an amended time or a clock set right puts there", async () => {
    const { journal } = await scratchJournal();
    await finish(journal, 1, monday - days(1));
    const amend = { ...onPiece(1, { kind: "amended", target: 2, time: monday }, monday), station: "bench" };
    await journal.append(anAct([amend]));
    // Acts 4 and 5, stamped by a clock that ran 10 days ahead.
    await finish(journal, 2, monday + days(10));
    await journal.append(anAct([shopWide({ kind: "clock", since: 4, minutes: 10 * 1440 }, monday)]));
    await letPass(journal, monday + days(60));
    expect(await tagsOf(journal, { of: "span", from: monday, to: monday + 1 })).toEqual([1, 2]);
  });
});

describe("the newest moment written down", () => {
  test("is the latest, though something earlier was written after it", async () => {
    const { journal } = await scratchJournal();
    expect((await journal.read({ of: "out" })).newestRecorded).toBeNull();
    await journal.append(anAct([tagged(1)], monday + days(3)));
    await journal.append(anAct([tagged(2)], monday));
    expect((await journal.read({ of: "out" })).newestRecorded).toBe(monday + days(3));
  });

  test("counts what a wrong clock stamped as the clock set right would have", async () => {
    const { journal } = await scratchJournal();
    await journal.append(anAct([tagged(1)], monday));
    await journal.append(anAct([tagged(2)], monday + days(3) + hours(1)));
    const clock = shopWide({ kind: "clock", since: 2, minutes: 3 * 1440 }, monday + hours(2));
    await journal.append(anAct([clock], monday + hours(1)));
    // Piece 2 was tagged at 1 h after Monday 18:00, and so was the clock set right.
    expect((await journal.read({ of: "out" })).newestRecorded).toBe(monday + hours(1));
    const undo = shopWide({ kind: "undone", target: 3 }, monday + hours(2));
    await journal.append(anAct([undo], monday + hours(2)));
    expect((await journal.read({ of: "out" })).newestRecorded).toBe(monday + days(3) + hours(1));
  });
});

describe("a row that fits no event is set aside with why, and the rest is read:", () => {
  test.each([
    ["a kind of a later time", "polished", 1, "{}", 'this dryline knows no event "polished"'],
    ["a kind that is a word of JavaScript", "toString", 1, "{}", 'this dryline knows no event "toString"'],
    ["a later version", "noted", 2, '{"text":"a"}', 'this dryline knows no "noted" of version 2'],
    ["no version at all", "noted", 0, '{"text":"a"}', 'this dryline knows no "noted" of version 0'],
    ["half a body", "noted", 1, '{"text":"a', 'what it says ("noted") cannot be read'],
    ["a body that is a list", "noted", 1, "[]", 'what it says ("noted") is damaged'],
    ["a body of another form", "noted", 1, '{"text":7}', 'what it says ("noted") is damaged'],
  ])("%s", async (_, kind, v, body, why) => {
    const { journal, path } = await scratchJournal();
    await journal.append(anAct([tagged(1)]));
    bareFile(path)
      .prepare(
        `INSERT INTO event (seq, act, v, kind, at, recorded, "by", tag, together, body)
         VALUES (2, 2, ?, ?, 0, 0, 'maker', 1, 1, ?)`,
      )
      .run(v, kind, body);
    for (const of of ["out", "all"] as const) {
      const { events, setAside } = await journal.read({ of });
      expect(events.map(({ seq }) => seq)).toEqual([1]);
      expect(setAside).toEqual([{ seq: 2, tag: 1, station: null, why }]);
    }
    // And the piece can still be worked on.
    expect(await journal.append(anAct([taken(1, "shape", monday)]))).toMatchObject({ act: 3 });
  });
});
