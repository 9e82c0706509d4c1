import type { EventBody, JournalEvent, Setting } from "../journal/event.ts";
import { listTags } from "../safety/list-tags.ts";
import type { ActRecord } from "../shop/shop.ts";

/** Settings whose name in the journal is not what a maker would call them. */
const SETTINGS: Partial<Record<Setting["of"], string>> = {
  hours: "bench hours",
  day: "hours of one day",
  away: "days away",
  back: "being back",
  hands: "pairs of hands",
  place: "hooks of a place",
  "in room": "what is in which room",
  touches: "whether touches count",
};

/**
 * What an event did, short, for refusals that name it.
 *
 * @example nameEvent({ kind: "left", step: "drill", pass: 1, part: "step" }) // "left drill"
 */
export function nameEvent(event: EventBody): string {
  switch (event.kind) {
    case "taken":
    case "left":
    case "hung":
      return `${event.kind} ${event.part === "step" ? event.step : `preparation for ${event.step}`}`;
    case "touched":
      return `touched ${event.found}`;
    case "moved":
      return `moved to ${event.place}`;
    case "measured":
      return `measured ${event.what}`;
    case "mended":
      return `mended: ${event.what}`;
    case "readied":
      return `readied: ${event.setUp}`;
    case "ticked":
      return `ticked ${event.caution}`;
    case "settled":
      return `settled ${SETTINGS[event.setting.of] ?? event.setting.of}`;
    default:
      return event.kind;
  }
}

/** The same of a whole act with its tags: the last of its events is what it was for. `hung seal, 1 and 2` */
export function nameAct(
  record: Pick<ActRecord, "tags"> & { readonly events: readonly JournalEvent[] },
): string {
  const main = record.events.at(-1);
  const what = main ? nameEvent(main) : "nothing";
  const tags = main?.tag === null ? [] : record.tags;
  return tags.length === 0 ? what : `${what}, ${listTags(tags)}`;
}
