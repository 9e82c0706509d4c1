import { describe, expect, test } from "vitest";
import type { NewEvent } from "../../src/journal/event.ts";
import { anAct, hours, hung, monday, onPiece, readied, shopWide, tagged, taken } from "./made-acts.ts";
import { bareFile, openForTest, scratchJournal } from "./scratch.ts";

describe("an act", () => {
  test("is named by the seq of its first event and kept whole", async () => {
    const { journal } = await scratchJournal();
    expect(await journal.append(anAct([tagged(1), tagged(2)]))).toEqual({ kept: true, act: 1, newest: 2 });
    expect(await journal.append(anAct([taken(1, "shape", monday)]))).toEqual({
      kept: true,
      act: 3,
      newest: 3,
    });
    const { events, newest } = await journal.read({ of: "all" });
    expect(events.map(({ seq, act, kind, tag, v }) => [seq, act, kind, tag, v])).toEqual([
      [1, 1, "tagged", 1, 1],
      [2, 1, "tagged", 2, 1],
      [3, 3, "taken", 1, 1],
    ]);
    expect(newest).toBe(3);
  });

  test("comes back as it was handed in", async () => {
    const { journal } = await scratchJournal();
    const given = [tagged(1), hung(1, "seal", monday + hours(1)), readied("lead pot", "melt lead", monday)];
    await journal.append(anAct(given, monday + hours(2)));
    const { events, definitions } = await journal.read({ of: "out" });
    const envelope = { act: 1, v: 1, recorded: monday + hours(2), by: "maker", together: 1 };
    expect(events).toEqual(given.map((event, index) => ({ ...event, ...envelope, seq: index + 1 })));
    expect(definitions["walker-1"]?.name).toBe("walker");
  });

  test("says of each event how many pieces shared the work", async () => {
    const { journal } = await scratchJournal();
    await journal.append(anAct([tagged(1), tagged(2), tagged(3)]));
    await journal.append(
      anAct([hung(1, "seal", monday), hung(2, "seal", monday), readied("bench", "mix resin", monday)]),
    );
    const { events } = await journal.read({ of: "all" });
    expect(events.map(({ together }) => together)).toEqual([3, 3, 3, 2, 2, 1]);
  });
});

describe("what an act expects", () => {
  test("of a tag: the newest seq there", async () => {
    const { journal } = await scratchJournal();
    await journal.append(anAct([tagged(1), tagged(2)]));
    const takeFirst = anAct([taken(1, "shape", monday)], monday, { tags: { 1: 1 } });
    expect(await journal.append(takeFirst)).toMatchObject({ kept: true });
    // The same act again: piece 1 has moved on to seq 3, piece 2 has not.
    expect(await journal.append(takeFirst)).toEqual({ kept: false });
    const takeSecond = anAct([taken(2, "shape", monday)], monday, { tags: { 2: 2 } });
    expect(await journal.append(takeSecond)).toMatchObject({ kept: true });
  });

  test("of a station: the newest seq there, 0 for none yet", async () => {
    const { journal } = await scratchJournal();
    const light = anAct([readied("lead pot", "melt lead", monday)], monday, { stations: { "lead pot": 0 } });
    expect(await journal.append(light)).toMatchObject({ kept: true });
    expect(await journal.append(light)).toEqual({ kept: false });
  });

  test("of the whole: the newest seq, and the next free tag", async () => {
    const { journal } = await scratchJournal();
    await journal.append(anAct([tagged(1)]));
    const note = [shopWide({ kind: "noted", text: "cold tonight" }, monday)];
    expect(await journal.append(anAct(note, monday, { newest: 0 }))).toEqual({ kept: false });
    expect(await journal.append(anAct(note, monday, { newest: 1 }))).toMatchObject({ kept: true });
    expect(await journal.append(anAct([tagged(2)], monday, { nextTag: 1 }))).toEqual({ kept: false });
    expect(await journal.append(anAct([tagged(2)], monday, { nextTag: 2 }))).toMatchObject({ kept: true });
  });

  test("unmet, leaves nothing behind", async () => {
    const { journal } = await scratchJournal();
    await journal.append(anAct([tagged(1)]));
    const before = await journal.read({ of: "all" });
    const version = journal.version();
    await journal.append(anAct([tagged(2), taken(1, "shape", monday)], monday, { tags: { 1: 7 } }));
    expect(await journal.read({ of: "all" })).toEqual(before);
    expect(journal.version()).toBe(version);
  });
});

