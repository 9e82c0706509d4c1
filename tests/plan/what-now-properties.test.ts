import { describe, expect, test } from "vitest";
import { checkPlan } from "../../src/plan/check-plan.ts";
import { dispatch } from "../../src/plan/dispatch.ts";
import { keyOfRow } from "../../src/plan/left-work.ts";
import { makeProblem } from "../../src/plan/make-problem.ts";
import type { NowAnswer } from "../../src/plan/now-answer.ts";
import { type NowRows, nowRows } from "../../src/plan/now-rows.ts";
import { readShop } from "../../src/plan/plan-shop.ts";
import { prepareDispatch } from "../../src/plan/prepare-dispatch.ts";
import { dispatchFirst, dispatchNow, dispatchRows, whatNow } from "../../src/plan/what-now.ts";
import { stepStates } from "../../src/shop/step-state.ts";
import { afterAnyActs, played } from "./after-any-acts.ts";

/** `3 shape`, once for each tag of each row. */
function works(rows: NowAnswer["work"] | NowAnswer["held"]): string[] {
  return rows.flatMap(({ tags, step }) => tags.map((tag) => `${tag} ${step}`));
}

describe("what now, whatever was done before", () => {
  test("names every piece's open work once, as work or as held", () => {
    afterAnyActs((shop, context) => {
      const answer = whatNow(shop, context);
      const open = [...shop.pieces.values()].flatMap((piece) =>
        [...stepStates(piece, context)]
          .filter(([, { is }]) => is === "open" || is === "shut" || is === "left")
          .map(([step]) => `${piece.tag} ${step}`),
      );
      expect([...works(answer.work), ...works(answer.held)].sort()).toEqual(open.sort());
    }, 25);
  });

  test("shows as work only what fits tonight, with its set-up and what must be put away", () => {
    afterAnyActs((shop, context) => {
      const { work, bench } = whatNow(shop, context);
      for (const { minutes, setUp, step, part } of work) {
        expect(bench.closes).not.toBeNull();
        const mayStop =
          part === "step" && played.some((one) => one.steps.some((its) => its.name === step && its.mayStop));
        const least = (setUp?.minutes ?? 0) + (mayStop ? Math.min(15, minutes) : minutes);
        expect(least + bench.putAway).toBeLessThanOrEqual(bench.minutesLeft + 1);
      }
    }, 25);
  });

  test("is the same when asked again, and every hold that the clock ends lies ahead", () => {
    afterAnyActs((shop, context) => {
      const answer = whatNow(shop, context);
      expect(whatNow(shop, context)).toEqual(answer);
      for (const { until } of answer.held) if (until !== null) expect(until).toBeGreaterThan(context.now);
    }, 10);
  });

  test("plans nothing that the checker would not let pass", () => {
    afterAnyActs((shop, context) => {
      const { problem } = makeProblem(readShop(shop, context), context.newPiece !== null);
      expect(checkPlan(problem, dispatch(prepareDispatch(problem)))).toEqual([]);
    }, 10);
  });

  test("has the same rows in the same order when dispatch goes no further than they ask", () => {
    afterAnyActs((shop, context) => {
      const facts = readShop(shop, context);
      const [all, few] = [dispatchNow(facts), dispatchRows(facts)];
      const keys = ({ work, held }: NowRows) => [
        work.map(keyOfRow),
        held.map(({ candidates }) => keyOfRow(candidates)),
      ];
      expect(keys(nowRows(few))).toEqual(keys(nowRows(all)));
      expect(few.plan.visits.length).toBeLessThanOrEqual(all.plan.visits.length);
    }, 25);
  });

  test("names the same work, and begins it alike, when dispatch plays one bench session alone", () => {
    afterAnyActs((shop, context) => {
      const facts = readShop(shop, context);
      const [all, first] = [dispatchNow(facts), dispatchFirst(facts)];
      const named = ({ work, held }: NowRows) =>
        [...work, ...held.map(({ candidates }) => candidates)]
          .flatMap((row) => row.map(({ tag, step }) => `${tag} ${step.name}`))
          .toSorted();
      expect(named(nowRows(first))).toEqual(named(nowRows(all)));
      expect(all.plan.visits).toEqual(expect.arrayContaining([...first.plan.visits]));
    }, 25);
  });
});
