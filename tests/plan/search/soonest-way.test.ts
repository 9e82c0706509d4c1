import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkPlan } from "../../../src/plan/check-plan.ts";
import { dispatch } from "../../../src/plan/dispatch.ts";
import type { Plan, Visit } from "../../../src/plan/plan.ts";
import { prepareDispatch } from "../../../src/plan/prepare-dispatch.ts";
import type { Problem, Task } from "../../../src/plan/problem.ts";
import { KeptWork } from "../../../src/plan/search/kept-work.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { SoonestWay } from "../../../src/plan/search/soonest-way.ts";
import { smallProblem, waitFor } from "../small-problem.ts";

describe("the way of a piece that ends soonest, between work that keeps its minutes", () => {
  test("lets a coat dry before the dust that is to come", () => {
    // Kept: a coat from 20 to 30 that keeps dust out until 60, and dust from 90 to 110. The piece: dust of 10 min, then,
    // 5 to 30 min later, a coat of 10 min that keeps dust out for 40. Its dust comes before the coat kept, by 20; its own
    // coat from 15 would be in the way of that one, so from 30 to 40: dry at 80, ten minutes before the dust kept.
    const coat = { gives: [{ what: 0, lasts: 30, fromSetUp: false }] };
    const dust = { gives: [{ what: 1, lasts: 0, fromSetUp: false }] };
    const problem = smallProblem(
      [
        { piece: 0, ...coat },
        { piece: 1, minutes: 20, ...dust },
        { piece: 2, ...dust },
        { piece: 2, waits: [waitFor(2, [[5, 30]])], gives: [{ what: 0, lasts: 40, fromSetUp: false }] },
      ],
      [{}, {}, {}],
      { apart: [[0, 1]] },
    );
    const kept = [visitOf(0, 20, 30), visitOf(1, 90, 110)];
    expect(wayOf(problem, kept, false)).toEqual([visitOf(2, 0, 10), visitOf(3, 30, 40)]);
    expect(wayOf(problem, kept, true)).toEqual([visitOf(2, 10, 20), visitOf(3, 30, 40)]);
  });

  test("breaks nothing, and none ends sooner", { timeout: 60_000 }, () => {
    let found = 0;
    fc.assert(
      fc.property(shopWithRoom, fc.boolean(), (problem, late) => {
        const kept = keptOf(problem);
        const way = wayOf(problem, kept, late);
        expect(way?.at(-1)?.end ?? null).toBe(soonestEnd(problem, kept));
        if (way === null) return;
        found++;
        expect(checkPlan(problem, planWith(problem, [...kept, ...way]))).toEqual([]);
      }),
      { numRuns: 60 },
    );
    expect(found).toBeGreaterThan(30);
  });
});

/** The piece looked at is the last one, of two tasks; before it are two of others. */
const KEPT = 4;

const sessions = [0, 40, 80].map((opens) => ({ opens, closes: opens + 20 }));

const step = fc.record({
  minutes: fc.integer({ min: 2, max: 6 }),
  opens: fc.nat(20),
  stays: fc.integer({ min: 2, max: 40 }),
  lasts: fc.nat(8),
  what: fc.constantFrom(0, 1, null),
  hangs: fc.option(fc.integer({ min: 1, max: 25 }), { nil: null }),
  setUp: fc.option(fc.nat(2), { nil: null }),
});

