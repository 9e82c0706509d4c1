import { clearingTime, UNKNOWN_VENTILATION, type Ventilation } from "../cure/room-clearing.ts";
import { OWN_ROOM, type Settings } from "../shop/shop.ts";
import type { Minutes } from "../time/instant.ts";

type Rooms = Pick<Settings, "rooms" | "roomOf">;

/** What hangs in the air of a room until its air has changed; dust settles, and heat goes with the pot. */
const AIRBORNE: readonly string[] = ["solvent vapour", "lead fume", "isocyanate", "mist"];

/**
 * The share that must have gone before a room counts as clear of what was given off: 99 %, the level of the CDC's table.
 * A figure of mixing alone: it measures nothing, and never means that air is safe to breathe.
 */
export const CLEARED = 0.99;

/** The room of a station or a place. */
export function roomOf({ roomOf: rooms }: Rooms, name: string | null): string {
  return (name === null ? undefined : rooms.get(name)) ?? OWN_ROOM;
}

/** How a room changes its air, where the maker has told of the room; what is not known of it is taken as poor. */
export function ventilationOf(
  { rooms }: Rooms,
  room: string,
): (Ventilation & { readonly isKnown: boolean }) | null {
  const told = rooms.get(room);
  if (told === undefined) return null;
  return {
    airChangesPerHour: told.airChangesPerHour ?? UNKNOWN_VENTILATION.airChangesPerHour,
    mixingFactor: told.mixingFactor ?? UNKNOWN_VENTILATION.mixingFactor,
    isKnown: told.airChangesPerHour !== null && told.mixingFactor !== null,
  };
}

/** Minutes after which a room has cleared of what was given off in it; null: nobody told of the room. */
export function roomClears(settings: Rooms, room: string): Minutes | null {
  const ventilation = ventilationOf(settings, room);
  return ventilation === null ? null : Math.ceil(clearingTime(ventilation, CLEARED));
}

/**
 * Minutes after the work for which something given off must be reckoned with: as long as the file says, and where the
 * room's air changes are told, at least until it has cleared.
 */
export function lastsInRoom(settings: Rooms, room: string, what: string, lasts: Minutes): Minutes {
  const clears = AIRBORNE.includes(what) ? roomClears(settings, room) : null;
  return Math.max(lasts, clears ?? 0);
}
