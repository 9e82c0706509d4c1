import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { at } from "../../../src/plan/at.ts";
import { chanceFrom } from "../../../src/plan/chance.ts";
import { checkPlan } from "../../../src/plan/check-plan.ts";
import type { Plan } from "../../../src/plan/plan.ts";
import { underLuck } from "../../../src/plan/search/luck.ts";
import { beginSearch } from "../../../src/plan/search/search.ts";
import { bestUnderLuck, ChoiceUnderLuck, clearlySaved } from "../../../src/plan/search/under-luck.ts";
import { randomProblem } from "../random-problem.ts";
import { smallProblem, waitFor } from "../small-problem.ts";

describe("a coat that must be laid by 160 to be worked the next day", () => {
  // 130 min on the first piece; on the second a coat of 20 min, and 1450 min later 10 min of work, for which the next
  // day is open from 1600 to 1620. The first piece first: finished at 130 and, the coat ended at 150, at 1610. The coat
  // first: at 150 and 1610, 20 min dearer as thought, but with 130 min more to spare: missed, it is 3010.
  const problem = smallProblem(
    [{ minutes: 130 }, { piece: 1, minutes: 20 }, { piece: 1, waits: [waitFor(1, [[1450, null]])] }],
    [{}, {}],
    {
      sessions: [
        { opens: 0, closes: 400 },
        { opens: 1600, closes: 1620 },
        { opens: 3000, closes: 3400 },
      ],
    },
  );
  const search = beginSearch(problem, { seed: 1, warm: null });
  search.go(200);
  const first = ({ visits }: Plan) => visits[0]?.task;

  test("comes second in the best plan if all goes as thought", () => {
    expect(first(search.found.plan)).toBe(0);
    expect(search.found.score.total).toBe(130 + 1610);
  });

  // In one turn of four the coat takes between 1.01 and 1.10 of its sheet's time, and only the first order is too late.
  // Of eight turns drawn none is such a one with one seed in ten.
  test("comes first under luck, with nearly every seed", () => {
    const seeds = Array.from({ length: 20 }, (_, seed) => seed);
    const coatFirst = seeds.filter((seed) => first(bestUnderLuck(problem, search.found.plan, seed)) === 1);
    expect(coatFirst.length).toBeGreaterThanOrEqual(15);
  });

  test("can be chosen bit by bit, and is then what it is at once", () => {
    const { plan } = search.found;
    const choice = new ChoiceUnderLuck(problem, 3);
    let parts = 0;
    while (choice.prepare(plan)) parts++;
    expect(parts).toBeGreaterThan(1);
    expect(choice.best(plan)).toEqual(bestUnderLuck(problem, plan, 3));
  });

  // A third piece, which nothing can help, costs 10 x 10 x 3010 and more: a thousand times what the coat first saves.
  test("comes first all the same beside a piece that costs very much either way", () => {
    const { tasks, pieces } = problem;
    const more = smallProblem([...tasks, { piece: 2, release: 3000 }], [...pieces, { due: 0, weight: 10 }], {
      sessions: problem.sessions,
    });
    const found = beginSearch(more, { seed: 1, warm: null });
    found.go(200);
    const seeds = Array.from({ length: 20 }, (_, seed) => seed);
    const coatFirst = seeds.filter((seed) => first(bestUnderLuck(more, found.found.plan, seed)) === 1);
    expect(coatFirst.length).toBeGreaterThanOrEqual(15);
  });
});

test("a simple order is followed where the plan is no better, whatever the luck", () => {
  // Two steps of one piece, in either order.
  const problem = smallProblem([{ minutes: 30 }, { minutes: 30 }], [{}]);
  const { plan } = beginSearch(problem, { seed: 1, warm: null }).found;
  const other: Plan = { ...plan, visits: plan.visits.map((visit) => ({ ...visit, task: 1 - visit.task })) };
  for (let seed = 0; seed < 20; seed++) {
    expect(bestUnderLuck(problem, other, seed).visits).toEqual(plan.visits);
  }
});

