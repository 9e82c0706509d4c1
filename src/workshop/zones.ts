import type { Zone } from "../time/zone.ts";
import { cached } from "./cache.ts";

/**
 * The table of a named zone, kept in the cache: making it starts Intl and costs tens of milliseconds. It is
 * made again when Node brings another time-zone database. Null: no such zone.
 */
export async function zoneNamed(cacheFolder: string, name: string): Promise<Zone | null> {
  const database = globalThis.process.versions.tz ?? globalThis.process.version;
  const file = `zone-${name.replaceAll(/[^A-Za-z0-9+-]/g, "_")}`;
  return cached(cacheFolder, file, `1 ${database} ${name}`, async () => {
    const { readZone } = await import("../time/read-zone.ts");
    return readZone(name);
  });
}

/** This machine's own zone, asked only until one is settled in the journal. */
export function machineZone(): string {
  return Intl.DateTimeFormat().resolvedOptions().timeZone || "UTC";
}
