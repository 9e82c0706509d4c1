import { createHash } from "node:crypto";
import type { ProcessDefinition, ProcessHash } from "./definition.ts";

/**
 * The name of this very version of a process: SHA-256, in hex, of its JSON with the keys of every object sorted. Two
 * files that say the same in another layout, or with keys in another order, have the same hash.
 */
export function hashProcess(definition: ProcessDefinition): ProcessHash {
  return createHash("sha256").update(sortedJson(definition)).digest("hex");
}

/** JSON whose objects have their keys in order; lists keep theirs, for steps and windows mean something by it. */
function sortedJson(value: unknown): string {
  return JSON.stringify(value, (_key, inner: unknown) => {
    if (typeof inner !== "object" || inner === null || Array.isArray(inner)) return inner;
    return Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}
