/** That a journal can only be read, and how to mend it. */
export function sayReadOnly(folder: string): string {
  return `Nothing can be recorded: allow writing ${folder} and the journal in it, or set DRYLINE_HOME to another folder.`;
}
