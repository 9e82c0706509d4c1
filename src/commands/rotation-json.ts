import type { RotationAnswer, RotationDay } from "../plan/rotation/rotation-answer.ts";
import { sayClockOfDay } from "../words/say-time.ts";

/** A rotation as `--json` gives it: durations in minutes, times of the day as `HH:MM`, names as on screen. */
export function rotationJson(answer: RotationAnswer, hours: string): object {
  const { timetable, process, pace, table, tableCut, changes, work, withoutPreparation, round, unfitAir } =
    answer;
  return {
    process,
    hours,
    every: round.every,
    work,
    pace,
    table,
    tableCut,
    timetable:
      timetable.is === "timetable"
        ? { ...timetable, days: timetable.days.map(dayJson) }
        : { is: timetable.is, why: timetable.why },
    changes: changes.map(({ what, ...gives }) => ({ ...what, ...gives })),
    unfitAir: unfitAir.map(({ step, from, until }) => ({ step, from: clockOf(from), until: clockOf(until) })),
    withoutPreparation,
  };
}

function dayJson({ day, opens, closes, rows, putAway }: RotationDay): object {
  return {
    day,
    opens: clockOf(opens),
    closes: clockOf(closes),
    work: rows.map(({ from, ...row }) => ({ from: clockOf(from), ...row })),
    putAway,
  };
}

/** `18:05` */
const clockOf = (minuteOfDay: number): string => sayClockOfDay(minuteOfDay, true);
