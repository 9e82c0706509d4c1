import { describe, expect, test } from "vitest";
import type { Summarise } from "../../src/journal/journal.ts";
import { anAct, days, hours, hung, monday, onPiece, shopWide, tagged, taken } from "./made-acts.ts";
import { bareFile, bareRows, openForTest, plainly, scratchJournal } from "./scratch.ts";
import { summarisePlainly } from "./summarise-plainly.ts";

describe("the rows of a piece", () => {
  test("are kept in the act's own transaction", async () => {
    const { journal } = await scratchJournal();
    await journal.append(anAct([tagged(1), tagged(2)]));
    await journal.append(anAct([taken(1, "seal", monday), taken(2, "seal", monday)]));
    const done = monday + 12 * 60_000;
    await journal.append(anAct([hung(1, "seal", done), hung(2, "seal", done)]));
    // 12 minutes shared by two pieces: 6 each. Of equal times the higher tag is the newer.
    const seal = { process: "walker", step: "seal", pass: 1, minutes: 6, at: done };
    expect(await journal.stepTimes("walker", "seal", 5)).toEqual([
      { ...seal, tag: 2 },
      { ...seal, tag: 1 },
    ]);
    expect(await journal.stepTimes("walker", "seal", 1)).toEqual([{ ...seal, tag: 2 }]);
    expect(await journal.stepTimes("walker", "shape", 5)).toEqual([]);
  });

  test("are found by when a piece was tagged, finished or scrapped, the end of the span not included", async () => {
    const { journal } = await scratchJournal();
    const week = [monday, monday + days(7)] as const;
    await journal.append(anAct([tagged(1, monday - days(9)), tagged(2, week[0]), tagged(3, week[1])]));
    await journal.append(anAct([tagged(4, monday - days(9)), tagged(5, monday - days(9))]));
    await journal.append(anAct([hung(4, "water test", week[1] - 1)]));
    await journal.append(anAct([onPiece(5, { kind: "scrapped", why: "split" }, monday + days(1))]));
    const rows = await journal.pieces(...week);
    expect(rows.map(({ tag, out, finishedAt, scrappedAt }) => [tag, out, finishedAt, scrappedAt])).toEqual([
      [2, true, null, null],
      [4, false, week[1] - 1, null],
      [5, false, null, monday + days(1)],
    ]);
    expect(rows[0]).toMatchObject({ name: "lure 2", process: "walker-1", processName: "walker" });
  });

  test("follow an undo, a clock set right, and its undoing", async () => {
    const { journal } = await scratchJournal();
    await journal.append(anAct([tagged(1)]));
    await journal.append(anAct([hung(1, "water test", monday + hours(5))]));
    const finished = async () => (await journal.pieces(0, monday + days(9)))[0]?.finishedAt;
    expect(await finished()).toBe(monday + hours(5));
    // Act 3: what was stamped from act 2 on was an hour late.
    await journal.append(anAct([shopWide({ kind: "clock", since: 2, minutes: 60 }, monday + hours(4))]));
    expect(await finished()).toBe(monday + hours(4));
    await journal.append(anAct([shopWide({ kind: "undone", target: 3 }, monday + hours(4))]));
    expect(await finished()).toBe(monday + hours(5));
    const undo = { ...onPiece(1, { kind: "undone", target: 2 }, monday + hours(6)), station: "bench" };
    await journal.append(anAct([undo]));
    expect(await finished()).toBeNull();
  });
});

describe("another reckoning", () => {
  const shouting: Summarise = (...given) => {
    const summary = summarisePlainly(...given);
    return summary && { ...summary, row: { ...summary.row, name: summary.row.name.toUpperCase() } };
  };
  const newer = { summarise: shouting, summaryVersion: 2 };

  test("makes all rows anew when a newer program first opens the journal, and only then", async () => {
    const { journal, path } = await scratchJournal();
    await journal.append(anAct([tagged(1), tagged(2)]));
    let made = 0;
    const counting = {
      ...newer,
      summarise: (...given: Parameters<Summarise>) => {
        made++;
        return shouting(...given);
      },
    };
    const names = async () => (await journal.pieces(0, monday + 1)).map(({ name }) => name);
    expect(await names()).toEqual(["lure 1", "lure 2"]);
    await openForTest(path, counting);
    expect(await names()).toEqual(["LURE 1", "LURE 2"]);
    await openForTest(path, counting);
    expect(made).toBe(2);
  });

  test("does not mix with that of an older program that is still running", async () => {
    const { journal: older, path } = await scratchJournal();
    await older.append(anAct([tagged(1)]));
    await openForTest(path, newer);
    await older.append(anAct([tagged(2)]));
    // The older one wrote its own row; the next newer program sees that and makes all anew.
    const again = await openForTest(path, newer);
    expect((await again.pieces(0, monday + 1)).map(({ name }) => name)).toEqual(["LURE 1", "LURE 2"]);
  });
});

test("rows lost or spoilt are made anew from the events", async () => {
  const { journal, path } = await scratchJournal(plainly);
  await journal.append(anAct([tagged(1), tagged(2)]));
  await journal.append(anAct([taken(1, "seal", monday)]));
  await journal.append(anAct([hung(1, "seal", monday + hours(1))]));
  const before = bareRows(path, "piece", "step_time");
  expect(before).toHaveLength(3);
  bareFile(path).exec("DELETE FROM step_time; UPDATE piece SET out = 0, name = 'spoilt'");
  expect(bareRows(path, "piece", "step_time")).not.toEqual(before);
  await journal.rebuild();
  expect(bareRows(path, "piece", "step_time")).toEqual(before);
});
