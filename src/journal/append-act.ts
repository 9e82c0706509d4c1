import { type Deriving, refreshPieces } from "./derive-pieces.ts";
import type { NewEvent, Seq, Tag } from "./event.ts";
import type { Append, Appended } from "./journal.ts";
import { reachOf } from "./reaches.ts";
import { newestSeq, nextTag } from "./read-events.ts";
import type { SqliteFile } from "./sqlite-file.ts";
import { newestVersion } from "./upgrades.ts";

/**
 * Writes one act in one transaction that shuts other writers out from its first look to its commit.
 *
 * @throws Error when the act leans on what is not there (our own mistake); what SQLite throws
 */
export function appendAct(file: SqliteFile, append: Append, deriving: Deriving): Appended {
  const write = file.database.transaction((): Appended => {
    if (!isAsExpected(file, append.expects)) return { kept: false };
    for (const { hash, definition } of append.processes) {
      file
        .prepare("INSERT OR IGNORE INTO process_version VALUES (?, ?)")
        .run(hash, JSON.stringify(definition));
    }
    const act = newestSeq(file) + 1;
    insertEvents(file, append, act);
    for (const event of append.events) checkLeaning(file, act, event);
    refreshPieces(file, touchedTags(file, append.events), deriving);
    return { kept: true, act, newest: newestSeq(file) };
  });
  return write.immediate();
}

/** Whether what the act believed is still so. */
function isAsExpected(file: SqliteFile, expects: Append["expects"]): boolean {
  const newestOf = (column: "tag" | "station", value: Tag | string) =>
    Number(file.prepare(`SELECT max(seq) FROM event WHERE ${column} = ?`).pluck().get(value) ?? 0);
  return (
    Object.entries(expects.tags).every(([tag, seq]) => newestOf("tag", Number(tag)) === seq) &&
    Object.entries(expects.stations).every(([station, seq]) => newestOf("station", station) === seq) &&
    (expects.nextTag === undefined || expects.nextTag === nextTag(file)) &&
    (expects.newest === undefined || expects.newest === newestSeq(file))
  );
}

/** Adds the rows of an act, inside the caller's transaction and without any check. */
export function insertEvents(file: SqliteFile, { events, by, recorded }: Append, act: Seq): void {
  for (const [index, { at, tag, station, ...body }] of events.entries()) {
    const { kind, ...said } = body;
    const alike =
      tag === null ? 1 : events.filter((other) => other.kind === kind && other.tag !== null).length;
    file
      .prepare("INSERT INTO event VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
      .run(
        act + index,
        act,
        newestVersion(kind),
        kind,
        at,
        recorded,
        by,
        tag,
        station,
        alike,
        "target" in body ? body.target : null,
        reachOf(body),
        JSON.stringify(said),
      );
  }
}

/**
 * An event must lean on what the journal holds. What undoes or amends an act must stand on each of its pieces and
 * stations, or a reading by piece would find the act but not its undoing.
 */
function checkLeaning(file: SqliteFile, act: Seq, event: NewEvent): void {
  if (event.kind === "tagged") {
    const kept = file.prepare("SELECT 1 FROM process_version WHERE hash = ?").get(event.process);
    if (kept === undefined)
      throw new Error(`piece ${event.tag} is tagged with a process that was not handed in`);
  }
  if (event.tag !== null) {
    const taggings = "SELECT count(*) FROM event WHERE tag = ? AND kind = 'tagged'";
    const times = file.prepare(taggings).pluck().get(event.tag);
    if (times === 0) throw new Error(`"${event.kind}" speaks of piece ${event.tag}, which was never tagged`);
    if (times !== 1) throw new Error(`tag ${event.tag} is given a second time`);
  }
  if (event.kind !== "undone" && event.kind !== "amended") return;
  if (event.target >= act) throw new Error(`act ${event.target} is not there to be ${event.kind}`);
  for (const column of ["tag", "station"] as const) {
    const missed = file
      .prepare(
        `SELECT DISTINCT ${column} FROM event WHERE act = :target AND ${column} IS NOT NULL
         AND ${column} NOT IN (SELECT ${column} FROM event WHERE act = :act AND target = :target AND ${column} IS NOT NULL)`,
      )
      .pluck()
      .get({ target: event.target, act });
    if (missed !== undefined)
      throw new Error(`act ${event.target} is ${event.kind} without its ${column} ${missed}`);
  }
}

/** From where on the clocks were wrong that an act speaks of, be it through what it undoes. */
const clocksSpokenOf = `
WITH RECURSIVE spoken_of (act) AS (
  VALUES (?)
  UNION SELECT event.target FROM spoken_of CROSS JOIN event USING (act) WHERE event.target IS NOT NULL
)
SELECT body ->> '$.since' FROM spoken_of CROSS JOIN event USING (act) WHERE kind = 'clock' AND json_valid(body)
`;

/** Pieces whose derived rows an act may change: a clock set right moves all that it stamped. */
function touchedTags(file: SqliteFile, events: readonly NewEvent[]): Tag[] {
  const tags = new Set<Tag>();
  for (const event of events) {
    if (event.tag !== null) tags.add(event.tag);
    if (event.kind === "clock") addTagsFrom(file, event.since, tags);
    if (event.kind === "undone" || event.kind === "amended") {
      for (const since of file.prepare(clocksSpokenOf).pluck().all(event.target)) {
        addTagsFrom(file, Number(since), tags);
      }
    }
  }
  return [...tags].sort((a, b) => a - b);
}

function addTagsFrom(file: SqliteFile, since: Seq, tags: Set<Tag>): void {
  const found = file
    .prepare("SELECT DISTINCT tag FROM event WHERE seq >= ? AND tag IS NOT NULL")
    .pluck()
    .all(since);
  for (const tag of found as Tag[]) tags.add(tag);
}
