import { mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { inAscii } from "./in-ascii.mjs";

/**
 * What was made from `stamp`, kept as JSON in the cache folder. A cache that cannot be read or written is
 * no trouble: the thing is made again.
 */
export async function cached<T>(
  folder: string,
  name: string,
  stamp: string,
  make: () => Promise<T>,
): Promise<T> {
  const path = join(folder, `${name}.json`);
  const kept = readCache(path);
  if (kept?.stamp === stamp) return kept.value as T;
  const value = await make();
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    const fresh = `${path}.${globalThis.process.pid}`;
    writeFileSync(fresh, inAscii(JSON.stringify({ stamp, value })), { mode: 0o600 });
    renameSync(fresh, path);
  } catch {
    // A read-only or full disk: the answer stands, only the next start is slower.
  }
  return value;
}

function readCache(path: string): { readonly stamp: unknown; readonly value: unknown } | null {
  try {
    return JSON.parse(readFileSync(path, "utf8")) as { stamp: unknown; value: unknown };
  } catch {
    return null;
  }
}
