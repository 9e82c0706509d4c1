import { appendAir, newestAir, readAir, readAirByHour } from "./air-rows.ts";
import { appendAct } from "./append-act.ts";
import { readCureTests, writeCureTests } from "./cure-test-rows.ts";
import { bringDerivedUpToDate, type Deriving, rebuildPieces } from "./derive-pieces.ts";
import type { Journal } from "./journal.ts";
import { readPlanRow, writePlanRow } from "./plan-row.ts";
import { readPieces, readStepTimes } from "./read-derived.ts";
import { readEvents } from "./read-events.ts";
import { openFile } from "./sqlite-file.ts";
import { diskFull, explainError, JournalTrouble } from "./trouble.ts";

/**
 * Opens the journal kept in one SQLite file, making an empty one where there is none. Several programs may have it
 * open at once. Each call is done when it returns its promise: no transaction is held across an `await`.
 *
 * @param deriving what is kept beside the events, made by the rooms above
 * @throws JournalTrouble when the file cannot be used
 * @example const journal = await openJournal("/home/me/.local/share/dryline/journal.db", { summarise, summaryVersion });
 */
export async function openJournal(path: string, deriving: Deriving): Promise<Journal> {
  const file = openFile(path);
  const explained = <Answer>(work: () => Answer): Answer => {
    try {
      return work();
    } catch (error) {
      const trouble = explainError(error, file.path);
      const isRefused = trouble instanceof JournalTrouble && trouble.code === "read only";
      throw isRefused && file.isFull ? diskFull(file.path) : trouble;
    }
  };
  try {
    explained(() => {
      bringDerivedUpToDate(file, deriving);
      // What is read in memory would take acts and forget them.
      if (!file.canWrite) file.database.pragma("query_only = ON");
    });
  } catch (error) {
    file.database.close();
    throw error;
  }
  let ownAppends = 0;
  return {
    canWrite: file.canWrite,
    isFull: file.isFull,
    async append(append) {
      const { checkAct } = await import("./check-act.ts");
      checkAct(append.events);
      const appended = explained(() => appendAct(file, append, deriving));
      if (appended.kept) ownAppends++;
      return appended;
    },
    async read(wanted) {
      return explained(() => readEvents(file, wanted));
    },
    async stepTimes(process, step, most) {
      return explained(() => readStepTimes(file, process, step, most));
    },
    async pieces(from, to) {
      return explained(() => readPieces(file, from, to));
    },
    async plan() {
      return explained(() => readPlanRow(file));
    },
    async keepPlan(row) {
      return file.canWrite && explained(() => writePlanRow(file, row));
    },
    async cureTests(from) {
      return explained(() => readCureTests(file, from));
    },
    async keepCureTests(tags, tests) {
      explained(() => writeCureTests(file, tags, tests));
    },
    async appendAir(readings, by, recorded) {
      const kept = explained(() => appendAir(file, readings, by, recorded));
      if (kept > 0) ownAppends++;
      return kept;
    },
    async air(from, to) {
      return explained(() => readAir(file, from, to));
    },
    async airByHour(from) {
      return explained(() => readAirByHour(file, from));
    },
    async newestAir() {
      return explained(() => newestAir(file));
    },
    async rebuild() {
      explained(() => rebuildPieces(file, deriving));
    },
    version() {
      // SQLite counts other connections' commits, we our own; both only rise, so their sum changes with either.
      return ownAppends + Number(explained(() => file.prepare("PRAGMA data_version").pluck().get()));
    },
    close() {
      file.database.close();
    },
  };
}
