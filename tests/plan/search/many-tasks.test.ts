import { describe, expect, test } from "vitest";
import { chanceFrom } from "../../../src/plan/chance.ts";
import { checkPlan } from "../../../src/plan/check-plan.ts";
import { dispatch } from "../../../src/plan/dispatch.ts";
import { prepareDispatch } from "../../../src/plan/prepare-dispatch.ts";
import type { PlanPiece, Problem, Task } from "../../../src/plan/problem.ts";
import { scorePlan } from "../../../src/plan/score.ts";
import { Beam } from "../../../src/plan/search/beam.ts";
import type { BenchTask } from "../../../src/plan/search/bench.ts";
import { NEVER } from "../../../src/plan/search/calendar.ts";
import { dispatchBy, firstRules } from "../../../src/plan/search/first-orders.ts";
import { nameWork } from "../../../src/plan/search/name-work.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { orderOf } from "../../../src/plan/search/order-of.ts";
import { Player } from "../../../src/plan/search/play-order.ts";
import { PriceOutlook } from "../../../src/plan/search/price-outlook.ts";
import { pricesFor } from "../../../src/plan/search/prices-for.ts";
import { Recreate } from "../../../src/plan/search/recreate.ts";
import { RoughPicture } from "../../../src/plan/search/rough-picture.ts";
import { beginSearch } from "../../../src/plan/search/search.ts";
import { problemOfShop } from "../../bench/plan/shop-problem.ts";
import { smallProblem, waitFor } from "../small-problem.ts";
import { readSolvedShop } from "./read-solved-shop.ts";
import { type SolvedShop, solvedShops } from "./solved-shops.ts";

describe("a plan of more than 300 tasks", () => {
  test("passes the checker, costs what it says, and a good deal less than dispatch", () => {
    for (const seed of [1, 2, 3]) {
      const problem = manyPieces(seed);
      const search = beginSearch(problem, { seed, warm: null });
      search.go(400);
      const { plan, score } = search.found;
      expect(checkPlan(problem, plan)).toEqual([]);
      expect(score).toEqual(scorePlan(problem, plan));
      expect(plan.unplaced).toEqual([]);
      expect(score.total).toBeLessThan(0.95 * scorePlan(problem, dispatch(prepareDispatch(problem))).total);
    }
  }, 60_000);

  test("is the same every time, however the rounds are portioned out and whoever looks meanwhile", () => {
    expectSameInPortions(manyPieces(4), [1, 29, 50, 70]);
  }, 60_000);
});

describe("a plan of 160 tasks", () => {
  test("is the same every time, though someone looks in the midst of rules, beams and cooling", () => {
    expectSameInPortions(manyPieces(4, 16), [30, 230, 25, 25, 600, 25, 1565]);
  }, 60_000);
});

function expectSameInPortions(problem: Problem, portions: readonly number[]): void {
  const whole = beginSearch(problem, { seed: 1, warm: null });
  whole.go(portions.reduce((sum, rounds) => sum + rounds));
  const portioned = beginSearch(problem, { seed: 1, warm: null });
  for (const rounds of portions) {
    portioned.go(rounds);
    expect(portioned.found.rounds).toBeLessThanOrEqual(whole.found.rounds);
  }
  expect(portioned.found.plan).toEqual(whole.found.plan);
}

describe("a beam", () => {
  test("comes to its end, though some work can never be begun", () => {
    const problem = manyPieces(1);
    const tasks = problem.tasks.map((task) => (task.piece === 3 ? { ...task, release: null } : task));
    const player = new Player(openBench({ ...problem, tasks }));
    const prices = new PriceOutlook(player.bench, { until: 60 * 1440, ceiling: 1e6, every: 30, looks: 5 });
    while (!prices.isSettled) prices.look();
    const beam = openBeam(player, { width: 1, prices });
    for (let round = 0; round < 200 && !beam.isOver; round++) beam.round();
    expect(beam.isOver).toBe(true);
  });
});

describe("a beam by prices that goes task by task", () => {
  test("comes to its end, though there is no time for all work", () => {
    const whole = manyPieces(4, 16);
    const sessions = whole.sessions.slice(0, 6);
    const problem = { ...whole, sessions, horizon: sessions.at(-1)?.closes ?? 0 };
    const player = openPlayer(problem);
    const options = { until: problem.horizon, ceiling: 1e6, every: 15, looks: 20 };
    const prices = new PriceOutlook(player.bench, options);
    while (!prices.isSettled) prices.look();
    const beam = openBeam(player, { width: 2, prices });
    for (let round = 0; round < 2000 && !beam.isOver; round++) beam.round();
    expect(beam.isOver).toBe(true);
    if (beam.best !== null) player.playWhole(beam.best);
    const givenUp = player.bench.tasks.filter(({ end }) => end >= NEVER);
    expect(beam.best?.order).toHaveLength(160);
    expect(givenUp.length).toBeGreaterThan(0);
  });
});