test("the plan stands where one simple order begins as it does, and another is as good", () => {
  // Two pieces without a due date, and flow costs nothing: all orders cost the same.
  const prices = { late: 10, flow: 0, amends: 5, setUp: 1 };
  const problem = smallProblem([{ minutes: 30 }, { piece: 1, minutes: 30 }], [{}, {}], { prices });
  const { plan } = beginSearch(problem, { seed: 1, warm: null }).found;
  for (let seed = 0; seed < 20; seed++) expect(bestUnderLuck(problem, plan, seed)).toBe(plan);
});

describe("what is clearly saved", () => {
  // Hours of sleep gained by ten patients under two drugs: Student, The probable error of a mean, Biometrika 6, 1908 (from
  // memory). Paired, the mean difference is 1.58 and t = 4.0621, so its standard error 1.58 / 4.0621.
  test("is the mean less so many of its standard errors, over pairs", () => {
    const second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
    const first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2];
    expect(clearlySaved(second, first, 0)).toBeCloseTo(1.58, 10);
    expect(clearlySaved(second, first, 0.5)).toBeCloseTo(1.58 - (0.5 * 1.58) / 4.0621, 4);
  });

  // 10 on average, but 800 gained in four turns and about as much lost in the others.
  test("is less than nothing where what is gained may be luck", () => {
    expect(
      clearlySaved([900, 100, 900, 100, 900, 100, 900, 180], [100, 900, 100, 900, 100, 900, 100, 900], 0.5),
    ).toBeLessThan(0);
  });

  test("is nothing where both cost without end, and without end where only one of them does", () => {
    const never = Number.POSITIVE_INFINITY;
    expect(clearlySaved([never, 10], [never, 10], 0.5)).toBe(0);
    expect(clearlySaved([never, 10], [20, 10], 0.5)).toBe(never);
    expect(clearlySaved([20, 10], [never, 10], 0.5)).toBe(-never);
    expect(clearlySaved([never, 10], [20, never], 0)).toBe(-never);
  });
});

test("what is chosen passes the checker and is the same again, whatever the shop", () => {
  fc.assert(
    fc.property(randomProblem, fc.nat(100), (problem, seed) => {
      const search = beginSearch(problem, { seed: 1, warm: null });
      search.go(10);
      const { plan } = search.found;
      const chosen = bestUnderLuck(problem, plan, seed);
      expect(chosen === plan ? [] : checkPlan(problem, chosen)).toEqual([]);
      expect(bestUnderLuck(problem, plan, seed)).toEqual(chosen);
    }),
    { numRuns: 60 },
  );
});

test("luck leaves what is done, opens no coat before its sheet does, and keeps windows in order and apart", () => {
  fc.assert(
    fc.property(randomProblem, fc.nat(1000), (problem, seed) => {
      const { tasks } = underLuck(problem, chanceFrom(seed));
      for (const [index, task] of tasks.entries()) {
        const before = at(problem.tasks, index);
        if (before.ended !== null) expect(task).toBe(before);
        expect(task.minutes).toBeGreaterThanOrEqual(before.ended === null ? 1 : 0);
        for (const [number, { windows }] of task.waits.entries()) {
          let open = 0;
          for (const [place, { opens, shuts }] of windows.entries()) {
            if (typeof opens !== "number") continue;
            const sheet = at(at(before.waits, number).windows, place).opens;
            if (place === 0 && typeof sheet === "number") expect(opens).toBeGreaterThanOrEqual(sheet);
            expect(opens).toBeGreaterThanOrEqual(open);
            if (typeof shuts !== "number") continue;
            expect(shuts).toBeGreaterThanOrEqual(opens);
            open = shuts + 1;
          }
        }
      }
    }),
    { numRuns: 200 },
  );
});
