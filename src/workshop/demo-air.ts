import type { Air } from "../process/quantity-form.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import type { Workshop } from "./workshop.ts";

const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** A made-up garage in spring, invented: warmest at 16:00, with nights below what epoxies want, a little cooler each day. */
const MEAN = 17.5;
const SWING = 4;
const COOLER_A_DAY = 0.3;

/** For how long before the demo opens its air was read. */
const READ_FOR = 4 * DAY;

/** The air of the demo's shop at a moment of its last days. */
function demoAir(at: Instant, end: Instant): Air {
  const day = Math.cos((2 * Math.PI * ((at % DAY) - 15 * HOUR)) / DAY);
  const celsius = MEAN + SWING * day + (COOLER_A_DAY * (end - at)) / DAY;
  return { celsius: tenth(celsius), humidityPercent: tenth(58 - 8 * day) };
}

const tenth = (figure: number): number => Math.round(figure * 10) / 10;

/**
 * What a sensor in the demo's shop would have told, hour by hour in its last days, kept up to each moment it is asked for.
 *
 * @param end when the demo opens
 */
export function airReader(workshop: Workshop, end: Instant): (until: Instant) => Promise<void> {
  let next = Math.ceil((end - READ_FOR) / HOUR) * HOUR;
  return async (until) => {
    const readings = [];
    for (; next <= until; next += HOUR) {
      readings.push({ at: next, place: null, ...demoAir(next, end), doubt: null });
    }
    if (readings.length > 0) await workshop.recordAir(readings, "demo");
  };
}