interface BeamOptions {
  readonly width: number;
  readonly prices: PriceOutlook;
  readonly seed?: number;
}

/** A beam that takes no piece for another. */
function openBeam(player: Player, { width, prices, seed = 1 }: BeamOptions): Beam {
  const { bench } = player;
  const chance = chanceFrom(seed);
  const names = nameWork(bench, [...bench.pieces.keys()], chance);
  return new Beam(player, new Recreate(player), chance, firstRules(bench), { width, prices, names });
}

function costByBeam(problem: Problem, seed: number): number {
  const player = openPlayer(problem);
  const options = { until: 20 * 1440, ceiling: 100_000, every: 15, looks: 60 };
  return costByPrices(player, new PriceOutlook(player.bench, options), seed);
}

/** What the plan costs that a beam of width 4 comes to, once the prices are found. */
function costByPrices(player: Player, prices: PriceOutlook, seed: number): number {
  while (!prices.isSettled) prices.look();
  const beam = openBeam(player, { width: 4, prices, seed });
  while (!beam.isOver) beam.round();
  if (beam.best === null) return Number.POSITIVE_INFINITY;
  player.playWhole(beam.best);
  return player.cost;
}

describe("a beam by prices", () => {
  test("lets a coat wait for dust that no rule sees coming", () => {
    // A coat of 10 min could begin at once and stay wet for 200, past the bench's 180; dust may come from 30 on. If the coat
    // goes first the dust waits for the next day.
    const [wet, dust] = [0, 1];
    const problem = smallProblem(
      [
        { piece: 0, gives: [{ what: wet, lasts: 200, fromSetUp: false }] },
        { piece: 1, release: 30, gives: [{ what: dust, lasts: 0, fromSetUp: false }] },
      ],
      [{}, { due: 60 }],
      { apart: [[wet, dust]] },
    );
    const player = openPlayer(problem);
    const recreate = new Recreate(player);
    const rules = firstRules(player.bench);
    const begins = (): number[] => player.bench.tasks.map(({ begin }) => begin);
    for (const rule of rules) {
      dispatchBy(rule, player, recreate, Number.POSITIVE_INFINITY);
      expect(begins()).toEqual([0, 1440]);
    }
    player.reset();
    const prices = new PriceOutlook(player.bench, { until: 2880, ceiling: 100_000, every: 15, looks: 20 });
    while (!prices.isSettled) prices.look();
    const beam = openBeam(player, { width: 4, prices });
    while (!beam.isOver) beam.round();
    if (beam.best !== null) player.playWhole(beam.best);
    expect(begins()).toEqual([40, 30]);
  });

  test("comes to a proven best plan that its ways alone miss, by doing stretches again", () => {
    // What is best was proven by a general constraint solver. Without that ten seeds come to 9557 of the first at best.
    for (const name of ["tiny-daily-s900", "tiny-nightly-s903-w-h4-c"]) {
      const shop = solvedShops.find((one) => one.name === name) as SolvedShop;
      const costs = Array.from({ length: 10 }, (_, seed) =>
        costByBeam(problemOfShop(readSolvedShop(shop)), seed + 1),
      );
      expect({ name, best: Math.min(...costs) }).toEqual({ name, best: shop.best });
    }
  });

  test("goes through days on which nothing can be begun", () => {
    const player = openPlayer(smallProblem([{ release: 3 * 1440 }]));
    const prices = new PriceOutlook(player.bench, {
      until: 5 * 1440,
      ceiling: 100_000,
      every: 15,
      looks: 20,
    });
    while (!prices.isSettled) prices.look();
    const beam = openBeam(player, { width: 2, prices });
    for (let round = 0; round < 30 && !beam.isOver; round++) beam.round();
    expect(beam.best?.order.map(({ index }) => index)).toEqual([0]);
  });
});

