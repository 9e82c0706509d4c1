import type { Instant } from "../time/instant.ts";
import type { PieceRow, StepTime } from "./journal.ts";
import type { SqliteFile } from "./sqlite-file.ts";

const newestStepTimes = `
SELECT process, step, tag, pass, minutes, at FROM step_time
WHERE process = ? AND step = ? ORDER BY at DESC, tag DESC, pass DESC LIMIT ?
`;

/** @returns the newest `most` records of a step, newest first */
export function readStepTimes(file: SqliteFile, process: string, step: string, most: number): StepTime[] {
  // STRICT tables: the columns have the types of StepTime.
  return file.prepare(newestStepTimes).all(process, step, most) as StepTime[];
}

const piecesOfSpan = `
WITH touched (tag) AS (
  SELECT tag FROM piece INDEXED BY piece_tagged WHERE tagged_at >= :from AND tagged_at < :to
  UNION SELECT tag FROM piece INDEXED BY piece_finished WHERE finished_at >= :from AND finished_at < :to
  UNION SELECT tag FROM piece INDEXED BY piece_scrapped WHERE scrapped_at >= :from AND scrapped_at < :to
)
SELECT tag, out, name, process, process_name AS processName, tagged_at AS taggedAt,
  finished_at AS finishedAt, scrapped_at AS scrappedAt
FROM touched CROSS JOIN piece USING (tag) ORDER BY tag
`;

/** @returns rows of pieces tagged, finished or scrapped from `from` to before `to`, by tag */
export function readPieces(file: SqliteFile, from: Instant, to: Instant): PieceRow[] {
  const rows = file.prepare(piecesOfSpan).all({ from, to }) as (Omit<PieceRow, "out"> & { out: number })[];
  return rows.map((row) => ({ ...row, out: row.out === 1 }));
}
