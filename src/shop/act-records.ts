import type { ActId, EventKind, JournalEvent, Tag } from "../journal/event.ts";
import type { ActRecord } from "./shop.ts";

/** A record while its events are being read. */
interface Draft extends ActRecord {
  readonly tags: Tag[];
  readonly stations: string[];
  readonly kinds: EventKind[];
  readonly events: JournalEvent[];
}

/** The acts that stand, oldest first, from live events: what undo and amend may be about. */
export function actRecords(live: readonly JournalEvent[]): readonly ActRecord[] {
  const byAct = new Map<ActId, Draft>();
  for (const event of live) {
    const { act, at, by } = event;
    let record = byAct.get(act);
    if (record === undefined) {
      record = { act, at, by, tags: [], stations: [], kinds: [], events: [] };
      byAct.set(act, record);
    }
    addOnce(record.tags, event.tag);
    addOnce(record.stations, event.station);
    addOnce(record.kinds, event.kind);
    record.events.push(event);
  }
  return [...byAct.values()];
}

/** An act names a handful: looking through them is quicker than a set of its own. */
function addOnce<T>(values: T[], value: T | null): void {
  if (value !== null && !values.includes(value)) values.push(value);
}
