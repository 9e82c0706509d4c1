import type { Tag } from "../journal/event.ts";
import { after, type Instant } from "../time/instant.ts";
import { dispatch } from "./dispatch.ts";
import { makeProblem } from "./make-problem.ts";
import { type NowContext, readShop } from "./plan-shop.ts";
import { prepareDispatch } from "./prepare-dispatch.ts";

/** When each piece would be finished, by dispatch from now on; null: not within the horizon. */
export function finishTimes(
  shop: Parameters<typeof readShop>[0],
  context: NowContext,
): ReadonlyMap<Tag, Instant | null> {
  const { problem, pieces } = makeProblem(readShop(shop, context), false);
  const { finish } = dispatch(prepareDispatch(problem));
  return new Map(
    pieces.flatMap(({ tag }, number): [Tag, Instant | null][] => {
      const minutes = finish[number] ?? null;
      return tag === null ? [] : [[tag, minutes === null ? null : after(context.now, minutes)]];
    }),
  );
}
