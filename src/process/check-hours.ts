import type { BenchHours, Session } from "../time/bench-hours.ts";
import { addDays, instantOf, localTime, minuteOfDay } from "../time/civil.ts";
import {
  after,
  type CivilDate,
  type Instant,
  MINUTE,
  type Minutes,
  minutesBetween,
} from "../time/instant.ts";
import { sessionsBetween } from "../time/sessions.ts";
import type { Zone } from "../time/zone.ts";
import type { ProcessDefinition } from "./definition.ts";
import { coatsBefore } from "./order.ts";
import type { Step } from "./step.ts";
import { findUnpreparedSpans, type UnpreparedSpan } from "./unprepared-spans.ts";

/** A time of the week by the shop's clock. */
export interface WeekTime {
  /** ISO 8601: 1 is Monday, 7 Sunday. */
  readonly weekday: number;
  /** Minutes since midnight. */
  readonly minute: number;
}

/** What the maker's bench hours make impossible. */
export type HoursProblem =
  | { readonly kind: "never open" }
  | {
      readonly kind: "step too long";
      readonly step: string;
      /** Of the step with its set-up and putting away; of one that may stop, its least part. */
      readonly minutes: Minutes;
      readonly longest: Minutes;
    }
  | {
      readonly kind: "window missed";
      /** The coat's step, and the next coat that cannot be begun in its window. */
      readonly step: string;
      readonly next: string;
      /** No session of the week is early enough: it is missed whenever the coat is hung. */
      readonly always: boolean;
      /** Hung between these times of these days, both included, the window is missed. */
      readonly weekdays: readonly number[];
      readonly from: number;
      readonly to: number;
      /** For a coat hung at `from` on the first of these days. `reopens` null: not in sight. */
      readonly opens: WeekTime;
      readonly shuts: WeekTime;
      readonly reopens: WeekTime | null;
      /** The work that the next window asks for, `scuff`; null: there is none, the coat is lost. */
      readonly first: string | null;
    };

/** A split step goes on in parts of this length or more. */
const LEAST_PART: Minutes = 15;
/** Sessions of this many days tell how long the longest is; the coats are hung in those of the first seven. */
const DAYS_SEEN = 28;
const DAYS_HUNG = 7;

/**
 * What cannot be within the bench hours of the coming weeks: steps longer than any session, and windows that shut
 * before the next coat can be begun. Judged by the likely hands-on minutes and the sheet's own air, as if nothing else
 * were to be done: what is told is impossible at any rate.
 *
 * @param fromDate the first day looked at; windows are tried for coats hung in the seven days from it
 */
export function hoursProblems(
  definition: ProcessDefinition,
  hours: BenchHours,
  zone: Zone,
  fromDate: CivilDate,
): HoursProblem[] {
  const start = instantOf(zone, fromDate, 0);
  const sessions = sessionsBetween(hours, zone, start, instantOf(zone, addDays(fromDate, DAYS_SEEN), 0));
  if (sessions.length === 0) return [{ kind: "never open" }];
  const week = sessions.filter(({ opens }) => opens < instantOf(zone, addDays(fromDate, DAYS_HUNG), 0));
  const longest = Math.max(...sessions.map(({ opens, closes }) => minutesBetween(opens, closes)));
  return definition.steps.flatMap((step) => {
    const tooLong = checkLength(step, longest);
    if (tooLong !== null) return [tooLong];
    return coatsBefore(definition.steps, step.name).flatMap((coatStep) => {
      const spans = findUnpreparedSpans(definition, coatStep, step);
      return spans === null ? [] : findMissed(coatStep, step, spans, { week, sessions, zone });
    });
  });
}

function checkLength(step: Step, longest: Minutes): HoursProblem | null {
  const work = step.mayStop ? Math.min(LEAST_PART, step.handsOn.likely) : step.handsOn.likely;
  const minutes = (step.setUp?.takes ?? 0) + work + (step.setUp?.putAway ?? 0);
  return minutes > longest ? { kind: "step too long", step: step.name, minutes, longest } : null;
}

interface Bench {
  readonly week: readonly Session[];
  readonly sessions: readonly Session[];
  readonly zone: Zone;
}

/** One problem for each stretch of times at which the coat must not be hung; equal stretches of several days are one. */
function findMissed(coatStep: Step, next: Step, spans: UnpreparedSpan, bench: Bench): HoursProblem[] {
  const stretches: { from: Instant; to: Instant }[] = [];
  let kept = false;
  for (const session of bench.week) {
    const soonest = after(session.opens, soonestStart(coatStep) + coatStep.handsOn.likely);
    for (let hung = soonest; hung <= session.closes; hung += MINUTE) {
      if (canFollow(hung, next, spans, bench.sessions)) {
        kept = true;
        continue;
      }
      const last = stretches.at(-1);
      if (last !== undefined && last.to === hung - MINUTE) last.to = hung;
      else stretches.push({ from: hung, to: hung });
    }
  }
  const told = new Map<string, HoursProblem & { kind: "window missed" }>();
  for (const { from, to } of stretches) {
    const [first, last] = [weekTime(from, bench.zone), weekTime(to, bench.zone)];
    const key = `${first.minute} ${last.minute}`;
    const same = told.get(key);
    const weekdays = [...(same?.weekdays ?? []), first.weekday];
    told.set(key, same === undefined ? sayMissed(from, to) : { ...same, weekdays });
  }
  return [...told.values()];

  function sayMissed(from: Instant, to: Instant): HoursProblem & { kind: "window missed" } {
    const { zone, sessions } = bench;
    const shuts = after(from, Math.max(...spans.spans.map((span) => span.shuts)));
    const reopens = sessions.find((session) => session.opens > from && session.closes > shuts)?.opens;
    return {
      kind: "window missed",
      step: coatStep.name,
      next: next.name,
      always: !kept,
      weekdays: [weekTime(from, zone).weekday],
      from: weekTime(from, zone).minute,
      to: weekTime(to, zone).minute,
      opens: weekTime(after(from, Math.min(...spans.spans.map((span) => span.opens))), zone),
      shuts: weekTime(shuts, zone),
      reopens: reopens === undefined ? null : weekTime(reopens, zone),
      first: spans.first,
    };
  }
}

/** Whether the next coat can be begun, and ended before the bench shuts, in a window of a coat hung then. */
function canFollow(
  hung: Instant,
  next: Step,
  { spans }: UnpreparedSpan,
  sessions: readonly Session[],
): boolean {
  return spans.some(({ opens, shuts }) =>
    sessions.some((session) => {
      const begin = Math.max(after(session.opens, soonestStart(next)), after(hung, opens));
      return begin <= after(session.closes, -next.handsOn.likely) && begin <= after(hung, shuts);
    }),
  );
}

/** Minutes from the opening of the bench to the first a step can begin: a pot must melt, a loaded brush may stand. */
function soonestStart({ setUp }: Step): Minutes {
  return setUp === null || setUp.keeps.way === "load" ? 0 : setUp.takes;
}

function weekTime(instant: Instant, zone: Zone): WeekTime {
  const local = localTime(zone, instant);
  return { weekday: local.weekday, minute: minuteOfDay(local) };
}
