import type { ActRequest } from "../acts/request.ts";
import type { Tag } from "../journal/event.ts";
import type { Instant } from "../time/instant.ts";

/** Take these tags up now; `step` null: the one that fits; `colour` null: the next of the scheme. */
export function takeOf(
  tags: readonly Tag[],
  step: string | null,
  at: Instant,
  colour: string | null = null,
): ActRequest {
  return { act: "take", at, tags, step, colour, anyway: null, ticked: [] };
}

/** Hang these tags now, or (as usual) when their step is usually done. */
export function hangOf(
  tags: readonly Tag[],
  at: Instant,
  said: {
    readonly asUsual?: boolean;
    readonly result?: string;
    readonly step?: string | null;
    readonly place?: string;
  } = {},
): ActRequest {
  return {
    act: "hang",
    at,
    tags,
    step: said.step ?? null,
    colour: null,
    flashOff: null,
    place: said.place ?? null,
    result: said.result ?? null,
    asUsual: said.asUsual ?? false,
    anyway: null,
    ticked: [],
  };
}

/** Hang what is in hand at this place, or move there what hangs elsewhere. */
export function hangAt(tags: readonly Tag[], place: string, hang: boolean, at: Instant): ActRequest {
  return hang ? hangOf(tags, at, { place }) : { act: "move", at, tags, place };
}
