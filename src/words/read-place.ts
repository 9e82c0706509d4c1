import type { ProcessDefinition } from "../process/definition.ts";
import { OWN_ROOM, type Shop } from "../shop/shop.ts";
import { matchIn } from "./match-in.ts";

/** The place that was named, of those that processes, pieces or settings name; or what is wrong with the name. */
export function readPlace(
  said: string,
  processes: readonly { readonly definition: ProcessDefinition }[],
  shop: Shop,
): { readonly found: string } | { readonly problem: string } {
  const pieces = [...shop.pieces.values()];
  const named = [
    ...processes.flatMap(({ definition }) => definition.steps),
    ...pieces.flatMap(({ route }) => route),
    ...pieces,
  ].map(({ place }) => place);
  const places = new Set([...named, ...shop.settings.places.keys(), ...shop.settings.statedAir.keys()]);
  const known = [...places].filter((place) => place !== null);
  const found = matchIn("place", said, known, (place) => place);
  if ("found" in found) return found;
  return { problem: `${found.problem}; settings place "${said}" 4 makes it one, of 4 hooks` };
}

/** The same for where the air was read; null: the shop itself, of which no place needs to be named. */
export function readPlaceOfAir(
  said: string,
  processes: readonly { readonly definition: ProcessDefinition }[],
  shop: Shop,
): { readonly found: string | null } | { readonly problem: string } {
  const read = readPlace(said, processes, shop);
  const isShop = [OWN_ROOM, "shop"].includes(said.trim().toLowerCase());
  return "problem" in read && isShop ? { found: null } : read;
}
