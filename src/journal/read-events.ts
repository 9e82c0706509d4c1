import type { ProcessDefinition, ProcessHash } from "../process/definition.ts";
import type { JournalEvent, Seq } from "./event.ts";
import { EVENT_COLUMNS, readRows } from "./event-rows.ts";
import type { Reading, Wanted } from "./journal.ts";
import { newestRecorded } from "./read-clocks.ts";
import { readDefinition } from "./read-definition.ts";
import {
  chooseEvents,
  DATED_SETTING_MILLISECONDS,
  RECENT_MILLISECONDS,
  TOLD_EVENTS,
} from "./select-events.ts";
import type { SqliteFile } from "./sqlite-file.ts";

/** Reads what is wanted, as it stood at one moment even while other programs append. */
export function readEvents(file: SqliteFile, wanted: Wanted): Reading {
  return file.database.transaction(() => {
    const recorded = newestRecorded(file);
    const { events, setAside } =
      wanted.of === "all"
        ? readRows(file, `SELECT ${EVENT_COLUMNS} FROM event ORDER BY seq`)
        : readRows(file, TOLD_EVENTS, JSON.stringify(choose(file, wanted, recorded ?? 0)));
    return {
      newest: newestSeq(file),
      newestRecorded: recorded,
      nextTag: nextTag(file),
      events,
      definitions: readDefinitions(file, events),
      setAside,
    };
  })();
}

/** @returns 0 for an empty journal */
export function newestSeq(file: SqliteFile): Seq {
  return Number(file.prepare("SELECT max(seq) FROM event").pluck().get() ?? 0);
}

/** One more than any tag ever given, undone or not: a number is never given twice. */
export function nextTag(file: SqliteFile): number {
  return 1 + Number(file.prepare("SELECT max(tag) FROM event WHERE tag IS NOT NULL").pluck().get() ?? 0);
}

function choose(file: SqliteFile, wanted: Exclude<Wanted, { of: "all" }>, recorded: number): unknown[] {
  return file
    .prepare(chooseEvents(wanted.of))
    .pluck()
    .all(parametersOf(file, wanted, recorded));
}

function parametersOf(file: SqliteFile, wanted: Exclude<Wanted, { of: "all" }>, recorded: number) {
  const span = wanted.of === "span" ? { from: wanted.from, to: wanted.to } : { from: 0, to: 0 };
  const recentAt = recorded - RECENT_MILLISECONDS;
  const firstRecent = "SELECT seq FROM event WHERE recorded >= ? ORDER BY recorded LIMIT 1";
  return {
    ...span,
    wantedTags: JSON.stringify(wanted.of === "tags" ? wanted.tags : []),
    wantedActs: JSON.stringify(wanted.of === "acts" ? wanted.acts : []),
    recentAt,
    recentSeq: Number(file.prepare(firstRecent).pluck().get(recentAt) ?? 0),
    settingsFrom:
      Math.min(recorded, wanted.of === "span" ? wanted.from : recorded) - DATED_SETTING_MILLISECONDS,
  };
}

function readDefinitions(file: SqliteFile, events: readonly JournalEvent[]) {
  const definitions: Record<ProcessHash, ProcessDefinition> = {};
  for (const event of events) {
    if (event.kind !== "tagged" || event.process in definitions) continue;
    definitions[event.process] = readDefinition(file, event.process);
  }
  return definitions;
}
