import type { BenchHours, DayHours, Session, WeeklyHours } from "./bench-hours.ts";
import { addDays, instantOf, localTime, weekdayOf } from "./civil.ts";
import type { CivilDate, Instant } from "./instant.ts";
import type { Zone } from "./zone.ts";

/** How far ahead an opening is looked for: longer than any holiday or winter break. */
const HORIZON_DAYS = 400;

const evening: readonly DayHours[] = [{ opens: 18 * 60, closes: 21 * 60 }];
const assumedWeek: WeeklyHours = [
  evening,
  evening,
  evening,
  evening,
  evening,
  [{ opens: 9 * 60, closes: 16 * 60 }],
  [],
];

/**
 * Taken until the maker says otherwise, and for the days before the first pattern said (common practice of
 * an evening bench, no source): weekdays 18 to 21, Saturday 9 to 16. Screens say that it is assumed.
 */
export const ASSUMED_HOURS: BenchHours = {
  weekly: [{ from: "1970-01-01", hours: assumedWeek }],
  days: {},
  away: [],
};

/**
 * The hours that hold on a day: days away are closed whatever else is said, then a day's own hours, then the
 * newest weekly pattern begun by then.
 */
export function hoursOn(hours: BenchHours, date: CivilDate): readonly DayHours[] {
  if (hours.away.some((span) => span.from <= date && date <= span.to)) return [];
  return hours.days[date] ?? weeklyOn(hours, date)[weekdayOf(date) - 1] ?? [];
}

/** The weekly pattern in force on a day; of two from the same date the later said. */
export function weeklyOn(hours: BenchHours, date: CivilDate): WeeklyHours {
  let best: { from: CivilDate; hours: WeeklyHours } | null = null;
  for (const pattern of hours.weekly) {
    if (pattern.from <= date && (best === null || pattern.from >= best.from)) best = pattern;
  }
  return best?.hours ?? assumedWeek;
}

/**
 * Every session that has a minute in `from` to before `to`, whole, in order and disjoint. A session belongs
 * to the day it opens on, and may run past midnight; where the next day opens sooner, it ends there.
 */
export function sessionsBetween(hours: BenchHours, zone: Zone, from: Instant, to: Instant): Session[] {
  if (to <= from) return [];
  const sessions: Session[] = [];
  // From two days back, for a session may run past midnight, to a day on, whose opening may end the one before.
  const last = addDays(localTime(zone, to).date, 1);
  for (let date = addDays(localTime(zone, from).date, -2); date <= last; date = addDays(date, 1)) {
    addDay(sessions, hours, zone, date);
  }
  return sessions.filter((session) => session.closes > from && session.opens < to);
}

/** The session running at a moment; null: the bench is shut. It opens at its first moment and is shut at its last. */
export function sessionAt(hours: BenchHours, zone: Zone, instant: Instant): Session | null {
  return sessionsBetween(hours, zone, instant, instant + 1)[0] ?? null;
}

/** The first session that opens strictly after a moment; null: none within 400 days. */
export function nextSession(hours: BenchHours, zone: Zone, instant: Instant): Session | null {
  const today = localTime(zone, instant).date;
  for (let ahead = -1; ahead <= HORIZON_DAYS; ahead++) {
    const sessions: Session[] = [];
    // The day after, too: its opening may end this one.
    addDay(sessions, hours, zone, addDays(today, ahead));
    const found = sessions.find((session) => session.opens > instant);
    if (found === undefined) continue;
    addDay(sessions, hours, zone, addDays(today, ahead + 1));
    return sessions.find((session) => session.opens === found.opens) ?? found;
  }
  return null;
}

/** Adds a day's sessions in order, ending the one before where it would overlap. */
function addDay(sessions: Session[], hours: BenchHours, zone: Zone, date: CivilDate): void {
  for (const stretch of joined(hoursOn(hours, date))) {
    const opens = instantOf(zone, date, stretch.opens);
    const closes = instantOf(zone, date, stretch.closes);
    // A stretch that lies in the gap of a clock change may have no length.
    if (closes <= opens) continue;
    const before = sessions.at(-1);
    if (before !== undefined && before.closes > opens) {
      sessions.pop();
      if (before.opens < opens) sessions.push({ opens: before.opens, closes: opens });
    }
    sessions.push({ opens, closes });
  }
}

/** One day's stretches in order, those that touch or overlap made one. */
function joined(day: readonly DayHours[]): readonly DayHours[] {
  if (day.length < 2) return day;
  const result: DayHours[] = [];
  for (const stretch of day.toSorted((a, b) => a.opens - b.opens)) {
    const before = result.at(-1);
    if (before === undefined || before.closes < stretch.opens) result.push(stretch);
    else result[result.length - 1] = { ...before, closes: Math.max(before.closes, stretch.closes) };
  }
  return result;
}
