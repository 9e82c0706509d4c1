import type { ProcessDefinition, ProcessHash } from "../process/definition.ts";
import { isRecord } from "./shape.ts";
import type { SqliteFile } from "./sqlite-file.ts";

/** @returns the process version kept under this hash; undefined when there is none or it is damaged */
export function readDefinition(file: SqliteFile, hash: ProcessHash): ProcessDefinition | undefined {
  const text = file.prepare("SELECT definition FROM process_version WHERE hash = ?").pluck().get(hash);
  if (typeof text !== "string") return undefined;
  try {
    const definition: unknown = JSON.parse(text);
    const whole = isRecord(definition) && Array.isArray(definition.steps) && isRecord(definition.coats);
    return whole ? (definition as unknown as ProcessDefinition) : undefined;
  } catch {
    return undefined;
  }
}
