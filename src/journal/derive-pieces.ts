import type { ProcessDefinition, ProcessHash } from "../process/definition.ts";
import type { JournalEvent, Tag } from "./event.ts";
import { EVENT_COLUMNS, readRows } from "./event-rows.ts";
import type { PieceSummary, Summarise } from "./journal.ts";
import { readClockEvents } from "./read-clocks.ts";
import { readDefinition } from "./read-definition.ts";
import type { SqliteFile } from "./sqlite-file.ts";

/** Which derived rows to make, and by which reckoning. */
export interface Deriving {
  readonly summarise: Summarise;
  /** Raised when `summarise` makes other rows of the same events. */
  readonly summaryVersion: number;
}

/**
 * Makes all derived rows anew if another reckoning made them: a newer program's first start, or after an older one
 * has written into a newer one's file.
 */
export function bringDerivedUpToDate(file: SqliteFile, deriving: Deriving): void {
  const isStale = () => derivedVersion(file) !== deriving.summaryVersion;
  if (!isStale()) return;
  const bring = file.database.transaction(() => {
    // Of several programs started together, one does it and the others, having waited, need not.
    if (isStale()) rebuildRows(file, deriving);
  });
  bring.immediate();
}

/** Makes every derived row anew from the events. */
export function rebuildPieces(file: SqliteFile, deriving: Deriving): void {
  file.database.transaction(() => rebuildRows(file, deriving)).immediate();
}

function rebuildRows(file: SqliteFile, { summarise, summaryVersion }: Deriving): void {
  file.prepare("DELETE FROM piece").run();
  file.prepare("DELETE FROM step_time").run();
  const tags = file
    .prepare("SELECT DISTINCT tag FROM event WHERE tag IS NOT NULL ORDER BY tag")
    .pluck()
    .all();
  derivePieces(file, tags as Tag[], summarise);
  file.prepare("UPDATE derived SET version = ?").run(summaryVersion);
}

/**
 * Makes the rows of the pieces an act touched, in the act's own transaction. In a file that a newer program has
 * derived its way, it marks the derived rows as to be made anew: the two reckonings must not mix.
 */
export function refreshPieces(file: SqliteFile, tags: readonly Tag[], deriving: Deriving): void {
  derivePieces(file, tags, deriving.summarise);
  if (derivedVersion(file) !== deriving.summaryVersion) file.prepare("UPDATE derived SET version = 0").run();
}

function derivedVersion(file: SqliteFile): number {
  return Number(file.prepare("SELECT version FROM derived").pluck().get());
}

const eventsOfPiece = `SELECT ${EVENT_COLUMNS} FROM event WHERE tag = ? ORDER BY seq`;

function derivePieces(file: SqliteFile, tags: readonly Tag[], summarise: Summarise): void {
  const clocks = readClockEvents(file);
  const definitions = new Map<ProcessHash, ProcessDefinition>();
  const find = (hash: ProcessHash) => {
    const found = definitions.get(hash) ?? readDefinition(file, hash);
    definitions.set(hash, found);
    return found;
  };
  for (const tag of tags) {
    const { events } = readRows(file, eventsOfPiece, tag);
    writeSummary(file, tag, summarise(tag, mergeBySeq(events, clocks), find));
  }
}

function mergeBySeq(
  events: readonly JournalEvent[],
  clocks: readonly JournalEvent[],
): readonly JournalEvent[] {
  return clocks.length === 0 ? events : [...events, ...clocks].sort((a, b) => a.seq - b.seq);
}

function writeSummary(file: SqliteFile, tag: Tag, summary: PieceSummary | null): void {
  file.prepare("DELETE FROM piece WHERE tag = ?").run(tag);
  file.prepare("DELETE FROM step_time WHERE tag = ?").run(tag);
  if (summary === null) return;
  const { row, stepTimes } = summary;
  file
    .prepare("INSERT INTO piece VALUES (?, ?, ?, ?, ?, ?, ?, ?)")
    .run(
      tag,
      row.out ? 1 : 0,
      row.name,
      row.process,
      row.processName,
      row.taggedAt,
      row.finishedAt,
      row.scrappedAt,
    );
  for (const time of stepTimes) {
    file
      .prepare("INSERT INTO step_time VALUES (?, ?, ?, ?, ?, ?)")
      .run(tag, time.process, time.step, time.pass, time.minutes, time.at);
  }
}
