import type { Zone } from "../time/zone.ts";
import type { CommandWords } from "./command-words.ts";

/** A time zone by its name; null: there is none of that name, and the problem is told. */
export async function readZoneNamed(name: string, words: CommandWords): Promise<Zone | null> {
  const { readZone } = await import("../time/read-zone.ts");
  const zone = readZone(name);
  if (zone === null)
    words.problems.push(`there is no time zone "${name}": say one as Europe/Dublin or America/Chicago`);
  return zone;
}
