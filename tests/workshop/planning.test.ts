import { beforeEach, describe, expect, test } from "vitest";
import { nowByRow } from "../../src/plan/now-by-row.ts";
import type { PlanNews } from "../../src/plan/plan-work.ts";
import { whatNow } from "../../src/plan/what-now.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { Planning } from "../../src/workshop/planning.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";
import { contextAt } from "../plan/ask-now.ts";
import { HandJournal, HandThread } from "./hand-thread.ts";

let diary: Diary;
let journal: HandJournal;
let thread: HandThread;
let changes: number;
let planning: Planning;

/** Each test but those of the first answer begins when that has been painted. */
beforeEach(async () => {
  diary = new Diary(walker);
  for (const tag of [1, 2]) diary.came(tag, "last clear", "last Sun 9:00", "Mon 18:00");
  diary.came(3, "second seal", "last Sun 20:00", "Mon 18:00");
  journal = new HandJournal(diary.shop().newest);
  open();
  await ask();
  await painted();
  changes = 0;
});

/** A dashboard is opened. */
function open(): void {
  thread = new HandThread();
  changes = 0;
  planning = new Planning(journal, () => changes++, thread.start);
}

const painted = () => new Promise((resolve) => setImmediate(resolve));

const ask = (when = "Mon 18:00") => planning.now(diary.shop(), contextAt(when));

/** The maker does something. */
function act(): void {
  diary.take(1, "hangers", "Mon 18:05");
  journal.newest = diary.shop().newest;
}

describe("the first answer", () => {
  beforeEach(open);

  test("is that of dispatch, given at once, with nothing yet of what leaving costs, and is followed by the whole", async () => {
    const answer = await ask();
    const plain = whatNow(diary.shop(), contextAt("Mon 18:00"));
    expect(answer.work.map(({ tags, step }) => [tags, step])).toEqual(
      plain.work.map(({ tags, step }) => [tags, step]),
    );
    expect(answer).toMatchObject({ basis: "dispatch", plan: { is: "searching", gap: null } });
    for (const { ifLeft } of answer.work) {
      expect(ifLeft).toMatchObject({ finishNow: null, finishLeft: null, others: null });
    }
    expect([thread.jobs.length, changes]).toEqual([0, 0]);
    await painted();
    expect(changes).toBe(1);
    const { work, held, plan } = await ask();
    expect({ work, held, plan }).toEqual({ work: answer.work, held: answer.held, plan: answer.plan });
    expect(thread.jobs).toHaveLength(1);
    expect(thread.jobs[0]).toMatchObject({ id: 1, seq: diary.shop().newest, warm: null, kept: false });
  });

  test("is followed by a plan, which is kept in the journal, and by what leaving each row costs", async () => {
    await ask();
    await ask();
    await thread.workOn();
    expect(changes).toBeGreaterThan(0);
    expect(journal.row).toMatchObject({ seq: diary.shop().newest, seed: 1, air: 0 });
    const answer = await ask();
    expect(answer).toMatchObject({ basis: "plan", plan: { is: "kept" } });
    expect(answer.work.length).toBeGreaterThan(0);
    for (const { ifLeft } of answer.work) expect(ifLeft.others).not.toBeNull();
  });
});

test("a command that reads the row gives the same answer as the dashboard", async () => {
  await ask();
  await thread.workOn();
  // The order of the plan may put rows together otherwise than dispatch did: then they are reckoned once more.
  await ask();
  await thread.workOn();
  const { plan, ...shown } = await ask();
  if (journal.row === null) throw new Error("no plan was kept");
  const { plan: standing, ...typed } = nowByRow(diary.shop(), contextAt("Mon 18:00"), journal.row);
  expect(typed).toEqual(shown);
  expect([plan.is, standing.is]).toEqual(["kept", "kept"]);
});

describe("where a plan was kept before, the first answer", () => {
  beforeEach(async () => {
    await ask();
    await thread.workOn();
    await ask();
    await thread.workOn();
    open();
  });

  test("has its rows in the order of that plan, with nothing yet of what leaving costs, and is followed by the whole", async () => {
    const first = await ask("Mon 18:10");
    expect(first).toMatchObject({ basis: "plan", plan: { is: "kept", gap: null } });
    for (const { ifLeft } of first.work) expect(ifLeft.finishNow).toBeNull();
    expect([thread.jobs.length, changes]).toEqual([0, 0]);
    await painted();
    expect(changes).toBe(1);
    const whole = await ask("Mon 18:10");
    expect(whole.work.map(({ tags, step }) => [tags, step])).toEqual(
      first.work.map(({ tags, step }) => [tags, step]),
    );
    for (const { ifLeft } of whole.work) expect(ifLeft.others).not.toBeNull();
    expect(thread.jobs).toHaveLength(1);
  });

  test("is that of dispatch when something was done since", async () => {
    act();
    for (const jobs of [0, 1]) {
      expect(await ask("Mon 18:05")).toMatchObject({ basis: "dispatch", plan: { is: "searching" } });
      expect(thread.jobs).toHaveLength(jobs);
    }
  });
});

