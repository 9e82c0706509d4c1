import type { Shop } from "../shop/shop.ts";
import { matchName } from "./match-name.ts";
import { type Refused, refuse } from "./refuse.ts";

/** The station a name said in a hurry means: one that something stands at, or that a piece's route works at. */
export function matchStation(said: string, shop: Shop): string | Refused {
  const worked = [...shop.pieces.values()].flatMap(({ route }) => route.map(({ station }) => station));
  const stations = [...new Set([...shop.stations.keys(), ...worked])].sort();
  const match = matchName(said, stations);
  return "found" in match ? match.found : refuse({ code: "no such station", station: said, stations });
}
