import type { Minutes } from "../time/instant.ts";
import type { Gives } from "./problem.ts";

/** From so many minutes on it matters what waits for an emission to end. */
const longHold: Minutes = 10;

/**
 * Sorts tasks by what they do to the air, so that who holds off whom is asked once for each kind, not for each pair.
 *
 * @param given by task, what it gives off
 * @param apart by emission, which others must keep apart from it
 * @returns by task its kind, and by kind whether one, once done, keeps another waiting for long
 */
export function sortByAir(given: readonly (readonly Gives[])[], apart: readonly (readonly boolean[])[]) {
  const known = new Map<string, number>();
  const sorts: (readonly Gives[])[] = [];
  const kinds = given.map((gives) => {
    let key = "";
    for (const { what, lasts } of gives) key += `${what} ${lasts} `;
    let kind = known.get(key);
    if (kind === undefined) {
      kind = sorts.length;
      known.set(key, kind);
      sorts.push(gives);
    }
    return kind;
  });
  return { kinds, holdsOff: sorts.map((one) => sorts.map((other) => keepsWaiting(one, other, apart))) };
}

function keepsWaiting(
  one: readonly Gives[],
  other: readonly Gives[],
  apart: readonly (readonly boolean[])[],
): boolean {
  return one.some(
    ({ what, lasts }) => lasts >= longHold && other.some((its) => apart[what]?.[its.what] === true),
  );
}
