import { CLEARED, roomClears, ventilationOf } from "../safety/rooms.ts";
import type { Settings } from "../shop/shop.ts";
import { sayWait } from "./say-time.ts";

/** What the figure of a room is and is not: told wherever one is. */
export const MIXING_ALONE =
  "That is a reckoning of mixing, no measurement: it never means that the air is safe to breathe.";

/**
 * How long a room takes to clear, with what that figure is and is not; nothing for a room nobody told of.
 *
 * @example "paint room clears of 99 % of a vapour in 3 h 04 once nothing more is given off; its mixing is not known and taken as poor"
 */
export function sayClearing(settings: Pick<Settings, "rooms" | "roomOf">, room: string): readonly string[] {
  const minutes = roomClears(settings, room);
  const ventilation = ventilationOf(settings, room);
  if (minutes === null || ventilation === null) return [];
  const poor = ventilation.isKnown ? "" : "; what is not known of its ventilation is taken as poor";
  return [
    `${room} clears of ${CLEARED * 100} % of a vapour in ${sayWait(minutes)} once nothing more is given off${poor}.`,
    MIXING_ALONE,
  ];
}
