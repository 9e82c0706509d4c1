import type { Leaving, LeftRow, PlannedStart, PlanRow } from "./journal.ts";
import { newestSeq } from "./read-events.ts";
import { isRecord } from "./shape.ts";
import type { SqliteFile } from "./sqlite-file.ts";

const select = "SELECT seq, settings, air, seed, rounds, starts, leaving FROM plan";
const replace = "INSERT OR REPLACE INTO plan VALUES (1, ?, ?, ?, ?, ?, ?, ?)";

/** @returns null when none is kept, or one whose JSON cannot be read: it is derived, another will be found */
export function readPlanRow(file: SqliteFile): PlanRow | null {
  // STRICT tables: the columns have the types of PlanRow, but for their JSON.
  const row = file.prepare(select).get() as
    | (Omit<PlanRow, "starts" | "leaving"> & { starts: string; leaving: string })
    | undefined;
  if (row === undefined) return null;
  const starts = readJson(row.starts, readStarts);
  const leaving = readJson(row.leaving, readLeaving);
  return starts === null || leaving === null ? null : { ...row, starts, leaving };
}

/**
 * Keeps a plan in place of the last one, unless an act was added since the event it knew.
 *
 * @returns whether it was kept
 */
export function writePlanRow(file: SqliteFile, row: PlanRow): boolean {
  const write = file.database.transaction((): boolean => {
    if (newestSeq(file) !== row.seq) return false;
    // Thousands of starts: lists of values are a third as long as objects.
    const starts = row.starts.map(({ tag, step, pass, part, start }) => [tag, step, pass, part, start]);
    const { seq, settings, air, seed, rounds, leaving } = row;
    file
      .prepare(replace)
      .run(seq, settings, air, seed, rounds, JSON.stringify(starts), JSON.stringify(leaving));
    return true;
  });
  return write.immediate();
}

function readJson<T>(text: string, read: (value: unknown) => T | null): T | null {
  try {
    return read(JSON.parse(text));
  } catch {
    return null;
  }
}

function readStarts(rows: unknown): PlannedStart[] | null {
  if (!Array.isArray(rows)) return null;
  const starts = rows.map(([tag, step, pass, part, start]) => ({ tag, step, pass, part, start }));
  return starts.every(isStart) ? starts : null;
}

function readLeaving(value: unknown): Leaving | null {
  const isWhole = isRecord(value) && Number.isInteger(value.until) && Array.isArray(value.work);
  return isWhole && (value.work as unknown[]).every(isLeft) ? (value as unknown as Leaving) : null;
}

const parts: readonly unknown[] = ["step", "preparation", "mend", "again"];

function isStart(start: unknown): start is PlannedStart {
  return (
    isRecord(start) &&
    Number.isInteger(start.tag) &&
    typeof start.step === "string" &&
    Number.isInteger(start.pass) &&
    parts.includes(start.part) &&
    Number.isInteger(start.start)
  );
}

function isLeft(left: unknown): left is LeftRow {
  return (
    isRecord(left) &&
    typeof left.key === "string" &&
    Number.isInteger(left.amends) &&
    Array.isArray(left.finish) &&
    left.finish.every(([tag, at]) => Number.isInteger(tag) && (at === null || Number.isInteger(at)))
  );
}
