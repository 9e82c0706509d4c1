import type { BenchHours } from "../time/bench-hours.ts";
import { addDays, instantOf } from "../time/civil.ts";
import { type CivilDate, type Minutes, minutesBetween } from "../time/instant.ts";
import { sessionsBetween } from "../time/sessions.ts";
import type { Zone } from "../time/zone.ts";
import type { ProcessDefinition } from "./definition.ts";
import { findMissedWindows } from "./missed-windows.ts";
import { coatsBefore } from "./order.ts";
import type { Step } from "./step.ts";
import { findUnpreparedSpans } from "./unprepared-spans.ts";

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
      return spans === null ? [] : findMissedWindows(coatStep, step, spans, { week, sessions, zone });
    });
  });
}

/** A step and its set-up fit one session, with putting away; one that may stop fits in parts. */
function checkLength(step: Step, longest: Minutes): HoursProblem | null {
  const work = step.mayStop ? Math.min(LEAST_PART, step.handsOn.likely) : step.handsOn.likely;
  const minutes = (step.setUp?.takes ?? 0) + work + (step.setUp?.putAway ?? 0);
  return minutes > longest ? { kind: "step too long", step: step.name, minutes, longest } : null;
}
