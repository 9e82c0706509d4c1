import type { EventKind } from "../journal/event.ts";
import type { ActRecord, Shop } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";
import { aboutAct } from "./about-act.ts";
import { boundsOf } from "./bounds.ts";
import { isSaidMinute } from "./check-time.ts";
import type { DecideContext } from "./context.ts";
import type { Decision } from "./decision.ts";
import { nameAct } from "./name-act.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/** "That was 20:15" said of a tag is said of its work, not of a note or a name given since. */
const WORK: ReadonlySet<EventKind> = new Set<EventKind>([
  "tagged",
  "taken",
  "left",
  "hung",
  "touched",
  "moved",
  "mended",
  "scrapped",
]);

/**
 * A better time for an act. Whatever must come before or after it on its pieces and stations stays so.
 *
 * Hung 20:38 by a guess, amended to 20:45: all that counts from it moves by 7 min. Refused where the piece
 * was taken at 20:50, or went on at 20:44.
 */
export function decideAmend(request: ActOf<"amend">, shop: Shop, context: DecideContext): Decision {
  if (request.time > context.now) {
    return refuse({ code: "in the future", at: request.time, now: context.now });
  }
  const target = findTarget(request.target, shop);
  if (isRefused(target)) return target;
  const fitting = keepOrder(target, request.time, shop);
  if (isRefused(fitting)) return fitting;
  const { time } = fitting;
  if (target.events.every(({ at }) => at === time)) {
    return refuse({ code: "nothing changes", what: nameAct(target) });
  }
  return aboutAct({ kind: "amended", target: target.act, time }, target, request.at, shop);
}

/** The act meant: by its number, or the newest work on a tag. To amend an amendment, its act is amended again. */
function findTarget(target: ActOf<"amend">["target"], shop: Shop): ActRecord | Refused {
  const acts = shop.acts.filter(({ kinds }) => !kinds.includes("amended") && !kinds.includes("clock"));
  if ("act" in target) {
    return acts.find(({ act }) => act === target.act) ?? refuse({ code: "no such act", act: target.act });
  }
  const { tag } = target;
  const newest = acts.findLast(({ events }) =>
    events.some((event) => event.tag === tag && WORK.has(event.kind)),
  );
  return newest ?? refuse({ code: "no such tag", tag, known: [...shop.pieces.keys()].sort((a, b) => a - b) });
}

/** The time, perhaps later within the minute said, or what it would come out of order with. */
function keepOrder(target: ActRecord, asked: Instant, shop: Shop): { readonly time: Instant } | Refused {
  let time = asked;
  for (const { side, at, tag, what, tagging } of target.events.flatMap((event) => boundsOf(event, shop))) {
    if (side === "not after" && asked > at) {
      return refuse({ code: "after the next", tag, nextAt: at, what, at: asked });
    }
    if (side === "not before" && asked < at && !isSaidMinute(asked, at)) {
      return tagging && tag !== null
        ? refuse({ code: "before it was tagged", tag, taggedAt: at, at: asked })
        : refuse({ code: "before the last", tag, lastAt: at, what, at: asked });
    }
    if (side === "not before") time = Math.max(time, at);
  }
  return { time };
}
