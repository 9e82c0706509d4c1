import type { JournalEvent } from "./event.ts";
import { type EventRow, reviveEvent } from "./revive-event.ts";

/** The columns an EventRow is made of. */
export const EVENT_COLUMNS = 'event.seq, act, v, kind, at, recorded, "by", tag, station, together, body';

/** The rows that are events, and those that fit none with why; both in the order they came. */
export function reviveRows(rows: Iterable<unknown>): {
  readonly events: JournalEvent[];
  readonly setAside: { readonly seq: number; readonly why: string }[];
} {
  const events: JournalEvent[] = [];
  const setAside: { seq: number; why: string }[] = [];
  // The tables are STRICT: every row has these columns in these types.
  for (const row of rows as Iterable<EventRow>) {
    const event = reviveEvent(row);
    if (typeof event === "string") setAside.push({ seq: row.seq, why: event });
    else events.push(event);
  }
  return { events, setAside };
}
