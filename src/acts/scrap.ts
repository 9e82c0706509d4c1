import type { NewEvent } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import { checkTime } from "./check-time.ts";
import { checkText } from "./check-value.ts";
import { type Decision, decided } from "./decision.ts";
import { findPieces, refuseEnded } from "./find-pieces.ts";
import { isRefused } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/**
 * Gives pieces up, in whatever state, finished ones too.
 *
 * Refuses what is scrapped or gone already.
 */
export function decideScrap(request: ActOf<"scrap">, shop: Shop): Decision {
  const pieces = findPieces(request.tags, shop);
  if (isRefused(pieces)) return pieces;
  const refused =
    checkText("why", request.why) ?? refuseEnded(pieces.filter(({ end }) => end?.how !== "finished"));
  if (refused) return refused;
  const time = checkTime(
    request.at,
    pieces.map((piece) => ({ piece, concern: "piece" })),
    shop,
  );
  if (isRefused(time)) return time;
  const why = request.why.trim();
  return decided(
    pieces.map(({ tag }): NewEvent => ({ kind: "scrapped", at: time.at, tag, station: null, why })),
    shop,
  );
}
