import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { at } from "../../../src/plan/at.ts";
import { openingAfter, shutAfter } from "../../../src/plan/lag.ts";
import type { Problem } from "../../../src/plan/problem.ts";
import type { Bench, BenchTask } from "../../../src/plan/search/bench.ts";
import { NEVER } from "../../../src/plan/search/calendar.ts";
import type { Chain } from "../../../src/plan/search/chain.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import type { PricedTime } from "../../../src/plan/search/priced-time.ts";
import { PricedWays } from "../../../src/plan/search/priced-ways.ts";
import { randomProblem } from "../random-problem.ts";
import { smallProblem, waitFor } from "../small-problem.ts";
import { drawPrices } from "./drawn-prices.ts";

/** Two tasks of ten minutes, 25 minutes apart or at most an hour, and 20 to dry. */
const twoTasks = smallProblem([{}, { waits: [waitFor(0, [[25, 60]])] }], [{ cure: 20 }]);

/** The same, on a hook for 30 min after the first. */
const hung = {
  places: [{ name: "rack", hooks: 1 }],
  tasks: twoTasks.tasks.map((task, index) =>
    index === 0 ? { ...task, hook: { place: 0, until: 30 } } : task,
  ),
};

/** Minutes between two starts. */
const EVERY = 60;

describe("the best way of a piece", () => {
  test("costs what waits, starts and cure make of it where nothing has a price", () => {
    // Of starts 15 min apart: 0 to 10, then from 45, the first after 35, to 55, and dry at 75.
    const { ways, chain } = onlyChain(twoTasks, 15);
    expect(ways.solve(chain)).toBe(75);
  });

  test("is the dearer by what its hands, hooks and room cost", () => {
    // 20 min of hands, a hook for 30 min, room for all 75.
    const { ways, chain } = onlyChain(
      { ...twoTasks, mostOut: 1, ...hung, pieces: [{ ...at(twoTasks.pieces, 0), underLimit: true }] },
      15,
    );
    for (const scarce of ways.scarce) {
      scarce.clear();
      scarce.take(0, 10_000, 100);
      scarce.steer();
      scarce.adjust(1);
    }
    const [hands, hooks, room] = ways.scarce.map((scarce) => scarce.upTo(1)) as [number, number, number];
    ways.reprice();
    expect(ways.solve(chain)).toBeCloseTo(75 + 20 * hands + 30 * hooks + 75 * room, 6);
  });

  test("goes round the hours that cost much", () => {
    const { ways, chain } = onlyChain(twoTasks, 15);
    const [hands] = ways.scarce;
    hands?.clear();
    hands?.take(0, 120, 1000);
    hands?.steer();
    hands?.adjust(1);
    ways.reprice();
    // The first two hours cost more than anything: it begins at 120, and goes on at 165.
    expect(ways.solve(chain)).toBe(195);
  });

  test("waits for the next morning where the day is too short", () => {
    const late = smallProblem([{ release: 150 }, { waits: [waitFor(0, [[30, null]])] }]);
    const { ways, chain } = onlyChain(late, 15);
    // 150 to 160; 190 is after the bench shuts at 180.
    expect(ways.solve(chain)).toBe(1450);
  });

  test("is none where a window shuts for good before the bench opens again", () => {
    const late = smallProblem([{ release: 150 }, { release: 200, waits: [waitFor(0, [[30, 60]])] }]);
    expect(new PricedWays(openBench(late), 1440, 15).chains).toEqual([]);
  });
});

describe("the best way is the cheapest of all ways", () => {
  test("whatever the shop and the prices", () => {
    fc.assert(fc.property(randomProblem, fc.nat(1000), expectCheapest), { numRuns: 200 });
  });

  test("whatever windows shut for good", () => {
    const work = fc.record({
      minutes: fc.integer({ min: 1, max: 50 }),
      opens: fc.integer({ min: 0, max: 1600 }),
      open: fc.integer({ min: 0, max: 600 }),
    });
    const problem = fc.array(work, { minLength: 2, maxLength: 6 }).map((works) =>
      smallProblem(
        works.map(({ minutes, opens, open }, index) => ({
          minutes,
          waits: index === 0 ? [] : [waitFor(index - 1, [[opens, opens + open]])],
        })),
        [{ due: 1500 }],
      ),
    );
    fc.assert(fc.property(problem, fc.nat(1000), expectCheapest), { numRuns: 200 });
  });
});

