import type { ActId, JournalEvent } from "../journal/event.ts";
import type { ActRecord } from "./shop.ts";

/** The acts that stand, oldest first, from live events: what undo and amend may be about. */
export function actRecords(live: readonly JournalEvent[]): readonly ActRecord[] {
  const byAct = new Map<ActId, JournalEvent[]>();
  for (const event of live) {
    const events = byAct.get(event.act);
    if (events === undefined) byAct.set(event.act, [event]);
    else events.push(event);
  }
  return [...byAct].flatMap(([act, events]) => {
    const [first] = events;
    if (first === undefined) return [];
    return {
      act,
      at: first.at,
      by: first.by,
      tags: unique(events.map(({ tag }) => tag)),
      stations: unique(events.map(({ station }) => station)),
      kinds: unique(events.map(({ kind }) => kind)),
      events,
    };
  });
}

function unique<T>(values: readonly (T | null)[]): T[] {
  const found: T[] = [];
  // An act names a handful: looking through them is quicker than a set of its own.
  for (const value of values) if (value !== null && !found.includes(value)) found.push(value);
  return found;
}
