import { DEW_RULE } from "../cure/fit-air.ts";
import type { Setting } from "../journal/event.ts";
import { OWN_ROOM } from "../shop/shop.ts";
import type { DayHours } from "../time/bench-hours.ts";
import { formatWeeklyHours } from "../time/format-hours.ts";
import { sayCount, sayList } from "./say-list.ts";
import { sayClockOfDay, sayDate } from "./say-time.ts";
import { sayCelsius, sayDegrees } from "./say-units.ts";
import type { Speech } from "./speech.ts";

/**
 * What a setting says, as a sentence without its full stop.
 *
 * @example saySetting({ of: "hands", from: "2026-03-23", pairs: 2 }, speech) // "2 pairs of hands from today"
 */
export function saySetting(setting: Setting, speech: Speech): string {
  switch (setting.of) {
    case "hours":
      return `Bench hours ${formatWeeklyHours(setting.weekly)} from ${sayDate(setting.from, speech)}`;
    case "day":
      return sayDay(setting.date, setting.hours, speech);
    case "away": {
      const till = setting.to === setting.from ? "" : ` to ${sayDate(setting.to, speech)}`;
      return `Away ${sayDate(setting.from, speech)}${till}: the bench is shut`;
    }
    case "back":
      return `Back at the bench from ${sayDate(setting.from, speech)}`;
    case "zone":
      return `The shop's clock is that of ${setting.name}`;
    case "hands":
      return `${sayCount(setting.pairs, "pair")} of hands from ${sayDate(setting.from, speech)}`;
    case "place":
      return setting.hooks === null
        ? `${setting.name} is never full`
        : `${setting.name} has ${sayCount(setting.hooks, "hook")}`;
    case "aim":
      return `The aim from ${sayDate(setting.from, speech)}: ${sayAim(setting.finishedPerWeek, setting.out)}`;
    case "default process":
      return setting.name === null ? "New pieces need their process named" : `New pieces are ${setting.name}`;
    case "air":
      return sayStatedAir(setting, speech);
    case "dew margin":
      return `Coats want a surface ${sayDegrees(setting.celsius, speech)} above the dew point (${DEW_RULE})`;
    case "room":
      return `${setting.name}: ${sayVentilation(setting)}`;
    case "in room":
      return `${setting.what} is in ${setting.room ?? OWN_ROOM}`;
    case "touches":
      return setting.count
        ? "Touch tests correct how long a coat is thought to take"
        : "Touch tests no longer correct how long a coat is thought to take";
  }
}

function sayStatedAir({ place, day }: Extract<Setting, { of: "air" }>, speech: Speech): string {
  const where = place ?? OWN_ROOM;
  if (day === null) return `The air of ${where} is only known where it is read`;
  const { low, high, humidityPercent } = day;
  const span =
    low === high ? sayCelsius(low, speech) : `${sayCelsius(low, speech)} to ${sayCelsius(high, speech)}`;
  return `The air of ${where}: ${span}, ${Math.round(humidityPercent)} %`;
}

function sayVentilation({ airChangesPerHour, mixingFactor }: Extract<Setting, { of: "room" }>): string {
  const changes =
    airChangesPerHour === null
      ? "air changes not known"
      : `${sayCount(airChangesPerHour, "air change")} an hour`;
  return mixingFactor === null ? changes : `${changes}, mixing factor ${mixingFactor}`;
}

/** An aim in words. `sayAim(7, null) === "7 finished a week"` */
export function sayAim(finishedPerWeek: number | null, out: number | null): string {
  const parts: string[] = [];
  if (finishedPerWeek !== null) parts.push(`${finishedPerWeek} finished a week`);
  if (out !== null) parts.push(`at most ${out} out`);
  return parts.length === 0 ? "none" : sayList(parts);
}

/** The hours of one day. `18:00 to 22:15`, `shut` */
export function sayDayHours(hours: readonly DayHours[], speech: Speech): string {
  if (hours.length === 0) return "shut";
  const clock = (minute: number) => sayClockOfDay(minute, speech.clock24);
  return sayList(hours.map(({ opens, closes }) => `${clock(opens)} to ${clock(closes)}`));
}

function sayDay(date: string, hours: readonly DayHours[] | null, speech: Speech): string {
  const day = sayDate(date, speech);
  if (hours === null) return `Bench hours ${day} as in any week`;
  return hours.length === 0 ? `The bench is shut ${day}` : `Bench ${day} ${sayDayHours(hours, speech)}`;
}
