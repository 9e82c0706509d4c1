import type { By, JournalEvent } from "./event.ts";
import type { SetAside } from "./journal.ts";
import { type EventRow, reviveEvent } from "./revive-event.ts";
import type { SqliteFile } from "./sqlite-file.ts";

/** The columns an EventRow is made of. */
export const EVENT_COLUMNS = 'event.seq, act, v, kind, at, recorded, "by", tag, station, together, body';

/** Their values, in that order. The tables are STRICT: every row has these types. */
type Values = [
  number,
  number,
  number,
  string,
  number,
  number,
  By,
  number | null,
  string | null,
  number,
  string,
];

/**
 * The events that a statement selects by EVENT_COLUMNS, and the rows that fit none with why; both in the order they came.
 *
 * @param parameters what the statement asks for
 */
export function readRows(
  file: SqliteFile,
  sql: string,
  ...parameters: readonly unknown[]
): {
  readonly events: JournalEvent[];
  readonly setAside: SetAside[];
} {
  const events: JournalEvent[] = [];
  const setAside: SetAside[] = [];
  // Bare values, as the driver takes longer over objects than SQLite over finding them.
  for (const values of file
    .prepare(sql)
    .raw()
    .iterate(...parameters) as Iterable<Values>) {
    const row = rowOf(values);
    const event = reviveEvent(row);
    if (typeof event !== "string") events.push(event);
    else setAside.push({ seq: row.seq, tag: row.tag, station: row.station, why: event });
  }
  return { events, setAside };
}

function rowOf([seq, act, v, kind, at, recorded, by, tag, station, together, body]: Values): EventRow {
  return { seq, act, v, kind, at, recorded, by, tag, station, together, body };
}
