import type { Air } from "../process/quantity-form.ts";
import type { Instant } from "../time/instant.ts";
import type { AirAhead } from "./air-ahead.ts";

/** The air of a place as it was read at a moment. */
export interface AirReading extends Air {
  readonly at: Instant;
}

/**
 * The air of one place through time: what was read, drawn straight between readings, and what is expected where there
 * is none.
 */
export interface AirLine {
  /** Of the time before it nothing is known. */
  readonly since: Instant;
  /** Rising in time, one a moment. May be empty. */
  readonly readings: readonly AirReading[];
  readonly ahead: AirAhead;
}

/** Readings in whatever order they came, sorted; of two at one moment the later named. */
export function sortReadings(readings: readonly AirReading[]): readonly AirReading[] {
  const isRising = readings.every(({ at }, index) => index === 0 || (readings[index - 1]?.at ?? at) < at);
  if (isRising) return readings;
  const byMoment = new Map(readings.map((reading) => [reading.at, reading]));
  return [...byMoment.values()].sort((a, b) => a.at - b.at);
}

/** Whether a line has the very readings of another and perhaps more after them: none corrected, none put between. */
export function goesOnFrom(before: AirLine, line: AirLine): boolean {
  return (
    line.since === before.since &&
    before.readings.every(({ at, celsius, humidityPercent }, index) => {
      const same = line.readings[index];
      return same?.at === at && same.celsius === celsius && same.humidityPercent === humidityPercent;
    })
  );
}

/**
 * The air of a line at a moment, and what is known of it by; null: before anything is known.
 *
 * @param expected the air ahead of its last reading
 */
export function airAt(
  { since, readings, ahead }: AirLine,
  at: Instant,
  expected: (at: Instant) => Air,
): KnownAir | null {
  if (at < since) return null;
  const next = firstFrom(readings, at);
  const [before, after] = [readings[next - 1], readings[next]];
  if (after?.at === at) return { ...after, rests: "reading" };
  if (before === undefined || after === undefined) {
    const air = { ...expected(at), rests: ahead.rests };
    return ahead.rests === "last reading" && ahead.last !== null ? { ...air, readAt: ahead.last.at } : air;
  }
  return { ...airBetween(before, after, at), rests: "readings" };
}

/** Place of the first reading at a moment or after it; their number: there is none. */
export function firstFrom(readings: readonly AirReading[], moment: Instant): number {
  let low = 0;
  let high = readings.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((readings[middle]?.at ?? moment) < moment) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Air with what it is known by: one reading, a straight line between two, or how it is expected to go on. */
export interface KnownAir extends Air {
  readonly rests: "reading" | "readings" | AirAhead["rests"];
  /** When it was read, where it is taken to have stayed as last read; missing: it was read at that moment, or else. */
  readonly readAt?: Instant;
}

/** The air between two readings, by straight lines. */
export function airBetween(one: AirReading, other: AirReading, at: Instant): Air {
  const share = other.at === one.at ? 0 : (at - one.at) / (other.at - one.at);
  return {
    celsius: one.celsius + share * (other.celsius - one.celsius),
    humidityPercent: one.humidityPercent + share * (other.humidityPercent - one.humidityPercent),
  };
}
