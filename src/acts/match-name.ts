import { nearestWord } from "../process/nearest.ts";

/** What a said name was taken for: one of the known, several of them, or none and then perhaps a near one. */
export type Match =
  | { readonly found: string }
  | { readonly several: readonly string[] }
  | { readonly nearest: string | null };

/**
 * Finds a name said in a hurry among the known ones: letter case and spaces do not count, the beginning of a name or
 * of one of its words is enough while only one name begins so.
 *
 * @example matchName("SECOND", ["seal", "second seal"]) // { found: "second seal" }
 * @example matchName("clear", ["first clear", "last clear"]) // { several: ["first clear", "last clear"] }
 * @example matchName("sael", ["seal", "drill"]) // { nearest: "seal" }
 */
export function matchName(said: string, names: readonly string[]): Match {
  const wanted = plain(said);
  if (wanted === "") return { nearest: null };
  const ways: readonly ((name: string) => boolean)[] = [
    (name) => name === wanted,
    (name) => name.startsWith(wanted),
    (name) => name.includes(` ${wanted}`),
  ];
  for (const fits of ways) {
    const fitting = names.filter((name) => fits(plain(name)));
    const [only] = fitting;
    if (only !== undefined) return fitting.length === 1 ? { found: only } : { several: fitting };
  }
  return { nearest: nearestWord(said, names) };
}

function plain(name: string): string {
  return name.trim().replace(/\s+/g, " ").toLowerCase();
}
