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

test("nothing is kept of a what-if with a date, of more days, or where nothing was searched", async () => {
  const { newPiece } = await workshop.planContext(await workshop.shop());
  if (newPiece === null) throw new Error("a walker is what a new piece would be");
  const promised = { count: 1, definition: newPiece.definition, due: "2026-05-01" };
  await planDaysIf(workshop, 7, { days: [], added: [promised] }, asking);
  await planDays(workshop, 7, { at: at("Tue 17:00"), rounds: 30 });
  await planDays(workshop, 20, asking);
  await planDays(workshop, 7, { at: null, rounds: 0 });
  expect(await workshop.readPlan()).toBeNull();
});

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
