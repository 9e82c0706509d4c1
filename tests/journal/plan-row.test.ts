import { expect, test } from "vitest";
import type { PlanRow } from "../../src/journal/journal.ts";
import { anAct, hours, monday, tagged, taken } from "./made-acts.ts";
import { bareFile, openForTest, scratchJournal } from "./scratch.ts";

const row: PlanRow = {
  seq: 1,
  settings: "evenings",
  air: 0,
  seed: 7,
  rounds: 400,
  starts: [
    { tag: 1, step: "seal", pass: 1, part: "step", start: monday + hours(1) },
    { tag: -1, step: "shape", pass: 1, part: "step", start: monday + hours(2) },
  ],
  leaving: {
    until: monday + hours(3),
    work: [
      {
        key: "seal step 1",
        amends: 5,
        finish: [
          [1, monday + hours(30)],
          [-1, null],
        ],
      },
    ],
  },
};

test("no plan is kept in a new journal; one that is kept comes back as it was, to another terminal too", async () => {
  const { journal, path } = await scratchJournal();
  expect(await journal.plan()).toBeNull();
  await journal.append(anAct([tagged(1)]));
  expect(await journal.keepPlan(row)).toBe(true);
  expect(await journal.plan()).toEqual(row);
  expect(await (await openForTest(path)).plan()).toEqual(row);
});

test("the next plan takes the place of the last: there is one row", async () => {
  const { journal, path } = await scratchJournal();
  await journal.append(anAct([tagged(1)]));
  await journal.keepPlan(row);
  await journal.keepPlan({ ...row, rounds: 800, starts: row.starts.slice(1) });
  expect(await journal.plan()).toEqual({ ...row, rounds: 800, starts: row.starts.slice(1) });
  expect(bareFile(path).prepare("SELECT count(*) FROM plan").pluck().get()).toBe(1);
});

test("a plan of before the newest act is not kept, and one kept before it stays as it was", async () => {
  const { journal } = await scratchJournal();
  await journal.append(anAct([tagged(1)]));
  await journal.keepPlan(row);
  await journal.append(anAct([taken(1, "seal", monday + hours(1))]));
  expect(await journal.keepPlan({ ...row, rounds: 800 })).toBe(false);
  expect(await journal.plan()).toEqual(row);
});

test("keeping a plan is news to other terminals, as an act is, and adds no event", async () => {
  const { journal, path } = await scratchJournal();
  const other = await openForTest(path);
  await journal.append(anAct([tagged(1)]));
  const before = other.version();
  const events = await other.read({ of: "all" });
  await journal.keepPlan(row);
  expect(other.version()).not.toBe(before);
  expect(await other.read({ of: "all" })).toEqual(events);
});

test.each(["no json", "{}", "[1]", '[[1, "seal", 1, "sideways", 5]]', '[["1", "seal", 1, "step", 5]]'])(
  "starts spoilt to %s count as no plan",
  async (starts) => {
    const { journal, path } = await scratchJournal();
    await journal.append(anAct([tagged(1)]));
    await journal.keepPlan(row);
    bareFile(path).prepare("UPDATE plan SET starts = ?").run(starts);
    expect(await journal.plan()).toBeNull();
    expect(await journal.keepPlan(row)).toBe(true);
    expect(await journal.plan()).toEqual(row);
  },
);

test.each(["no json", "[]", '{"until":5}', '{"until":5,"work":[{"key":1,"amends":0,"finish":[]}]}'])(
  "what leaving brings spoilt to %s counts as no plan",
  async (leaving) => {
    const { journal, path } = await scratchJournal();
    await journal.append(anAct([tagged(1)]));
    await journal.keepPlan(row);
    bareFile(path).prepare("UPDATE plan SET leaving = ?").run(leaving);
    expect(await journal.plan()).toBeNull();
  },
);
