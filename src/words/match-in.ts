import { matchName } from "../acts/match-name.ts";
import { sayList } from "./say-list.ts";

/**
 * Finds the one thing that was named, or says why not: several fit, one is near, or there are only these.
 *
 * @param kind what the things are called, `process`
 */
export function matchIn<T>(
  kind: string,
  said: string,
  things: readonly T[],
  nameOf: (thing: T) => string,
): { readonly found: T } | { readonly problem: string } {
  const names = things.map(nameOf);
  const match = matchName(said, names);
  if ("found" in match) {
    const found = things.find((thing) => nameOf(thing) === match.found);
    if (found !== undefined) return { found };
  }
  if ("several" in match) return { problem: `"${said}" could be ${sayList(match.several, "or")}: say which` };
  const near = "nearest" in match ? match.nearest : null;
  if (near !== null) return { problem: `there is no ${kind} "${said}": perhaps "${near}"` };
  const known =
    names.length === 0 ? `there is none yet` : `there ${names.length === 1 ? "is" : "are"} ${sayList(names)}`;
  return { problem: `there is no ${kind} "${said}": ${known}` };
}
