import type { Session } from "../time/bench-hours.ts";
import { localTime, minuteOfDay } from "../time/civil.ts";
import { after, type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";
import type { HoursProblem, WeekTime } from "./check-hours.ts";
import type { Step } from "./step.ts";
import type { UnpreparedSpan } from "./unprepared-spans.ts";

/** When the bench is open: `week` are the sessions in which a coat is tried, `sessions` all in which the next may follow. */
export interface Bench {
  readonly week: readonly Session[];
  readonly sessions: readonly Session[];
  readonly zone: Zone;
}

type MissedWindow = HoursProblem & { kind: "window missed" };

/** A stretch of moments at each of which the coat must not be hung; both ends are such. */
interface Stretch {
  readonly from: Instant;
  to: Instant;
}

/**
 * Tries every minute of the week at which a coat can be hung: in which is there no session left for the next coat before
 * the window shuts? Equal stretches of several days are told as one.
 */
export function findMissedWindows(
  coatStep: Step,
  next: Step,
  spans: UnpreparedSpan,
  bench: Bench,
): MissedWindow[] {
  const { stretches, always } = tryEveryMinute(coatStep, next, spans, bench);
  const told = new Map<string, MissedWindow>();
  for (const stretch of stretches) {
    const missed = { ...tellMissed(stretch, spans, bench), step: coatStep.name, next: next.name, always };
    const key = `${missed.from} ${missed.to}`;
    const same = told.get(key);
    told.set(
      key,
      same === undefined ? missed : { ...same, weekdays: [...same.weekdays, ...missed.weekdays] },
    );
  }
  return [...told.values()];
}

function tryEveryMinute(coatStep: Step, next: Step, spans: UnpreparedSpan, bench: Bench) {
  const stretches: Stretch[] = [];
  let always = true;
  for (const session of bench.week) {
    const soonest = after(session.opens, soonestStart(coatStep) + coatStep.handsOn.likely);
    for (let hung = soonest; hung <= session.closes; hung += MINUTE) {
      const last = stretches.at(-1);
      if (canFollow(hung, next, spans, bench.sessions)) always = false;
      else if (last?.to === hung - MINUTE) last.to = hung;
      else stretches.push({ from: hung, to: hung });
    }
  }
  return { stretches, always };
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

/** The stretch by the shop's clock, and what becomes of a coat hung at its first minute. */
function tellMissed({ from, to }: Stretch, { spans, first }: UnpreparedSpan, { sessions, zone }: Bench) {
  const shuts = after(from, Math.max(...spans.map((span) => span.shuts)));
  const reopens = sessions.find((session) => session.opens > from && session.closes > shuts)?.opens;
  const start = weekTime(from, zone);
  return {
    kind: "window missed" as const,
    weekdays: [start.weekday],
    from: start.minute,
    to: weekTime(to, zone).minute,
    opens: weekTime(after(from, Math.min(...spans.map((span) => span.opens))), zone),
    shuts: weekTime(shuts, zone),
    reopens: reopens === undefined ? null : weekTime(reopens, zone),
    first,
  };
}

function weekTime(instant: Instant, zone: Zone): WeekTime {
  const local = localTime(zone, instant);
  return { weekday: local.weekday, minute: minuteOfDay(local) };
}