function expectCheapest(problem: Problem, seed: number): void {
  const bench = openBench(problem);
  const ways = new PricedWays(bench, Math.min(problem.horizon, 5760), EVERY);
  drawPrices(ways, seed);
  for (const chain of ways.chains) {
    const cheapest = cheapestFrom(ways, bench, chain);
    if (cheapest === Number.POSITIVE_INFINITY) expect(ways.solve(chain)).toBe(cheapest);
    else expect(ways.solve(chain)).toBeCloseTo(cheapest, 6);
  }
}

/** What a way from a step on costs at least, every start of it looked at that the task before it lets it have. */
function cheapestFrom(
  ways: PricedWays,
  { horizon, places }: Bench,
  { piece, steps, takesRoom }: Chain,
): number {
  const [hands, ...others] = ways.scarce as [PricedTime, ...PricedTime[]];
  const known = steps.map(() => new Map<number, number>());
  const costOf = (place: number, start: number): number => {
    const step = steps[place];
    const end = step?.ends[start] ?? NEVER;
    if (step === undefined || end >= NEVER) return Number.POSITIVE_INFINITY;
    const before = known[place]?.get(start);
    if (before !== undefined) return before;
    const open = at(ways.grid.openBefore, start);
    const { minutes, hook } = step.task;
    let cost = step.hands * (hands.upTo(open + minutes) - hands.upTo(open));
    if (hook !== null) {
      const hooks = at(others, places.indexOf(hook.place));
      cost += hooks.upTo(Math.min(NEVER, openingAfter(hook.until, end))) - hooks.upTo(end);
    }
    if (takesRoom && place === 0) cost -= ways.room?.upTo(at(ways.grid.minutes, start)) ?? 0;
    if (place + 1 < steps.length) cost += cheapest(place + 1, step.task, end);
    else {
      const finish = Math.min(horizon, end + piece.cure);
      cost += 10 * piece.weight * Math.max(0, finish - piece.due) + Math.max(0, finish - piece.release);
      if (piece.underLimit) cost += ways.room?.upTo(finish) ?? 0;
    }
    known[place]?.set(start, cost);
    return cost;
  };
  /** Of all starts of a step, after one task that ended then. */
  const cheapest = (place: number, after: BenchTask | null, end: number): number => {
    const task = steps[place]?.task;
    let opens = task?.release ?? 0;
    let shuts = NEVER;
    for (const wait of task?.waits ?? []) {
      const isBefore = wait.on.ended !== null || wait.on.running;
      if (after === null ? !isBefore : wait.on !== after) continue;
      const done = after === null ? wait.on.end : end;
      opens = Math.max(opens, openingAfter(wait.windows[0]?.opens ?? 0, done));
      shuts = Math.min(shuts, shutAfter(wait.windows.at(-1)?.shuts ?? null, done));
    }
    if (after !== null) opens = Math.max(opens, end);
    const starts = [...ways.grid.minutes.keys()].filter((start) => at(ways.grid.minutes, start) >= opens);
    const within = starts.filter((start) => at(ways.grid.minutes, start) <= shuts);
    const [first] = starts;
    // What shuts between two starts may still be met by the later one.
    const justMissed =
      within.length === 0 && first !== undefined && at(ways.grid.minutes, first) < shuts + EVERY;
    return Math.min(
      Number.POSITIVE_INFINITY,
      ...(justMissed ? [first] : within).map((start) => costOf(place, start)),
    );
  };
  return cheapest(0, null, 0);
}

function onlyChain(problem: Problem, every: number): { ways: PricedWays; chain: Chain } {
  const ways = new PricedWays(openBench(problem), 10_000, every);
  return { ways, chain: at(ways.chains, 0) };
}
