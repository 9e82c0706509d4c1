import type { ProcessDefinition, ProcessHash } from "../process/definition.ts";
import { isSoundDefinition } from "./definition-shape.ts";
import type { SqliteFile } from "./sqlite-file.ts";
import { JournalTrouble } from "./trouble.ts";

/**
 * The process version kept under a hash.
 *
 * @throws JournalTrouble "damaged" where there is none or it cannot be worked by: pieces without their process would be
 * missing from every answer
 */
export function readDefinition(file: SqliteFile, hash: ProcessHash): ProcessDefinition {
  const text = file.prepare("SELECT definition FROM process_version WHERE hash = ?").pluck().get(hash);
  const definition = parse(text);
  if (isSoundDefinition(definition)) return definition;
  throw new JournalTrouble(
    "damaged",
    `A process that pieces were begun with is damaged in the journal ${file.path}: put its newest backup in its place; the damaged one was not changed.`,
  );
}

function parse(text: unknown): unknown {
  try {
    return JSON.parse(String(text));
  } catch {
    return null;
  }
}
