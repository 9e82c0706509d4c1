import type { Setting } from "../journal/event.ts";
import { COLDEST, HOTTEST } from "../process/quantity-form.ts";
import type { DayHours } from "../time/bench-hours.ts";
import { isCivilDate } from "../time/civil.ts";
import { clockReading } from "../time/clock-reading.ts";
import type { Minutes } from "../time/instant.ts";
import { checkName, checkThat, checkWhole, firstRefusal } from "./check-value.ts";
import type { Refused } from "./refuse.ts";

const MINUTES_OF_DAY = 24 * 60;
const MOST_HANDS = 20;
const MOST_HOOKS = 1_000;
const MOST_PIECES = 1_000;
const WIDEST_MARGIN = 20;
const LEAST_CHANGES = 0.01;
const MOST_CHANGES = 1_000;
/** The range in use is 1 to 10 (from memory, ACGIH); beyond it is a slip of the key. */
const WORST_MIXING = 20;

/**
 * Checks every value of a setting. Whether a zone of that name exists is known at the door, not here.
 *
 * @returns the first value that is not fit, with what would be
 */
export function checkSetting(setting: Setting): Refused | null {
  switch (setting.of) {
    case "hours":
      return firstRefusal([
        checkDate("from", setting.from),
        checkThat(setting.weekly.length === 7, "hours", setting.weekly.length, "seven days"),
        ...setting.weekly.map(checkDay),
      ]);
    case "day":
      return checkDate("date", setting.date) ?? (setting.hours && checkDay(setting.hours));
    case "away":
      return firstRefusal([
        checkDate("from", setting.from),
        checkDate("to", setting.to),
        checkThat(setting.from <= setting.to, "to", setting.to, `a date not before ${setting.from}`),
      ]);
    case "back":
      return checkDate("from", setting.from);
    case "zone":
      return checkName("zone", setting.name);
    case "hands":
      return checkDate("from", setting.from) ?? checkWhole("hands", setting.pairs, 1, MOST_HANDS);
    case "place":
      return firstRefusal([
        checkName("place", setting.name),
        setting.hooks === null ? null : checkWhole("hooks", setting.hooks, 0, MOST_HOOKS),
      ]);
    case "aim":
      return firstRefusal([
        checkDate("from", setting.from),
        setting.finishedPerWeek === null ? null : checkAim(setting.finishedPerWeek),
        setting.out === null ? null : checkWhole("aim out", setting.out, 1, MOST_PIECES),
      ]);
    case "default process":
      return setting.name === null ? null : checkName("process", setting.name);
    case "air":
      return setting.day === null ? null : checkStatedAir(setting.day);
    case "dew margin":
      return checkBetween("dew margin", setting.celsius, 0, WIDEST_MARGIN, "°C");
    case "room":
      return firstRefusal([
        checkName("room", setting.name),
        setting.airChangesPerHour === null
          ? null
          : checkBetween("air changes", setting.airChangesPerHour, LEAST_CHANGES, MOST_CHANGES, "an hour"),
        setting.mixingFactor === null
          ? null
          : checkBetween("mixing factor", setting.mixingFactor, 1, WORST_MIXING, "(1: it mixes perfectly)"),
      ]);
    case "in room":
      return firstRefusal([
        checkName("what is in the room", setting.what),
        setting.room === null ? null : checkName("room", setting.room),
      ]);
    case "touches":
      return null;
    default:
      return setting satisfies never;
  }
}

function checkStatedAir(day: NonNullable<Extract<Setting, { of: "air" }>["day"]>): Refused | null {
  return firstRefusal([
    checkBetween("low", day.low, COLDEST, HOTTEST, "°C"),
    checkBetween("high", day.high, Math.max(COLDEST, day.low), HOTTEST, "°C, not below the low"),
    checkBetween("humidity", day.humidityPercent, 0, 100, "%"),
  ]);
}

function checkBetween(
  what: string,
  value: number,
  least: number,
  most: number,
  unit: string,
): Refused | null {
  return checkThat(value >= least && value <= most, what, value, `from ${least} to ${most} ${unit}`);
}

/** An aim may be half a piece a week. */
function checkAim(perWeek: number): Refused | null {
  const fit = perWeek > 0 && perWeek <= MOST_PIECES;
  return checkThat(fit, "aim a week", perWeek, `above 0, at most ${MOST_PIECES}`);
}

function checkDate(what: string, date: string): Refused | null {
  return checkThat(isCivilDate(date), what, date, "a date such as 2026-05-03");
}

/** The sessions of one day, by opening: each closes after it opens, none overlaps the next, the last before next noon. */
function checkDay(day: readonly DayHours[]): Refused | null {
  return firstRefusal(
    day.flatMap(({ opens, closes }, index) => [
      checkOfDay("opening", opens, day[index - 1]?.closes ?? 0, MINUTES_OF_DAY - 1),
      checkOfDay("closing", closes, opens + 1, MINUTES_OF_DAY + MINUTES_OF_DAY / 2),
    ]),
  );
}

function checkOfDay(what: string, minute: Minutes, least: Minutes, most: Minutes): Refused | null {
  const fit = Number.isSafeInteger(minute) && minute >= least && minute <= most;
  return checkThat(fit, what, sayOfDay(minute), `a time from ${sayOfDay(least)} to ${sayOfDay(most)}`);
}

/** `18:00`; past midnight `12:00 of the next day`. */
function sayOfDay(minute: Minutes): string {
  const clock = clockReading(minute % MINUTES_OF_DAY);
  return minute < MINUTES_OF_DAY ? clock : `${clock} of the next day`;
}
