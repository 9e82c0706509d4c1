import fc from "fast-check";
import { staysAsRead } from "../../src/cure/air-ahead.ts";
import type { AirLine, AirReading } from "../../src/cure/air-line.ts";
import { MINUTE } from "../../src/time/instant.ts";

/** The air of a garage at some moment of the year. */
export const anyAir = fc.record({
  celsius: fc.double({ min: -5, max: 40, noNaN: true }),
  humidityPercent: fc.double({ min: 5, max: 100, noNaN: true }),
});

/** Some readings over three days from moment 0 on, then the air as last read. */
export const anyLine: fc.Arbitrary<AirLine> = fc
  .tuple(
    anyAir,
    fc.uniqueArray(fc.tuple(fc.integer({ min: 1, max: 72 * 60 }), anyAir), {
      selector: ([minute]) => minute,
      maxLength: 30,
    }),
  )
  .map(([first, later]) => {
    const readings: AirReading[] = [
      { at: 0, ...first },
      ...later
        .toSorted(([one], [other]) => one - other)
        .map(([minute, air]) => ({ at: minute * MINUTE, ...air })),
    ];
    return { since: 0, readings, ahead: staysAsRead(readings.at(-1) ?? { at: 0, ...first }) };
  });
