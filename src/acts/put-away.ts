import type { Shop } from "../shop/shop.ts";
import { type Decision, decided } from "./decision.ts";
import { matchStation } from "./match-station.ts";
import { isRefused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/**
 * Puts away what stands at a station: the pot is off, the cup thrown out, the brush washed.
 *
 * Refuses a station at which nothing stands, or stood at that time.
 */
export function decidePutAway(request: ActOf<"put away">, shop: Shop): Decision {
  const station = matchStation(request.station, shop);
  if (isRefused(station)) return station;
  const standing = shop.stations.get(station)?.setUp;
  const stood = standing && Math.min(standing.begun ?? standing.ready, standing.ready) <= request.at;
  if (!stood) return refuse({ code: "nothing stands", station });
  return decided([{ kind: "put away", at: request.at, tag: null, station }], shop);
}
