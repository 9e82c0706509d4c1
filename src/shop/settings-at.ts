import type { BenchHours } from "../time/bench-hours.ts";
import type { CivilDate } from "../time/instant.ts";
import { ASSUMED_HOURS } from "../time/sessions.ts";
import type { Settings } from "./shop.ts";

/** The maker's bench hours, or those assumed until any are said. */
export function hoursOf(settings: Pick<Settings, "hours">): BenchHours {
  return settings.hours ?? ASSUMED_HOURS;
}

/** The aim in force on a day; null: none was set by then. */
export function aimAt(settings: Pick<Settings, "aims">, date: CivilDate): Settings["aims"][number] | null {
  return newestBy(settings.aims, date);
}

/** Pairs of hands at work on a day: one, unless more were said. */
export function handsAt(settings: Pick<Settings, "hands">, date: CivilDate): number {
  return newestBy(settings.hands, date)?.pairs ?? 1;
}

/** Of a timeline in the order said, what holds on a day: the latest from-date, and of one date the later said. */
function newestBy<T extends { readonly from: CivilDate }>(timeline: readonly T[], date: CivilDate): T | null {
  return timeline.reduce<T | null>(
    (best, entry) => (entry.from <= date && (best === null || entry.from >= best.from) ? entry : best),
    null,
  );
}
