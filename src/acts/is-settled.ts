import type { Setting } from "../journal/event.ts";
import { aimAt, handsAt } from "../shop/settings-at.ts";
import type { Settings, StatedAir } from "../shop/shop.ts";
import type { DayHours, WeeklyHours } from "../time/bench-hours.ts";
import type { CivilDate } from "../time/instant.ts";
import { weeklyOn } from "../time/sessions.ts";

/**
 * Whether a setting says only what holds already.
 *
 * A setting said again would only lengthen the journal; hours that are merely assumed count as not said.
 */
export function isSettled(setting: Setting, settings: Settings): boolean {
  const { hours } = settings;
  switch (setting.of) {
    case "hours":
      return isWeekly(hours, setting.from, setting.weekly);
    case "day":
      return isSameDay(hours?.days[setting.date] ?? null, setting.hours);
    case "away":
      return (hours?.away ?? []).some(({ from, to }) => from <= setting.from && setting.to <= to);
    case "back":
      return (hours?.away ?? []).every(({ to }) => to < setting.from);
    case "zone":
      return settings.zone === setting.name;
    case "hands":
      return handsAt(settings, setting.from) === setting.pairs;
    case "place":
      return (settings.places.get(setting.name)?.hooks ?? null) === setting.hooks;
    case "aim": {
      const { finishedPerWeek, out } = aimAt(settings, setting.from) ?? { finishedPerWeek: null, out: null };
      return finishedPerWeek === setting.finishedPerWeek && out === setting.out;
    }
    case "default process":
      return settings.defaultProcess === setting.name;
    case "air":
      return isSameAir(settings.statedAir.get(setting.place) ?? null, setting.day);
    case "dew margin":
      return settings.dewMargin === setting.celsius;
    case "room": {
      const room = settings.rooms.get(setting.name);
      return (
        room?.airChangesPerHour === setting.airChangesPerHour && room.mixingFactor === setting.mixingFactor
      );
    }
    case "in room":
      return (settings.roomOf.get(setting.what) ?? null) === setting.room;
    case "touches":
      return settings.touchesCount === setting.count;
    default:
      return setting satisfies never;
  }
}

/** Whether such weekly hours were said and hold on a date: those only assumed are worth saying. */
function isWeekly(hours: Settings["hours"], date: CivilDate, weekly: WeeklyHours): boolean {
  if (!hours?.weekly.some(({ from }) => from <= date)) return false;
  const now = weeklyOn(hours, date);
  return weekly.every((day, index) => isSameDay(day, now[index] ?? []));
}

function isSameAir(one: StatedAir | null, other: Extract<Setting, { of: "air" }>["day"]): boolean {
  if (one === null || other === null) return one === other;
  const { low, high, humidityPercent } = other;
  return one.low === low && one.high === high && one.humidityPercent === humidityPercent;
}

function isSameDay(one: readonly DayHours[] | null, other: readonly DayHours[] | null): boolean {
  if (one === null || other === null) return one === other;
  return (
    one.length === other.length &&
    one.every(({ opens, closes }, index) => opens === other[index]?.opens && closes === other[index]?.closes)
  );
}
