import type { Instant } from "../time/instant.ts";
import { MINUTE } from "../time/instant.ts";
import type { JournalEvent } from "./event.ts";
import { EVENT_COLUMNS, readRows } from "./event-rows.ts";
import type { SqliteFile } from "./sqlite-file.ts";

const clockEvents = `
WITH RECURSIVE clock_act (act) AS (
  SELECT act FROM event WHERE kind = 'clock' AND reaches IS NOT NULL
  UNION
  SELECT event.act FROM clock_act CROSS JOIN event ON event.target = clock_act.act
)
SELECT ${EVENT_COLUMNS} FROM clock_act CROSS JOIN event USING (act) WHERE tag IS NULL ORDER BY event.seq
`;

/** Every clock found wrong, and what undoes or amends that; in seq order. Few, and none in most journals. */
export function readClockEvents(file: SqliteFile): readonly JournalEvent[] {
  return readRows(file, clockEvents).events;
}

/**
 * The latest moment anything was written down, with wrong clocks set right.
 *
 * @returns null for an empty journal
 */
export function newestRecorded(file: SqliteFile): Instant | null {
  const clocks = liveClocks(readClockEvents(file));
  const backward = file.prepare("SELECT seq, recorded FROM event WHERE recorded >= 0 ORDER BY recorded DESC");
  let newest: Instant | null = null;
  for (const row of backward.iterate() as Iterable<{ seq: number; recorded: Instant }>) {
    if (newest !== null && row.recorded <= newest) break;
    const tooLate = clocks
      .filter(({ seq, since }) => since <= row.seq && row.seq < seq)
      .reduce((sum, { minutes }) => sum + minutes, 0);
    newest = Math.max(newest ?? 0, row.recorded - tooLate * MINUTE);
    if (tooLate === 0) break;
  }
  return newest;
}

function liveClocks(events: readonly JournalEvent[]) {
  const undone = new Set<number>();
  // Backward, as an undone that is itself undone has no effect.
  for (const event of events.toReversed()) {
    if (event.kind === "undone" && !undone.has(event.act)) undone.add(event.target);
  }
  return events.filter((event) => event.kind === "clock").filter(({ act }) => !undone.has(act));
}
