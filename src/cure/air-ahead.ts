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
}

/** After so long half of what parts the last reading from the pattern is left: weather turns within a day. Our own, no source. */
const FADES_BY_HALF = 6 * HOUR;

/** After so long a four-thousandth of it is left, which nobody could tell: each day is as the one before. */
export const ALIKE_AFTER: Minutes = 3 * 24 * 60;

/** The air expected at a moment after the last reading. */
export function airAhead({ byHour, last }: AirAhead, at: Instant): Air {
  const usual = usualAir(byHour, at);
  if (last === null) return usual;
  const then = usualAir(byHour, last.at);
  const left = 0.5 ** (Math.max(0, at - last.at) / FADES_BY_HALF);
  return {
    celsius: usual.celsius + left * (last.celsius - then.celsius),
    humidityPercent: clampPercent(
      usual.humidityPercent + left * (last.humidityPercent - then.humidityPercent),
    ),
  };
}

/** The same for one who asks for the same moments again and again, as coats that dry in one air do. */
export function rememberAhead(ahead: AirAhead): (at: Instant) => Air {
  const known = new Map<Instant, Air>();
  return (at) => {
    let air = known.get(at);
    if (air === undefined) {
      air = airAhead(ahead, at);
      known.set(at, air);
    }
    return air;
  };
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
  return { rests: "last reading", byHour: Array.from({ length: 24 }, () => last), last };
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
  return { rests: "stated", byHour, last: null };
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
}

/**
 * The daily pattern of the hours given; null: some hour of the day was never read, so there is none yet.
 *
 * @param last the newest reading
 */
export function dailyPattern(hours: readonly HourAir[], last: AirReading | null): AirAhead | null {
  const byHour = Array.from({ length: 24 }, (_, hour) => hours.find((one) => one.hour === hour));
  const read = byHour.filter((air) => air !== undefined);
  return read.length < 24 ? null : { rests: "daily pattern", byHour: read, last };
}
