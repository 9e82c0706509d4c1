import { NO_PLACE } from "../cure/hanging-air.ts";
import { LEAD, LEAD_SETTING } from "../cure/lead.ts";
import { potLife } from "../cure/pot-life.ts";
import type { Shop } from "../shop/shop.ts";
import { OWN_ROOM } from "../shop/shop.ts";
import { sayClearing } from "./say-room.ts";
import { sayWait } from "./say-time.ts";
import { sayCelsius, sayReading } from "./say-units.ts";
import type { Speech } from "./speech.ts";

/**
 * Melting or casting lead above it is a lead process by law whatever the pot's size: Victoria (Australia), Occupational
 * Health and Safety Regulations 2017, reg. 178. The clearest threshold published.
 */
const HOTTEST_POT = 450;

const IN_THE_AIR: readonly string[] = ["solvent vapour", "isocyanates", "airbrush mist", "molten lead"];

/**
 * What is reckoned for this shop today beside a caution's own text: the pot's temperature with the published threshold,
 * how long the room takes to clear, how long a cup of what hangs or is in hand keeps.
 */
export function sayReckoned(caution: string, shop: Shop, speech: Speech): readonly string[] {
  return [
    ...(caution === "molten lead" ? sayPot(speech) : []),
    ...(IN_THE_AIR.includes(caution) ? sayRooms(shop) : []),
    ...(caution === "epoxy" || caution === "isocyanates" ? sayCups(shop, speech) : []),
  ];
}

function sayPot(speech: Speech): readonly string[] {
  const melts = sayCelsius(Math.round(LEAD.meltsAtCelsius), speech);
  return [
    `lead melts at ${melts}, and a pour stays that hot until each gram has given off ${Math.round(LEAD_SETTING)} J: it burns long after it looks set`,
    `keep the pot below ${sayCelsius(HOTTEST_POT, speech)}: above it melting lead is a lead process by law in Victoria, Australia (OHS Regulations 2017, reg. 178), and fume rises steeply from there`,
  ];
}

function sayRooms(shop: Shop): readonly string[] {
  const rooms = new Set([OWN_ROOM, ...shop.settings.rooms.keys()]);
  const told = [...rooms].flatMap((room) => sayClearing(shop.settings, room));
  return told.length > 0
    ? told
    : ["how long the room takes to clear is not known: dryline settings room tells it"];
}

/** Cups of the coats of what is out, as they keep in today's air; nothing where the air is not known. */
function sayCups(shop: Shop, speech: Speech): readonly string[] {
  const air = shop.air.at(NO_PLACE, speech.now);
  if (air === null) return [];
  const cups = new Map<string, string>();
  for (const { end, route, coats } of shop.pieces.values()) {
    for (const { coat, setUp } of end === null ? route : []) {
      const laid = coat === null ? undefined : coats[coat];
      if (laid === undefined || setUp?.keeps.way !== "mix") continue;
      const keeps = sayWait(potLife(laid, setUp.keeps.minutes, air));
      cups.set(
        laid.name,
        `a cup of ${laid.name} keeps about ${keeps} at ${sayReading(air.celsius, speech)} (predicted)`,
      );
    }
  }
  return [...cups.values()];
}
