import { afterEach, beforeEach, expect, test } from "vitest";
import type { PlanAnswer } from "../../src/plan/plan-answer.ts";
import { planDays, planDaysIf } from "../../src/workshop/plan-days.ts";
import type { Workshop } from "../../src/workshop/workshop.ts";
import { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";

let bench: BenchInAFolder;
let workshop: Workshop;
const asking = { at: null, rounds: 30 };

beforeEach(async () => {
  bench = new BenchInAFolder(at("Mon 17:00"));
  await bench.type("settings zone Europe/Dublin");
  await bench.type('hours "weekdays 18-21, Sat 9-16"');
  await bench.type("tag walker --count 2");
  workshop = await bench.workshop();
});

afterEach(() => {
  workshop.close();
  bench.remove();
});

test("a plan searched for is kept, and shown as it is when it is asked for again", async () => {
  expect(await workshop.readPlan()).toBeNull();
  const first = await planDays(workshop, 7, asking);
  const row = await workshop.readPlan();
  expect(row?.seq).toBe((await workshop.shop()).newest);
  expect(row?.rounds).toBeGreaterThan(0);
  // With no round allowed only the plan kept can give the same again.
  expect(await planDays(workshop, 7, { at: null, rounds: 0 })).toEqual(first);
  expect(await workshop.readPlan()).toEqual(row);
});

test("after an act it seeds a new one, which takes its place", async () => {
  await planDays(workshop, 7, asking);
  const before = await workshop.readPlan();
  await bench.type("tag walker");
  const { pieces } = await planDays(workshop, 7, asking);
  expect(pieces.map(({ piece }) => piece.tag)).toEqual([1, 2, 3]);
  expect((await workshop.readPlan())?.seq).toBeGreaterThan(before?.seq ?? Number.POSITIVE_INFINITY);
});

test("of a what-if only the plan without it is kept", async () => {
  const shut = { days: [{ date: "2026-03-23", hours: [] }], added: [] };
  const answer = await planDaysIf(workshop, 7, shut, asking);
  if ("fitsNoSession" in answer) throw new Error("nothing was added");
  const monday = (plan: PlanAnswer) => plan.sessions[0]?.opens;
  expect(monday(answer)).toBe(at("Tue 18:00"));
  expect(monday(await planDays(workshop, 7, { at: null, rounds: 0 }))).toBe(at("Mon 18:00"));
  expect(await workshop.readPlan()).not.toBeNull();
});

test("nothing is kept of a plan of another moment, or where nothing was searched", async () => {
  await planDays(workshop, 7, { at: at("Tue 17:00"), rounds: 30 });
  await planDays(workshop, 20, { at: at("Tue 17:00"), rounds: 30 });
  await planDays(workshop, 7, { at: null, rounds: 0 });
  expect(await workshop.readPlan()).toBeNull();
});

test("the plan that a what-if with a date is told against is the one told from then on", async () => {
  const { newPiece } = await workshop.planContext(await workshop.shop());
  if (newPiece === null) throw new Error("a walker is what a new piece would be");
  const promised = { count: 1, definition: newPiece.definition, due: "2026-05-01" };
  const answer = await planDaysIf(workshop, 7, { days: [], added: [promised] }, asking);
  if ("fitsNoSession" in answer) throw new Error("a walker fits an evening");
  const row = await workshop.readPlan();
  expect(row?.rounds).toBeGreaterThan(0);
  const { pieces } = await planDays(workshop, 7, { at: null, rounds: 0 });
  const told = new Map(pieces.map(({ piece, lastHandsOn }) => [piece.tag, lastHandsOn]));
  for (const { piece, without } of answer.changes?.finishes ?? []) expect(without).toBe(told.get(piece.tag));
  expect(await workshop.readPlan()).toEqual(row);
});

test.each([14, 30])("a plan of %i days goes on with the plan of a week, which is kept", async (days) => {
  expect((await bench.type("settings aim 5")).err).toBe("");
  await busyEvening();
  const longer = await planDays(workshop, days, asking);
  const row = await workshop.readPlan();
  expect(row?.seq).toBe((await workshop.shop()).newest);
  const week = await planDays(workshop, 7, { at: null, rounds: 0 });
  expect(week.sessions.length).toBeGreaterThan(4);
  expect(longer.sessions.slice(0, week.sessions.length)).toEqual(week.sessions);
  expect(longer.sessions.length).toBeGreaterThan(week.sessions.length);
  expect(await workshop.readPlan()).toEqual(row);
});

/** A busy evening: pieces of three kinds at different steps, so that an order can be played in several ways. */
async function busyEvening(): Promise<void> {
  for (const line of [
    'tag "carved walker" --count 3',
    'tag "carved walker" --hung "first epoxy" --since "yesterday 20:00"',
    'tag "turned popper" --hung seal --since 12:00 --scheme "green 6/10, yellow 5/10"',
    'tag "cast foam minnow" --count 2 --hung "take out and trim" --since 5:00 --scheme "silver 6/8"',
  ])
    expect((await bench.type(line)).err).toBe("");
}

test.each([7, 14])(
  "now tells the moments of the plan of %i days just told: when each row begins, and when its piece is finished",
  async (days) => {
    await busyEvening();
    let compared = 0;
    for (const moment of ["Mon 18:05", "Mon 18:40", "Tue 18:22"]) {
      bench.now = at(moment);
      await bench.type(`note "${moment}"`);
      const { sessions, pieces } = await planDays(workshop, days, asking);
      const rows = sessions.flatMap((session) => session.rows);
      const { work, basis } = await workshop.whatNow();
      expect(basis).toBe("plan");
      for (const { tags, step, why, ifLeft } of work) {
        if (why.because !== "planned") continue;
        const { at: begins } = why;
        const planned = rows.filter(
          (row) =>
            row.step === step &&
            row.pieces.some(({ tag }) => tag !== null && tags.includes(tag)) &&
            row.from <= begins &&
            begins < row.until,
        );
        expect(planned, `${moment} ${tags} ${step}`).toHaveLength(1);
        const finishes = pieces.flatMap(({ piece, lastHandsOn }) =>
          piece.tag !== null && tags.includes(piece.tag) && lastHandsOn !== null ? [lastHandsOn] : [],
        );
        if (ifLeft.finishNow !== null) expect(ifLeft.finishNow).toBe(Math.min(...finishes));
        compared += 1;
      }
    }
    expect(compared).toBeGreaterThan(5);
  },
);

test("a what-if is told against the plan just told, and what leaving costs comes of that plan", async () => {
  await busyEvening();
  bench.now = at("Mon 18:05");
  await planDays(workshop, 7, asking);
  const shut = { days: [{ date: "2026-03-28", hours: [] }], added: [] };
  const answer = await planDaysIf(workshop, 7, shut, { at: null, rounds: 60 });
  if ("fitsNoSession" in answer) throw new Error("nothing was added");
  // Where the search beside it found a plan worth keeping, that is the one told from now on.
  const { pieces } = await planDays(workshop, 7, { at: null, rounds: 0 });
  const told = new Map(pieces.map(({ piece, lastHandsOn }) => [piece.tag, lastHandsOn]));
  expect(answer.changes?.finishes.length).toBeGreaterThan(0);
  for (const { piece, without } of answer.changes?.finishes ?? []) expect(without).toBe(told.get(piece.tag));
  expect((await workshop.readPlan())?.leaving.work.length).toBeGreaterThan(0);
});

test.each([7, 14])(
  "in a plan of %i days a day shut after all is done changes nothing, though a search finds better",
  async (days) => {
    await busyEvening();
    bench.now = at("Mon 18:05");
    const { pieces } = await planDays(workshop, days, { at: null, rounds: 1 });
    const shut = { days: [{ date: "2026-04-04", hours: [] }], added: [] };
    for (const { lastHandsOn } of pieces)
      expect(lastHandsOn).toBeLessThan(at("Mon 18:05") + 11.5 * 86_400_000);
    const answer = await planDaysIf(workshop, days, shut, { at: null, rounds: 60 });
    if ("fitsNoSession" in answer) throw new Error("nothing was added");
    expect(answer.changes?.finishes).toEqual([]);
  },
);

test("a journal that cannot be written now goes without, and the plan is told all the same", async () => {
  const { journal } = workshop;
  const stuck = Object.assign(Object.create(workshop), {
    journal: Object.assign(Object.create(journal), {
      keepPlan: () => Promise.reject(new Error("the disk is full")),
      newestAir: () => journal.newestAir(),
    }),
    shop: workshop.shop.bind(workshop),
    planContext: workshop.planContext.bind(workshop),
    readPlan: workshop.readPlan.bind(workshop),
  }) as Workshop;
  expect((await planDays(stuck, 7, asking)).sessions.length).toBeGreaterThan(0);
  expect(await workshop.readPlan()).toBeNull();
});
