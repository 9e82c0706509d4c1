import type { ProcessDefinition } from "../../process/definition.ts";
import type { BenchHours, DayHours } from "../../time/bench-hours.ts";
import { addDays, instantOf } from "../../time/civil.ts";
import type { CivilDate } from "../../time/instant.ts";
import type { Zone } from "../../time/zone.ts";
import type { AddedPiece } from "../make-problem.ts";

/** Changes that a plan is asked under and that never touch the journal. */
export interface WhatIf {
  /** Bench hours of single days; an empty list: the bench stays shut. The later of two for one day counts. */
  readonly days: readonly { readonly date: CivilDate; readonly hours: readonly DayHours[] }[];
  readonly added: readonly {
    readonly count: number;
    readonly definition: ProcessDefinition;
    readonly due: CivilDate | null;
  }[];
}

/** The bench hours with a what-if's own days in place; it is asked for in full knowledge of days away. */
export function hoursIf(hours: BenchHours, { days }: WhatIf): BenchHours {
  if (days.length === 0) return hours;
  const own = Object.fromEntries(days.map(({ date, hours: said }) => [date, said]));
  return {
    ...hours,
    days: { ...hours.days, ...own },
    away: days.reduce((away, { date }) => withoutDay(away, date), hours.away),
  };
}

/** Spans of days with one day taken out. */
function withoutDay(away: BenchHours["away"], date: CivilDate): BenchHours["away"] {
  return away.flatMap(({ from, to }) =>
    date < from || date > to
      ? [{ from, to }]
      : [
          { from, to: addDays(date, -1) },
          { from: addDays(date, 1), to },
        ].filter((span) => span.from <= span.to),
  );
}

/** Pieces that a what-if adds, each as if it were tagged now. A promise for a day holds until its end. */
export function addedIf({ added }: WhatIf, zone: Zone): AddedPiece[] {
  return added.flatMap(({ count, definition, due }) => {
    const dueAt = due === null ? null : instantOf(zone, due, 24 * 60);
    return Array.from({ length: count }, () => ({ definition, due: dueAt, release: 0, underLimit: false }));
  });
}
