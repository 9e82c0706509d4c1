/** What can be wrong with the place where the journal is kept. */
export type TroubleCode =
  | "newer schema"
  | "not a journal"
  | "damaged"
  | "cannot open"
  | "read only"
  | "disk full"
  | "locked"
  | "missing binary";

/** The journal cannot be used. Its message is one sentence for the maker: what, where, and how to mend it. */
export class JournalTrouble extends Error {
  override readonly name = "JournalTrouble";
  readonly code: TroubleCode;

  constructor(code: TroubleCode, sentence: string, cause?: unknown) {
    super(sentence, { cause });
    this.code = code;
  }
}

/** SQLite's own result codes, as the driver spells them, longest known prefix first where two fit. */
const sentences: readonly (readonly [prefix: string, code: TroubleCode, say: (path: string) => string])[] = [
  [
    "SQLITE_NOTADB",
    "not a journal",
    (path) => `${path} is not a dryline journal: put its backup there, or move it away to start a new one.`,
  ],
  [
    "SQLITE_CORRUPT",
    "damaged",
    (path) =>
      `The journal ${path} is damaged: put its newest backup in its place; the damaged one was not changed.`,
  ],
  ["SQLITE_FULL", "disk full", sayFull],
  // No room for the index of the log, which SQLite makes as it opens the file.
  ["SQLITE_IOERR_SHMSIZE", "disk full", sayFull],
  [
    "SQLITE_READONLY",
    "read only",
    (path) =>
      `The journal ${path} cannot be written: allow writing it and its folder, or set DRYLINE_HOME to a folder that can be.`,
  ],
  [
    "SQLITE_BUSY",
    "locked",
    (path) =>
      `Another program has held the journal ${path} for too long: close it, or wait, and do it again.`,
  ],
  [
    "SQLITE_CANTOPEN",
    "cannot open",
    (path) =>
      `The journal ${path} cannot be opened: see that it is a file, and that you may read and write it and its folder.`,
  ],
  [
    "SQLITE_IOERR",
    "cannot open",
    (path) =>
      `The disk failed while the journal ${path} was read or written: look to the disk, then do it again.`,
  ],
];

/** Why nothing is written where the disk has no room. */
export function diskFull(path: string): JournalTrouble {
  return new JournalTrouble("disk full", sayFull(path));
}

function sayFull(path: string): string {
  return `The disk that holds ${path} is full: make room and do it again; nothing of this act was written.`;
}

/** Node's codes for a folder or a file that cannot be made or read, as SQLite's. */
const sameAs: Readonly<Record<string, string>> = {
  EACCES: "SQLITE_CANTOPEN",
  EPERM: "SQLITE_CANTOPEN",
  EISDIR: "SQLITE_CANTOPEN",
  ENOTDIR: "SQLITE_CANTOPEN",
  EEXIST: "SQLITE_CANTOPEN",
  EROFS: "SQLITE_READONLY",
  ENOSPC: "SQLITE_FULL",
  EDQUOT: "SQLITE_FULL",
  EIO: "SQLITE_IOERR",
};

/**
 * Turns what SQLite, its driver or the file system threw into a JournalTrouble.
 *
 * @returns the error itself when it is none of these: then it is our own mistake
 */
export function explainError(error: unknown, path: string): unknown {
  if (error instanceof JournalTrouble || !(error instanceof Error)) return error;
  const given = "code" in error && typeof error.code === "string" ? error.code : "";
  const code = sameAs[given] ?? given;
  if (isMissingBinary(error, code)) {
    return new JournalTrouble(
      "missing binary",
      'SQLite was not built for this Node: run "npm ci" in the folder dryline was installed in.',
      error,
    );
  }
  const known = sentences.find(([prefix]) => code.startsWith(prefix));
  return known === undefined ? error : new JournalTrouble(known[1], known[2](path), error);
}

/** The driver looks for its native part only when a file is opened, and says so in three ways. */
function isMissingBinary(error: Error, code: string): boolean {
  return (
    code === "ERR_DLOPEN_FAILED" ||
    code === "MODULE_NOT_FOUND" ||
    error.message.startsWith("Could not locate the bindings file")
  );
}
