import type { Journal } from "../journal/journal.ts";

/** That a journal can only be read, and how to mend it; empty: it can be written. */
export function sayReadOnly(
  { canWrite, isFull }: Pick<Journal, "canWrite" | "isFull">,
  folder: string,
): string {
  if (canWrite) return "";
  if (isFull)
    return `Nothing can be recorded: the disk that holds ${folder} is full; make room, then start anew.`;
  return `Nothing can be recorded: allow writing ${folder} and the journal in it, or set DRYLINE_HOME to another folder.`;
}
