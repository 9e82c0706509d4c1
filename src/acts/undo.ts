import type { Shop } from "../shop/shop.ts";
import { aboutAct } from "./about-act.ts";
import type { DecideContext } from "./context.ts";
import type { Decision } from "./decision.ts";
import { leansOn } from "./leans-on.ts";
import { nameAct } from "./name-act.ts";
import { refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/**
 * Takes an act back: the newest of the maker's that stands, or an older one that nothing later leans on. What was
 * undone no longer stands and cannot be undone again.
 *
 * Three notes, then undo three times: the third, the second, the first.
 */
export function decideUndo(request: ActOf<"undo">, shop: Shop, context: DecideContext): Decision {
  const mine = shop.acts.filter(({ by }) => by === context.by);
  const target = request.target === null ? mine.at(-1) : mine.find(({ act }) => act === request.target);
  if (!target) {
    return request.target === null
      ? refuse({ code: "nothing to undo" })
      : refuse({ code: "no such act", act: request.target });
  }
  // The newest of them, for nothing leans on that: what is told to be undone first can be.
  const leaning = shop.acts.findLast((later) => later.act > target.act && leansOn(later, target, shop));
  if (leaning) {
    return refuse({
      code: "leaned on",
      act: target.act,
      byAct: leaning.act,
      what: nameAct(target),
      byWhat: nameAct(leaning),
    });
  }
  return aboutAct({ kind: "undone", target: target.act }, target, request.at, shop);
}
