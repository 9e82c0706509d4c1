/** A moment: whole milliseconds since 1970-01-01T00:00Z. The journal and the core know no other kind. */
export type Instant = number;

/** A length of time in whole minutes. */
export type Minutes = number;

/** A civil date in the shop's zone, `2026-03-28`. */
export type CivilDate = string;

/** Milliseconds in a minute: the only bridge between an Instant and Minutes. */
export const MINUTE = 60_000;

/** The moment `minutes` after `instant`. `after(t, 45) === t + 2_700_000` */
export function after(instant: Instant, minutes: Minutes): Instant {
  return instant + minutes * MINUTE;
}

/** Whole minutes from one moment to a later one, rounded down; negative if `to` is earlier. */
export function minutesBetween(from: Instant, to: Instant): Minutes {
  return Math.floor((to - from) / MINUTE);
}
