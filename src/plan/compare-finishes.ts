import type { Tag } from "../journal/event.ts";
import type { PlanRow } from "../journal/journal.ts";
import { after, type Instant } from "../time/instant.ts";
import type { ShopProblem } from "./make-problem.ts";
import type { Plan } from "./plan.ts";
import { SEED, warmPlan } from "./plan-row.ts";
import { type NowContext, readShop } from "./plan-shop.ts";
import { problemToPlan } from "./problem-to-plan.ts";
import { beginSearch } from "./search/search.ts";

/** How long each of the two plans is searched for, in rounds: long enough that the difference is that of the shops. */
const ROUNDS = 200;

/** When pieces are finished in a shop and in the same one changed. */
export interface Finishes {
  /** Null: not within the days looked at. */
  readonly before: ReadonlyMap<Tag, Instant | null>;
  readonly after: ReadonlyMap<Tag, Instant | null>;
  /** Pieces whose due date would be kept as the shop is, and broken in the changed one. */
  readonly broken: readonly Tag[];
}

/**
 * Plans a shop as it is and as it would be, the second plan from the first, so that what differs comes of the change.
 *
 * @param row the plan kept, to start from; null: none
 * @throws never for two shops folded from the same journal
 */
export function compareFinishes(
  shop: Parameters<typeof readShop>[0],
  changed: Parameters<typeof readShop>[0],
  context: NowContext,
  row: PlanRow | null,
): Finishes {
  const asItIs = problemToPlan(readShop(shop, context));
  const otherwise = problemToPlan(readShop(changed, context));
  const first = searchOn(asItIs, row === null ? null : warmPlan(row, asItIs));
  const second = searchOn(otherwise, first);
  return {
    before: finishesOf(asItIs, first),
    after: finishesOf(otherwise, second),
    broken: asItIs.pieces.flatMap(({ tag }, piece) => {
      const due = asItIs.problem.pieces[piece]?.due ?? null;
      const isKept = ({ finish }: Plan) => due === null || (finish[piece] ?? Number.POSITIVE_INFINITY) <= due;
      return tag !== null && isKept(first) && !isKept(second) ? [tag] : [];
    }),
  };
}

function searchOn({ problem }: ShopProblem, warm: Plan | null): Plan {
  const search = beginSearch(problem, { seed: SEED, warm });
  search.go(ROUNDS);
  return search.found.plan;
}

function finishesOf({ problem, pieces }: ShopProblem, { finish }: Plan): Map<Tag, Instant | null> {
  return new Map(
    pieces.flatMap(({ tag }, piece): [Tag, Instant | null][] => {
      const minutes = finish[piece] ?? null;
      return tag === null ? [] : [[tag, minutes === null ? null : after(problem.origin, minutes)]];
    }),
  );
}
