import type { Air } from "../process/quantity-form.ts";
import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import type { AirReading } from "./air-line.ts";

const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** How the air goes on after the last reading, and what that rests on. */
export interface AirAhead {
  readonly rests: "daily pattern" | "stated" | "last reading";
  /** By hour of the day in UTC, 24 of them; between two hours it changes in a straight line. */
  readonly byHour: readonly Air[];
  /** The last reading: what parts it from the pattern fades with the hours. Null: none. */
  readonly last: AirReading | null;
  /** How far the air of a day may lie from it, as one standard deviation. */
  readonly unsure: Air;
  /** What it is taken to be off by, for one who asks what other weather would do; missing: nothing. */
  readonly off?: Air;
}

/** Air that comes as it is said, in a what-if. */
export const SURE: Air = { celsius: 0, humidityPercent: 0 };

/** How unsure air is of which little or nothing was read. Our own, no source. */
const UNSURE: Air = { celsius: 3, humidityPercent: 10 };

/** Readings of so many days tell how unsure a daily pattern is. */
const TELLING_DAYS = 7;

/** After so long half of what parts the last reading from the pattern is left: weather turns within a day. Our own, no source. */
const FADES_BY_HALF = 6 * HOUR;

/** After so long a four-thousandth of it is left, which nobody could tell: each day is as the one before. */
export const ALIKE_AFTER: Minutes = 3 * 24 * 60;

/** The air expected at moments after the last reading, and before the first. */
export function expectAir({ byHour, last, off }: AirAhead): (at: Instant) => Air {
  const then = last === null ? null : usualAir(byHour, last.at);
  const apart = { ...SURE };
  if (last !== null && then !== null) {
    apart.celsius = last.celsius - then.celsius;
    apart.humidityPercent = last.humidityPercent - then.humidityPercent;
  }
  return (at) => {
    const left = last === null ? 0 : 0.5 ** (Math.abs(at - last.at) / FADES_BY_HALF);
    const expected = add(usualAir(byHour, at), apart, left);
    // What fades by a constant share (a first-order autoregression) is off the more, the less of the last reading is left.
    return off === undefined ? expected : add(expected, off, Math.sqrt(1 - left ** 2));
  };
}

function add(air: Air, other: Air, share: number): Air {
  return {
    celsius: air.celsius + share * other.celsius,
    humidityPercent: clampPercent(air.humidityPercent + share * other.humidityPercent),
  };
}

/** Air that is never colder, warmer or damper, though it may never come near them all. */
export interface AirBounds {
  readonly coldest: number;
  readonly warmest: number;
  readonly dampest: number;
}

/** Bounds of the air from the last reading on: what parts that from the pattern only fades. */
export function boundsAhead({ byHour, last }: AirAhead): AirBounds {
  const celsius = byHour.map((air) => air.celsius);
  const humidities = byHour.map((air) => air.humidityPercent);
  const then = last === null ? null : usualAir(byHour, last.at);
  const warmer = last === null || then === null ? 0 : last.celsius - then.celsius;
  const damper = last === null || then === null ? 0 : last.humidityPercent - then.humidityPercent;
  return {
    coldest: Math.min(...celsius) + Math.min(0, warmer),
    warmest: Math.max(...celsius) + Math.max(0, warmer),
    dampest: clampPercent(Math.max(...humidities) + Math.max(0, damper)),
  };
}

/** Weather other than expected: warmer or colder, damper or drier, by one standard deviation of what is unsure. */
export const WEATHERS = [1, -1].flatMap((warmer) => [1, -1].map((damper) => ({ warmer, damper })));

/** The air ahead in such weather. */
export function inWeather(ahead: AirAhead, { warmer, damper }: (typeof WEATHERS)[number]): AirAhead {
  const { celsius, humidityPercent } = ahead.unsure;
  return { ...ahead, off: { celsius: warmer * celsius, humidityPercent: damper * humidityPercent } };
}

function usualAir(byHour: readonly Air[], at: Instant): Air {
  const hours = (((at % DAY) + DAY) % DAY) / HOUR;
  const hour = Math.floor(hours);
  const share = hours - hour;
  const one = byHour[hour];
  const next = byHour[(hour + 1) % 24];
  if (one === undefined || next === undefined) throw new RangeError("a daily pattern has 24 hours");
  return {
    celsius: one.celsius + share * (next.celsius - one.celsius),
    humidityPercent: one.humidityPercent + share * (next.humidityPercent - one.humidityPercent),
  };
}

const clampPercent = (percent: number): number => Math.min(100, Math.max(0, percent));

/** Nothing is known but the last reading: it stays. */
export function staysAsRead(last: AirReading): AirAhead {
  return { rests: "last reading", byHour: Array.from({ length: 24 }, () => last), last, unsure: UNSURE };
}

/**
 * A low and a high of the day as the maker states them, the low at 5 in the morning and the high at 3 in the
 * afternoon, as temperatures by a sine between them.
 *
 * @param offset minutes by which the shop's clock is ahead of UTC
 */
export function statedDay(
  { low, high, humidityPercent }: { low: number; high: number; humidityPercent: number },
  offset: number,
): AirAhead {
  const byHour = Array.from({ length: 24 }, (_, hour): Air => {
    const local = (hour + offset / 60 + 24) % 24;
    return { celsius: (low + high) / 2 + ((high - low) / 2) * swing(local), humidityPercent };
  });
  return { rests: "stated", byHour, last: null, unsure: UNSURE };
}

const LOW_AT = 5;
const HIGH_AT = 15;

/** From -1 at the low to 1 at the high and back, by a half sine each way. */
function swing(local: number): number {
  const risen = local - LOW_AT;
  const rising = HIGH_AT - LOW_AT;
  if (risen >= 0 && risen <= rising) return -Math.cos((Math.PI * risen) / rising);
  return Math.cos((Math.PI * ((local - HIGH_AT + 24) % 24)) / (24 - rising));
}

/** The mean air of an hour of the day, counted in UTC. */
export interface HourAir extends Air {
  readonly hour: number;
  /** On how many days it was read. */
  readonly days: number;
  /** Means of the squared distances of its readings from it. */
  readonly celsiusVariance: number;
  readonly humidityVariance: number;
}

/**
 * The daily pattern of the hours given; null: some hour of the day was never read, so there is none yet. It is as unsure as
 * its readings lay apart, but by a few days alone no surer than air of which nothing was read.
 *
 * @param last the newest reading
 */
export function dailyPattern(hours: readonly HourAir[], last: AirReading | null): AirAhead | null {
  const byHour = Array.from({ length: 24 }, (_, hour) => hours.find((one) => one.hour === hour));
  const read = byHour.filter((air) => air !== undefined);
  if (read.length < 24) return null;
  const isTold = read.every(({ days }) => days >= TELLING_DAYS);
  const spread = (variances: readonly number[], least: number) =>
    Math.max(isTold ? 0 : least, Math.sqrt(variances.reduce((sum, one) => sum + one, 0) / 24));
  const unsure = {
    celsius: spread(
      read.map(({ celsiusVariance }) => celsiusVariance),
      UNSURE.celsius,
    ),
    humidityPercent: spread(
      read.map(({ humidityVariance }) => humidityVariance),
      UNSURE.humidityPercent,
    ),
  };
  return { rests: "daily pattern", byHour: read, last, unsure };
}
