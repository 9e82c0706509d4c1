import type { Setting } from "../journal/event.ts";
import type { BenchHours, DayHours } from "../time/bench-hours.ts";
import { addDays } from "../time/civil.ts";
import type { CivilDate, Instant } from "../time/instant.ts";
import type { Settings } from "./shop.ts";

/** Before the maker has settled anything. */
export const NOTHING_SETTLED: Settings = {
  zone: null,
  hours: null,
  hands: [],
  places: new Map(),
  aims: [],
  defaultProcess: null,
  statedAir: new Map(),
  dewMargin: null,
  rooms: new Map(),
  roomOf: new Map(),
  touchesCount: true,
};

/**
 * Settings after one more, said at a moment. Timelines keep every from-date, so that past weeks stay true.
 *
 * @param settings used up: a year of single days would else be copied once for each of them
 */
export function foldSetting(settings: Settings, setting: Setting, at: Instant): Settings {
  const hours = settings.hours ?? { weekly: [], days: {}, away: [] };
  switch (setting.of) {
    case "hours": {
      const weekly = [...hours.weekly, { from: setting.from, hours: setting.weekly }];
      return { ...settings, hours: { ...hours, weekly } };
    }
    case "day":
      sayDay(hours.days, setting.date, setting.hours);
      return settings.hours === null ? { ...settings, hours } : settings;
    case "away": {
      const { from, to } = setting;
      return { ...settings, hours: { ...hours, away: [...hours.away, { from, to }] } };
    }
    case "back":
      return { ...settings, hours: { ...hours, away: backFrom(hours.away, setting.from) } };
    case "zone":
      return { ...settings, zone: setting.name };
    case "hands":
      return { ...settings, hands: [...settings.hands, { from: setting.from, pairs: setting.pairs }] };
    case "place": {
      const { name, hooks } = setting;
      return { ...settings, places: withEntry(settings.places, name, hooks === null ? null : { hooks }) };
    }
    case "aim": {
      const { from, finishedPerWeek, out } = setting;
      return { ...settings, aims: [...settings.aims, { from, finishedPerWeek, out }] };
    }
    case "default process":
      return { ...settings, defaultProcess: setting.name };
    case "air":
      return {
        ...settings,
        statedAir: withEntry(settings.statedAir, setting.place, setting.day && { at, ...setting.day }),
      };
    case "dew margin":
      return { ...settings, dewMargin: setting.celsius };
    case "room": {
      const { name, airChangesPerHour, mixingFactor } = setting;
      return { ...settings, rooms: withEntry(settings.rooms, name, { airChangesPerHour, mixingFactor }) };
    }
    case "in room":
      return { ...settings, roomOf: withEntry(settings.roomOf, setting.what, setting.room) };
    case "touches":
      return { ...settings, touchesCount: setting.count };
    default:
      return setting satisfies never;
  }
}

/** A map with one entry said anew, or for null without it. */
function withEntry<Key, Value>(map: ReadonlyMap<Key, Value>, key: Key, value: Value | null): Map<Key, Value> {
  const changed = new Map(map);
  if (value === null) changed.delete(key);
  else changed.set(key, value);
  return changed;
}

/** A day's own hours said; null: the weekly ones hold again. */
function sayDay(
  days: Record<CivilDate, readonly DayHours[]>,
  date: CivilDate,
  hours: readonly DayHours[] | null,
) {
  delete days[date];
  if (hours !== null) days[date] = hours;
}

/** Days away that end before a date: what lies after it is dropped. */
function backFrom(away: BenchHours["away"], from: CivilDate): BenchHours["away"] {
  return away
    .filter((span) => span.from < from)
    .map((span) => (span.to < from ? span : { from: span.from, to: addDays(from, -1) }));
}
