import type { PlannedStart, PlanRow } from "./journal.ts";
import { newestSeq } from "./read-events.ts";
import { isRecord } from "./shape.ts";
import type { SqliteFile } from "./sqlite-file.ts";

const select = "SELECT seq, settings, air, seed, rounds, starts FROM plan";
const replace = "INSERT OR REPLACE INTO plan VALUES (1, ?, ?, ?, ?, ?, ?)";

/** @returns null when none is kept, or one whose starts cannot be read: it is derived, another will be found */
export function readPlanRow(file: SqliteFile): PlanRow | null {
  // STRICT tables: the columns have the types of PlanRow, starts but for its JSON.
  const row = file.prepare(select).get() as (Omit<PlanRow, "starts"> & { starts: string }) | undefined;
  const starts = row === undefined ? null : readStarts(row.starts);
  return row === undefined || starts === null ? null : { ...row, starts };
}

/**
 * Keeps a plan in place of the last one, unless an act was added since the event it knew.
 *
 * @returns whether it was kept
 */
export function writePlanRow(file: SqliteFile, row: PlanRow): boolean {
  const write = file.database.transaction((): boolean => {
    if (newestSeq(file) !== row.seq) return false;
    const starts = JSON.stringify(
      row.starts.map(({ tag, step, pass, part, start }) => [tag, step, pass, part, start]),
    );
    file.prepare(replace).run(row.seq, row.settings, row.air, row.seed, row.rounds, starts);
    return true;
  });
  return write.immediate();
}

function readStarts(text: string): PlannedStart[] | null {
  try {
    const rows: unknown = JSON.parse(text);
    if (!Array.isArray(rows)) return null;
    const starts = rows.map(([tag, step, pass, part, start]) => ({ tag, step, pass, part, start }));
    return starts.every(isStart) ? starts : null;
  } catch {
    return null;
  }
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
