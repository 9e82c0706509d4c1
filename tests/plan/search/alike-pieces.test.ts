import { describe, expect, test } from "vitest";
import { at } from "../../../src/plan/at.ts";
import { checkPlan } from "../../../src/plan/check-plan.ts";
import { isLeftAnyway, leftWork } from "../../../src/plan/left-work.ts";
import { nowRows } from "../../../src/plan/now-rows.ts";
import { readShop } from "../../../src/plan/plan-shop.ts";
import type { Problem } from "../../../src/plan/problem.ts";
import { problemToPlan } from "../../../src/plan/problem-to-plan.ts";
import { firstAlike, spareLeft } from "../../../src/plan/search/alike-pieces.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { orderOf } from "../../../src/plan/search/order-of.ts";
import { beginSearch, leaveUntil, SearchesWithout } from "../../../src/plan/search/search.ts";
import { dispatchNow } from "../../../src/plan/what-now.ts";
import { Diary } from "../../fixtures/diary.ts";
import { walker } from "../../fixtures/walker.ts";
import { contextAt } from "../ask-now.ts";
import { smallProblem, waitFor } from "../small-problem.ts";

/** Three pieces of two tasks of 60 min, the second a day after the first: the bench is open for 180 min a day. */
function threePieces(dues: readonly (number | null)[]): Problem {
  return smallProblem(
    [
      ...dues.map((_, piece) => ({ piece, minutes: 60 })),
      ...dues.map((_, piece) => ({ piece, minutes: 60, waits: [waitFor(piece, [[1440, null]])] })),
    ],
    dues.map((due) => ({ due })),
  );
}

describe("pieces alike", () => {
  test("are those of which all is the same, their tasks and waits included", () => {
    expect(firstAlike(threePieces([null, null, null]))).toEqual([0, 0, 0]);
    expect(firstAlike(threePieces([null, 500, null]))).toEqual([0, 1, 0]);
    const { tasks, ...rest } = threePieces([null, null, null]);
    const longer = tasks.map((task, index) => (index === 5 ? { ...task, minutes: 61 } : task));
    expect(firstAlike({ ...rest, tasks: longer })).toEqual([0, 0, 2]);
  });

  test("change places where the work of one is left, and nothing is lost by it", () => {
    const diary = new Diary(walker);
    for (let tag = 1; tag <= 8; tag++) diary.tag(tag, "Mon 17:00");
    const facts = readShop(diary.shop(), contextAt("Mon 18:00"));
    const made = problemToPlan(facts);
    const { problem } = made;
    const search = beginSearch(problem, { seed: 1, warm: null });
    search.go(300);
    const { plan, score } = search.found;
    const leaves = nowRows(dispatchNow(facts))
      .work.map((row) => leftWork(row, facts, made))
      .filter((leave) => !isLeftAnyway(leave, plan));
    expect(leaves.length).toBeGreaterThan(2);
    const searches = new SearchesWithout(problem, plan, 1);
    for (const leave of leaves) {
      const without = searches.begin(leave).found;
      expect(without.score.total).toBeLessThanOrEqual(score.total);
      expect(checkPlan(leaveUntil(problem, leave), without.plan)).toEqual([]);
    }
  });

  test("stay where they are if the other's work is begun before that, or is left, too", () => {
    const shop = threePieces([null, null, null]);
    const bench = openBench(shop);
    const { plan } = beginSearch(shop, { seed: 1, warm: null }).found;
    const order = orderOf(bench, plan);
    const spared = (tasks: number[], until: number) =>
      spareLeft(bench, order, plan, firstAlike(shop), { tasks, until })?.map(({ index }) => index) ?? null;
    // All three are begun on the first day.
    expect(plan.visits.slice(0, 3).every(({ start }) => start < 180)).toBe(true);
    expect(spared([0], 180)).toBeNull();
    expect(spared([0, 1, 2], 60)).toBeNull();
    // One of them not in the first hour: that of these which begins soonest.
    const [one, other] = order.map(({ index }) => index);
    expect(spared([one ?? 0], 60)?.slice(0, 2)).toEqual([other, one]);
    expect(at(spared([one ?? 0], 60) ?? [], 2)).toBe(order[2]?.index);
  });
});
