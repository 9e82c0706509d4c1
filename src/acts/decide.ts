import type { Shop } from "../shop/shop.ts";
import { decideAmend } from "./amend.ts";
import { decideChange } from "./change.ts";
import { checkThat } from "./check-value.ts";
import { decideClock } from "./clock.ts";
import type { DecideContext } from "./context.ts";
import type { Decision } from "./decision.ts";
import { decideHang } from "./hang.ts";
import { decideLeave } from "./leave.ts";
import { decideMeasure } from "./measure.ts";
import { decideMend } from "./mend.ts";
import { decideMove } from "./move.ts";
import { decideNote } from "./note.ts";
import { decidePutAway } from "./put-away.ts";
import { decideReady } from "./ready.ts";
import { refuse } from "./refuse.ts";
import type { ActRequest } from "./request.ts";
import { decideRoute } from "./route.ts";
import { decideScrap } from "./scrap.ts";
import { decideSettle } from "./settle.ts";
import { decideTag } from "./tag.ts";
import { decideTake } from "./take.ts";
import { decideTick } from "./tick.ts";
import { decideTouch } from "./touch.ts";
import { decideUndo } from "./undo.ts";

/**
 * What comes of a request: events to append, or a "no" that says what is so and what would allow it. Pure: the same
 * shop, request and context give the same answer, and nothing is written here.
 *
 * @example decide({ act: "note", at: now, tags: [14], text: "knot near the eye" }, shop, context)
 * // { events: [{ kind: "noted", tag: 14, ... }], expects: { tags: { 14: 210 }, stations: {} }, processes: [] }
 */
export function decide(request: ActRequest, shop: Shop, context: DecideContext): Decision {
  const { at } = request;
  const unfit = checkThat(Number.isSafeInteger(at), "time", at, "a moment");
  if (unfit) return unfit;
  if (at > context.now) return refuse({ code: "in the future", at, now: context.now });
  switch (request.act) {
    case "tag":
      return decideTag(request, shop);
    case "change":
      return decideChange(request, shop);
    case "route":
      return decideRoute(request, shop);
    case "take":
      return decideTake(request, shop, context);
    case "hang":
      return decideHang(request, shop, context);
    case "leave":
      return decideLeave(request, shop);
    case "touch":
      return decideTouch(request, shop);
    case "move":
      return decideMove(request, shop);
    case "mend":
      return decideMend(request, shop, context);
    case "measure":
      return decideMeasure(request, shop);
    case "scrap":
      return decideScrap(request, shop);
    case "note":
      return decideNote(request, shop);
    case "tick":
      return decideTick(request, shop, context);
    case "ready":
      return decideReady(request, shop, context);
    case "put away":
      return decidePutAway(request, shop);
    case "amend":
      return decideAmend(request, shop, context);
    case "undo":
      return decideUndo(request, shop, context);
    case "settle":
      return decideSettle(request, shop);
    case "clock":
      return decideClock(request, shop, context);
    default:
      return request satisfies never;
  }
}