test("a tag is never given again, not even after its tagging was undone", async () => {
  const { journal } = await scratchJournal();
  expect((await journal.read({ of: "out" })).nextTag).toBe(1);
  await journal.append(anAct([tagged(1)]));
  await journal.append(anAct([onPiece(1, { kind: "undone", target: 1 }, monday)]));
  const { nextTag } = await journal.read({ of: "out" });
  expect(nextTag).toBe(2);
  expect(await journal.pieces(0, monday + 1)).toEqual([]);
});

describe("our own mistakes are thrown, and nothing is written:", () => {
  const undo: NewEvent = onPiece(1, { kind: "undone", target: 1 }, monday);
  const wrong: [string, NewEvent[], RegExp][] = [
    ["no events", [], /event list/],
    ["a half minute", [{ ...tagged(2), at: 0.5 }], /event 0\.at/],
    ["a time after the year 9999", [{ ...tagged(2), at: 1e15 }], /event 0\.at/],
    ["a name of 201 letters", [{ ...taken(1, "s".repeat(201), monday) }], /event 0\.step/],
    ["a note of 4,001 letters", [onPiece(1, { kind: "noted", text: "n".repeat(4001) }, monday)], /0\.text/],
    [
      "a date that is none",
      [shopWide({ kind: "settled", setting: { of: "back", from: "2026-02-30" } }, monday)],
      /0\.setting\.from/,
    ],
    ["a field too many", [{ ...tagged(2), colour: "ochre" } as NewEvent], /event 0/],
    ["a piece never tagged", [taken(7, "shape", monday)], /piece 7/],
    ["a tag given twice", [tagged(1)], /tag 1 is given a second time/],
    ["a process not handed in", [tagged(2, monday, "unknown")], /process/],
    ["an act to come", [{ ...undo, target: 99 } as NewEvent], /act 99 is not there/],
    ["an undo that leaves out a piece of its act", [undo], /act 1 is undone without its tag 2/],
  ];

  test.each(wrong)("%s", async (_, events, message) => {
    const { journal } = await scratchJournal();
    await journal.append(anAct([tagged(1), tagged(2)]));
    await expect(journal.append(anAct(events))).rejects.toThrow(message);
    expect((await journal.read({ of: "all" })).newest).toBe(2);
  });

  test("an undo that leaves out a station of its act", async () => {
    const { journal } = await scratchJournal();
    await journal.append(anAct([tagged(1)]));
    await journal.append(anAct([taken(1, "shape", monday, "bench")]));
    const undo = onPiece(1, { kind: "undone", target: 2 }, monday);
    await expect(journal.append(anAct([undo]))).rejects.toThrow("act 2 is undone without its station bench");
    expect(await journal.append(anAct([{ ...undo, station: "bench" }]))).toMatchObject({ kept: true });
  });
});

test("an event is never changed or deleted, not even past our code", async () => {
  const { journal, path } = await scratchJournal();
  await journal.append(anAct([tagged(1)]));
  const file = bareFile(path);
  expect(() => file.exec("UPDATE event SET at = 0")).toThrow("an event is never changed");
  expect(() => file.exec("DELETE FROM event")).toThrow("an event is never deleted");
});

test("news changes the version, whoever brought it; a look does not", async () => {
  const { journal, path } = await scratchJournal();
  const other = await openForTest(path);
  const seen = [journal.version()];
  await journal.append(anAct([tagged(1)]));
  seen.push(journal.version());
  await other.append(anAct([tagged(2)]));
  seen.push(journal.version());
  await journal.read({ of: "out" });
  expect(journal.version()).toBe(seen[2]);
  expect(new Set(seen).size).toBe(3);
});
