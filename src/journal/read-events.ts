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
    const definitions = readDefinitions(file, events);
    const orphans = events.filter((event) => event.kind === "tagged" && !(event.process in definitions));
    return {
      newest: newestSeq(file),
      newestRecorded: recorded,
      nextTag: nextTag(file),
      events: orphans.length === 0 ? events : events.filter((event) => !orphans.includes(event)),
      definitions,
      setAside: [
        ...setAside,
        ...orphans.map(({ seq }) => ({ seq, why: "the process it was begun with is not kept here" })),
      ].sort((a, b) => a.seq - b.seq),
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
    const definition = readDefinition(file, event.process);
    if (definition !== undefined) definitions[event.process] = definition;
  }
  return definitions;
}
