import type { Pace } from "../plan/rotation/rotation-answer.ts";

const UNITS: Readonly<Record<string, number>> = { day: 1, days: 1, daily: 1, week: 7, weeks: 7, weekly: 7 };
/** Further on it is no rotation, and too much to search. */
const MOST_DAYS = 28;
const MOST_PIECES = 20;

/**
 * A pace as people write it: `1/day`, `5/week`, `1 every 2 days`, `3 a week`, `1/2 days`, `daily`.
 *
 * @returns what is wrong with it, without a full stop, where it cannot be read
 */
export function readPace(text: string): { readonly pace: Pace } | { readonly problem: string } {
  const said = text.trim().toLowerCase().replace(/\s+/g, " ");
  const [, count = "1", every, unit = ""] =
    /^(?:(\d{1,3}) ?)?(?:(?:\/|a |per |each |every ) ?(\d{1,2})? ?)?(days?|weeks?|daily|weekly)$/.exec(
      said,
    ) ?? [];
  const days = (UNITS[unit] ?? 0) * Number(every ?? 1);
  const pieces = Number(count);
  const isNothing = every === "0" || /^0+$/.test(said);
  if (days === 0 && !isNothing)
    return { problem: `"${text}" is no pace: write 1/day, 5/week or "1 every 2 days"` };
  if (pieces === 0 || days === 0) return { problem: `"${text}" finishes nothing: write a pace from 1 up` };
  if (days > MOST_DAYS)
    return { problem: `"${text}" is slower than a rotation: write at most ${MOST_DAYS} days` };
  if (pieces > MOST_PIECES)
    return { problem: `"${text}" is more than can be searched: at most ${MOST_PIECES} pieces` };
  return { pace: { pieces, days } };
}
