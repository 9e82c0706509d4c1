import type { Tag } from "../journal/event.ts";
import { handsOf } from "../shop/hands.ts";
import { hookNeededUntil } from "../shop/hook.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import { sayCount, sayList } from "../words/say-list.ts";
import type { Speech } from "../words/speech.ts";
import type { Workshop } from "../workshop/workshop.ts";
import { numbered } from "./numbered.ts";
import { hangAt } from "./requests.ts";
import type { Effect, Happened } from "./state.ts";

/**
 * Asks where pieces are to hang: those in hand are hung there, the place that their step names first, others are moved
 * there. Each place with its hooks; one not in the list is typed.
 */
export async function askPlace(tags: readonly Tag[], workshop: Workshop, speech: Speech): Promise<Happened> {
  const shop = await workshop.shop({ of: "tags", tags });
  const pieces = tags.flatMap((tag) => shop.pieces.get(tag) ?? []);
  const hang = pieces.length > 0 && pieces.every((piece) => handsOf(piece).running !== null);
  const title = `${hang ? "Hang" : "Move"} ${sayList(tags)} where?`;
  const meant = hang ? pieces.map(placeMeant) : [];
  const places = placesOf(shop).toSorted((a, b) => Number(meant.includes(b)) - Number(meant.includes(a)));
  const choices = numbered(places, (place) => ({
    label: `${place}${meant.includes(place) ? ", as its step says" : ""}${sayHooks(place, shop, speech)}`,
    effect: { do: "perform", request: hangAt(tags, place, hang, speech.now) },
  }));
  const other: Effect = { do: "type", title: "Name of the place", purpose: { for: "place", tags, hang } };
  return {
    is: "overlay",
    overlay: {
      is: "choose",
      title,
      lines: [],
      choices: [...choices, { key: "o", label: "o  another place", effects: [other] }],
    },
  };
}

/** Where the step in hand says that a piece is to hang; null: it says nothing. */
function placeMeant(piece: Piece): string | null {
  const step = handsOf(piece).running?.step;
  return piece.route.find(({ name }) => name === step)?.place ?? null;
}

/** The places that were named with their hooks, those that steps name, and those where something hangs. */
function placesOf({ settings, pieces }: Shop): readonly string[] {
  const all = [...pieces.values()].filter(({ end }) => end === null);
  const named = all.flatMap(({ route, place }) => [place, ...route.map((step) => step.place)]);
  return [...new Set([...settings.places.keys(), ...named.filter((place) => place !== null)])].sort();
}

/** `, 2 hooks free`; nothing for a place whose hooks nobody has counted. */
function sayHooks(place: string, { settings, pieces }: Shop, { now }: Speech): string {
  const hooks = settings.places.get(place)?.hooks;
  if (hooks === undefined) return "";
  const taken = [...pieces.values()].filter(
    (piece) => piece.place === place && (hookNeededUntil(piece, now) ?? 0) > now,
  );
  return `, ${sayCount(Math.max(0, hooks - taken.length), "hook")} free`;
}
