import { describe, expect, test } from "vitest";
import { beginSearch } from "../../../src/plan/search/search.ts";
import { checkShop } from "../../bench/plan/check-shop.ts";
import { problemOfShop, solutionOf } from "../../bench/plan/shop-problem.ts";
import { readSolvedShop } from "./read-solved-shop.ts";
import { solvedShops } from "./solved-shops.ts";

/** More than any of them takes; the search ends as soon as its plan is proven. */
const MOST_ROUNDS = 4000;

describe("shops solved by a general constraint solver", () => {
  test.each(solvedShops)("$name costs $best at best", { timeout: 60_000 }, (shop) => {
    const file = readSolvedShop(shop);
    const search = beginSearch(problemOfShop(file), { seed: 1, warm: null });
    while (search.found.score.total > shop.best && search.found.rounds < MOST_ROUNDS) search.go(20);
    const { plan, score, bound } = search.found;
    expect(score.total).toBe(shop.best);
    expect(bound).toBeLessThanOrEqual(shop.best);
    const solution = solutionOf(file, plan);
    expect(solution === null ? null : checkShop(file, solution)).toEqual({ wrong: [], objective: shop.best });
  });
});
