import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkPlan } from "../../src/plan/check-plan.ts";
import type { Problem } from "../../src/plan/problem.ts";
import { byRule, oldestFirst } from "../../src/simulate/makers-rules.ts";
import { type Policy, playForward } from "../../src/simulate/play-forward.ts";
import { beginPlay } from "../../src/simulate/play-state.ts";
import { noiseFrom, noNoise, type WorkNoise } from "../../src/simulate/work-noise.ts";
import { randomProblem } from "../plan/random-problem.ts";
import { smallProblem, waitFor } from "../plan/small-problem.ts";
import { asPlan, policies } from "./played.ts";

const WEEKS = 3 * 7 * 1440;

/** Shops in which every piece has work left: one that has none is finished, and no shop plans it. */
const anyShop = randomProblem.filter(({ pieces, tasks }) =>
  pieces.every((_, piece) => tasks.some((task) => task.piece === piece && task.ended === null)),
);

/**
 * The same, but what is set up stands until the session ends: no heat is put away early for a vapour, and a colour
 * loaded in place of another takes as long to clean. Seen from its end, a plan owes the minutes of whatever stood in a
 * session; a maker who has put something away no longer does.
 */
const shopsThatStand = anyShop.map((shop) => ({
  ...shop,
  apart: shop.apart.slice(0, 1),
  setUps: shop.setUps.map((setUp) => ({ ...setUp, putAway: setUp.station === 1 ? 4 : setUp.putAway })),
}));

/** What the checker finds wrong in a shop played forward with all going as thought. */
function findWrong(shop: Problem, policy: Policy): string[] {
  const state = beginPlay(shop);
  playForward(state, policy, noNoise, WEEKS);
  const { problem, plan } = asPlan(state);
  return checkPlan(problem, plan);
}

describe.each(Object.entries(policies))("%s", (_, policy) => {
  test("keeps every constraint of any shop when all goes as thought", () => {
    fc.assert(
      fc.property(shopsThatStand, (shop) => {
        expect(findWrong(shop, policy())).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  test("keeps heat and vapour apart too", () => {
    fc.assert(
      fc.property(anyShop, (shop) => {
        const wrong = findWrong(shop, policy());
        expect(wrong.filter((sentence) => !sentence.startsWith("no time to put away"))).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  test("does the same again with the same luck", () => {
    fc.assert(
      fc.property(anyShop, fc.integer(), (problem, seed) => {
        const histories = [1, 2].map(() => {
          const state = beginPlay(problem);
          playForward(state, policy(), noiseFrom(seed, { hands: 0.25, wait: 0.15 }), WEEKS);
          return state.visits;
        });
        expect(histories[0]).toEqual(histories[1]);
      }),
      { numRuns: 10 },
    );
  });
});

describe("luck", () => {
  const luck = noiseFrom(7, { hands: 0.25, wait: 0.15 });
  const draws = Array.from({ length: 20_000 }, (_, piece) => luck("hands", piece, 3, 0));
  const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;

  test("is 1 on average, and varies by as much as is said", () => {
    const variance = draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0) / draws.length;
    // The error of a mean of 20,000 draws of 25 % is 0.25 / 141 = 0.0018; twice that and some more is allowed.
    expect(mean).toBeCloseTo(1, 2);
    expect(Math.sqrt(variance)).toBeCloseTo(0.25, 2);
  });

  test("is the same for the same piece and step, however the shop is worked", () => {
    expect(luck("wait", 5, 2, 0)).toBe(noiseFrom(7, { hands: 0.25, wait: 0.15 })("wait", 5, 2, 0));
    expect(luck("wait", 5, 2, 0)).not.toBe(luck("wait", 5, 2, 1));
    expect(luck("wait", 5, 2, 0)).not.toBe(luck("hands", 5, 2, 0));
  });
});

describe("what goes otherwise than thought", () => {
  /** Ten minutes, an hour's wait, ten more: in sessions of three hours from minute 0. */
  const shop = smallProblem([{}, { waits: [waitFor(0, [[60, null]])] }]);

  function play(noise: WorkNoise) {
    const state = beginPlay(shop);
    playForward(state, byRule(oldestFirst), noise, WEEKS);
    return state.visits.map(({ start, end }) => [start, end]);
  }

  test("takes longer, and only then the next begins", () => {
    const slow: WorkNoise = (what) => (what === "hands" ? 1.5 : 1);
    // 0 to 15, then the wait to 75, and 15 more.
    const expected = [
      [0, 15],
      [75, 90],
    ];
    expect(play(slow)).toEqual(expected);
  });

  test("a wait that goes slowly shows at its sheet's opening, and is waited for", () => {
    const slow: WorkNoise = (what) => (what === "wait" ? 1.5 : 1);
    // 10 and 1.5 x 60 is 100.
    expect(play(slow)[1]).toEqual([100, 110]);
  });

  test("a wait that goes quickly is not seen before the sheet says to look", () => {
    const quick: WorkNoise = (what) => (what === "wait" ? 0.5 : 1);
    expect(play(quick)[1]).toEqual([70, 80]);
  });

  test("a coat that cures quickly may be past its window when it is looked at", () => {
    const coat = waitFor(
      0,
      [
        [60, 65],
        [65, null, 5],
      ],
      null,
    );
    const state = beginPlay(smallProblem([{}, { waits: [coat] }]));
    playForward(state, byRule(oldestFirst), (what) => (what === "wait" ? 0.5 : 1), WEEKS);
    // Laid by 10; looked at when the sheet says, at 70, but it shut at 10 + 33: five minutes of preparation first.
    expect(state.visits.map(({ part, start, end }) => [part, start, end])).toEqual([
      ["step", 0, 10],
      ["preparation", 70, 75],
      ["step", 75, 85],
    ]);
  });

  test("work that may stop is stopped at closing, and what is left of it goes on", () => {
    const state = beginPlay(smallProblem([{ minutes: 200, mayStop: true }]));
    playForward(state, byRule(oldestFirst), (what) => (what === "hands" ? 2 : 1), WEEKS);
    // 180 at half the pace do 90 of 200; 110 are left, and 180 more do 90 of them; 20 are left and take 40.
    expect(state.visits.map(({ start, end }) => end - start)).toEqual([180, 180, 40]);
  });
});