const shopWithRoom: fc.Arbitrary<Problem> = fc
  .record({
    steps: fc.array(step, { minLength: KEPT + 2, maxLength: KEPT + 2 }),
    hooks: fc.integer({ min: 1, max: 2 }),
    mostOut: fc.constantFrom(null, 2),
    release: fc.constantFrom(0, 0, 15),
  })
  .map(({ steps, hooks, mostOut, release }) => {
    const tasks = steps.map(
      ({ minutes, opens, stays, lasts, what, hangs, setUp }, index): Partial<Task> => ({
        piece: Math.floor(index / 2),
        minutes,
        waits: index % 2 === 0 ? [] : [waitFor(index - 1, [[opens, opens + stays]])],
        // What a piece does to itself, in the room and on the rack, is left to the play.
        gives: what === null || index === KEPT + 1 ? [] : [{ what, lasts, fromSetUp: true }],
        hook: hangs === null || index === KEPT ? null : { place: 0, until: hangs, stays: true },
        // Of one piece only one task uses the station.
        ...(setUp === null || index % 2 === 0 ? {} : { station: 0, setUp }),
      }),
    );
    const piece = { underLimit: true, cure: 3 };
    return smallProblem(tasks, [piece, piece, { ...piece, release }], {
      sessions,
      horizon: 300,
      apart: [[0, 1]],
      places: [{ name: "rack", hooks }],
      mostOut,
      stations: [{ name: "booth", standing: null }],
      setUps: [
        { station: 0, minutes: 3, keeps: { way: "load" }, putAway: 0, gives: [] },
        { station: 0, minutes: 2, keeps: { way: "load" }, putAway: 0, gives: [] },
        { station: 0, minutes: 4, keeps: { way: "heat", minutes: 9 }, putAway: 0, gives: [] },
      ],
    });
  })
  .filter(
    (problem) =>
      keptOf(problem).length === KEPT &&
      checkPlan(problem, planWith(problem, keptOf(problem))).every((wrong) => /task [45]/.test(wrong)),
  );

/** The work of the other pieces as dispatch plans it alone. */
function keptOf(problem: Problem): Visit[] {
  const others = { ...problem, tasks: problem.tasks.slice(0, KEPT), pieces: problem.pieces.slice(0, 2) };
  return [...dispatch(prepareDispatch(others)).visits];
}

function wayOf(problem: Problem, kept: readonly Visit[], late: boolean): Visit[] | null {
  const bench = openBench(problem);
  const work = new KeptWork(bench);
  for (const { task, setUp, start, end } of kept) {
    const at = bench.tasks[task];
    if (at !== undefined) work.add(at, start - setUp, end);
  }
  const plan = planWith(problem, kept);
  for (const piece of bench.pieces.slice(0, 2)) {
    const own = kept.filter(({ task }) => problem.tasks[task]?.piece === piece.index);
    const begin = Math.min(...own.map(({ start, setUp }) => start - setUp));
    work.addOut(piece, begin, plan.finish[piece.index] ?? 0);
  }
  const way = new SoonestWay(bench, work);
  const tasks = bench.tasks.filter(({ piece }) => piece.index === problem.pieces.length - 1);
  const { release } = problem.pieces[problem.pieces.length - 1] ?? { release: 0 };
  const end = way.find(tasks, { from: release, until: problem.horizon, isOut: false, late });
  if (end === null) return null;
  return tasks.map(({ index, minutes }) => {
    const end = way.end[index] ?? 0;
    return { ...visitOf(index, end - minutes, end), setUp: end - minutes - (way.begin[index] ?? 0) };
  });
}

function visitOf(task: number, start: number, end: number): Visit {
  return { task, part: "step", setUp: 0, start, end };
}

function planWith({ pieces, tasks }: Problem, visits: readonly Visit[]): Plan {
  const finish = pieces.map(({ cure }, piece) => {
    const own = visits.filter(({ task }) => tasks[task]?.piece === piece);
    return own.length === 0 ? null : Math.max(...own.map(({ end }) => end)) + cure;
  });
  return { visits: visits.toSorted((one, other) => one.start - other.start), unplaced: [], finish };
}

/** By trying every minute for either task, with and without setting up. */
function soonestEnd(problem: Problem, kept: readonly Visit[]): number | null {
  const [first, second] = [problem.tasks[KEPT], problem.tasks[KEPT + 1]];
  if (first === undefined || second === undefined) return null;
  const setUps = second.setUp === null ? [0] : [0, problem.setUps[second.setUp]?.minutes ?? 0];
  for (let end = 0; end <= 100; end++) {
    for (const setUp of setUps) {
      const then = { ...visitOf(KEPT + 1, end - second.minutes, end), setUp };
      for (let start = 0; start + first.minutes <= then.start - setUp; start++) {
        const now = visitOf(KEPT, start, start + first.minutes);
        if (checkPlan(problem, planWith(problem, [...kept, now, then])).length === 0) return end;
      }
    }
  }
  return null;
}