describe("the thread is asked", () => {
  test("once about the same moment, however often the answer is read", async () => {
    await ask();
    await ask();
    expect(thread.jobs).toHaveLength(1);
  });

  test("again after a quarter of an hour, from the plan kept and for no more rounds than are left", async () => {
    await ask();
    await thread.workOn();
    await ask("Mon 18:00");
    await thread.workOn();
    const before = thread.jobs.length;
    await ask("Mon 18:14");
    expect(thread.jobs).toHaveLength(before);
    await ask("Mon 18:15");
    expect(thread.jobs).toHaveLength(before + 1);
    const job = thread.jobs.at(-1);
    expect(job).toMatchObject({ kept: true });
    expect(job?.warm?.visits.length).toBeGreaterThan(0);
    expect(job?.rounds).toBeLessThan(thread.jobs[0]?.rounds ?? 0);
  });

  test("after an act with the old plan as a seed; until it has found a new one the screen says it is planning", async () => {
    await ask();
    await thread.workOn();
    act();
    const answer = await ask("Mon 18:05");
    expect(answer).toMatchObject({ basis: "dispatch", plan: { is: "searching" } });
    expect(thread.jobs.at(-1)).toMatchObject({ seq: journal.newest, kept: false });
    expect(thread.jobs.at(-1)?.warm?.visits.length).toBeGreaterThan(0);
    await thread.workOn();
    expect(await ask("Mon 18:05")).toMatchObject({ basis: "plan", plan: { is: "kept" } });
  });
});

test("the next evening the plan kept is searched for anew, and what leaving costs till that evening ends", async () => {
  await ask();
  await thread.workOn();
  await ask();
  await thread.workOn();
  const first = journal.row;
  expect(first?.leaving.until).toBe(at("Mon 21:00"));
  expect((await ask("Tue 18:00")).basis).toBe("plan");
  expect(thread.jobs.at(-1)).toMatchObject({ kept: true, rounds: thread.jobs[0]?.rounds });
  await thread.workOn();
  expect(journal.row?.leaving.until).toBe(at("Tue 21:00"));
});

test("a new reading of the air is searched for anew, while the plan kept holds", async () => {
  await ask();
  await thread.workOn();
  await ask();
  await thread.workOn();
  journal.air = 5;
  expect((await ask("Mon 18:01")).basis).toBe("plan");
  expect(thread.jobs.at(-1)).toMatchObject({ kept: true, rounds: thread.jobs[0]?.rounds });
});

describe("news that comes too late", () => {
  test("of before the newest act is dropped", async () => {
    await ask();
    const late: PlanNews[] = [];
    await thread.workOn((news) => late.push(news));
    act();
    await ask("Mon 18:05");
    for (const news of late) thread.tell(news);
    await new Promise((resolve) => setImmediate(resolve));
    expect(journal.row).toBeNull();
    expect((await ask("Mon 18:05")).basis).toBe("dispatch");
  });

  test("does not take the place of a plan that another terminal kept meanwhile, which is asked about anew", async () => {
    await ask();
    const late: PlanNews[] = [];
    await thread.workOn((news) => late.push(news));
    for (const news of late.slice(0, 2)) thread.tell(news);
    await new Promise((resolve) => setImmediate(resolve));
    if (journal.row === null) throw new Error("no plan was kept");
    const theirs = { ...journal.row, rounds: 9999, leaving: { until: 0, work: [] } };
    journal.row = theirs;
    for (const news of late.slice(2)) thread.tell(news);
    await new Promise((resolve) => setImmediate(resolve));
    expect(journal.row).toBe(theirs);
    await ask();
    expect(thread.jobs).toHaveLength(2);
  });
});

test("a journal that cannot be written keeps nothing; the answer is by plan all the same", async () => {
  journal.readOnly = true;
  await ask();
  await thread.workOn();
  expect(journal.row).toBeNull();
  expect(await ask()).toMatchObject({ basis: "plan", plan: { is: "kept" } });
  // It is asked about once more at most, for rows the plan puts together otherwise, and comes to rest.
  for (let again = 0; again < 3; again++) {
    await thread.workOn();
    await ask();
  }
  expect(thread.jobs.length).toBeLessThanOrEqual(2);
  journal.readOnly = false;
  await ask("Mon 18:20");
  await thread.workOn();
  expect(journal.row).toMatchObject({ seq: diary.shop().newest });
});

describe("when the thread dies", () => {
  test("dispatch stands, with what leaving costs by its lights, and the screen says so", async () => {
    await ask();
    thread.die();
    expect(changes).toBe(1);
    const answer = await ask();
    expect(answer).toEqual({
      ...whatNow(diary.shop(), contextAt("Mon 18:00")),
      plan: { is: "stopped", gap: null },
    });
    expect(thread.jobs).toHaveLength(1);
  });

  test("a plan kept before holds until the next act", async () => {
    await ask();
    await thread.workOn();
    thread.die();
    expect(await ask()).toMatchObject({ basis: "plan", plan: { is: "stopped" } });
    act();
    expect(await ask("Mon 18:05")).toMatchObject({ basis: "dispatch", plan: { is: "stopped" } });
  });
});

test("stopping ends the thread", () => {
  planning.stop();
  expect(thread.ended).toBe(true);
});

test("answers follow the clock within the minute: a plan kept at 18:00 is played on from 18:00:40", async () => {
  await ask();
  await thread.workOn();
  const later = await planning.now(diary.shop(), {
    ...contextAt("Mon 18:00"),
    now: at("Mon 18:00") + MINUTE / 2,
  });
  expect(later).toMatchObject({ at: at("Mon 18:00") + MINUTE / 2, basis: "plan" });
});