describe("the rough picture of a bench on which nothing was done", () => {
  test("is that of pieces one after the other through the hands, the dearest first", () => {
    // Three pieces of 65 min: at 0.65 of the open time each takes 100. They end at 100, then, as a session has 180 min,
    // 20 min into the next day's at 1460, and 120 min into it at 1560. All are due at 100; the one of weight 3 goes first:
    // 10 x (0 + 1360 + 1460) + 100 + 1460 + 1560 = 31,320.
    const weights = [1, 1, 3];
    const problem = smallProblem(
      weights.map((_, piece) => ({ piece, minutes: 65 })),
      weights.map((weight) => ({ weight, due: 100 })),
    );
    expect(roughPicture(openPlayer(problem)).cost()).toBeCloseTo(31_320);
    expect(roughPicture(openPlayer(problem)).last).toBeCloseTo(1560);
  });

  test("minds how many may be out", () => {
    // Each piece takes 10 min and 90 to dry, at 1.2 times that: 120. With room for one they end at 120 and 240, both not
    // due: 360. Without the limit both end at 120.
    const pieces = [
      { cure: 90, underLimit: true },
      { cure: 90, underLimit: true },
    ];
    const tasks = pieces.map((_, piece) => ({ piece, minutes: 10 }));
    const limited = roughPicture(openPlayer(smallProblem(tasks, pieces, { mostOut: 1 })));
    expect([limited.cost(), limited.last]).toEqual([360, 240]);
    const free = roughPicture(openPlayer(smallProblem(tasks, pieces)));
    expect([free.cost(), free.last]).toEqual([240, 120]);
  });
});

describe("prices for a bench", () => {
  test("lead to about as good a plan whether the one that stands is fair or does piece after piece", () => {
    const problem = manyPieces(5);
    const fair = openPlayer(problem);
    adopt(fair, orderOf(fair.bench, dispatch(prepareDispatch(problem))));
    const long = openPlayer(problem);
    adopt(long, long.bench.tasks);
    expect(long.cost).toBeGreaterThan(3 * fair.cost);
    const standing = fair.cost;
    // Single beams are luckier or less so by a tenth: of four each, the mean.
    const [byFair, byLong] = [fair, long].map((player) => {
      const { order, cost } = player;
      const costs = [1, 2, 3, 4].map((seed) => {
        const prices = pricesFor(player);
        expect({ order: player.order, cost: player.cost }).toEqual({ order, cost });
        const found = costByPrices(player, prices, seed);
        adopt(player, order);
        return found;
      });
      return costs.reduce((sum, one) => sum + one) / costs.length;
    }) as [number, number];
    expect(byFair).toBeLessThan(0.5 * standing);
    expect(Math.abs(byLong / byFair - 1)).toBeLessThan(0.1);
  });
});

function adopt(player: Player, order: readonly BenchTask[]): void {
  player.adopt({ order, decided: new Int32Array(2 * order.length), cost: 0 });
}

function openPlayer(problem: Problem): Player {
  return new Player(openBench(problem));
}

function roughPicture({ bench }: Player): RoughPicture {
  const picture = new RoughPicture(bench);
  picture.improve(5);
  return picture;
}

/** Pieces of ten tasks each, dusty and wet in turn, some with waits that shut, over two months of evenings. */
function manyPieces(seed: number, count = 32): Problem {
  const chance = chanceFrom(seed);
  const below = (bound: number): number => Math.floor(bound * chance());
  const tasks: Partial<Task>[] = [];
  const pieces: Partial<PlanPiece>[] = [];
  for (let piece = 0; piece < count; piece++) {
    const release = 1440 * below(6);
    pieces.push({ release, due: release + 1440 * (6 + below(20)), weight: 1 + below(3) });
    for (let number = 0; number < 10; number++) {
      const isCoat = number % 3 === 1;
      const on = tasks.length - 1;
      const shuts = chance() < 0.2 ? 3000 : null;
      tasks.push({
        piece,
        minutes: 4 + below(20),
        gives: [{ what: isCoat ? 0 : 1, lasts: isCoat ? 20 + below(60) : 0, fromSetUp: false }],
        waits: number === 0 ? [] : [waitFor(on, [[number % 3 === 2 ? 30 + below(400) : 0, shuts]])],
        hook: isCoat ? { place: 0, until: 60 + below(400), stays: true } : null,
      });
    }
  }
  const days = Array.from({ length: 80 }, (_, day) => day * 1440);
  return smallProblem(tasks, pieces, {
    horizon: 80 * 1440,
    sessions: days.map((opens) => ({ opens, closes: opens + 180 })),
    places: [{ name: "rack", hooks: 6 }],
    apart: [[0, 1]],
  });
}
