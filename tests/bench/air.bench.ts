import { statedDay } from "../../src/cure/air-ahead.ts";
import type { AirReading } from "../../src/cure/air-line.ts";
import { coatTimes } from "../../src/cure/coat-times.ts";
import { ShopAir } from "../../src/cure/hanging-air.ts";
import type { Coat } from "../../src/process/coat.ts";
import { MINUTE } from "../../src/time/instant.ts";
import type { Row } from "./compare-runs.ts";

const DAY = 24 * 60 * MINUTE;
const YEAR_OF_READINGS = 52_000;
const EVERY = 10 * MINUTE;
const PIECES = 200;
const COATS = 10;
const TIMES = 9;

/**
 * Predicting again what two hundred pieces do that were hung over a year, with a year of readings every ten minutes
 * behind them: with all of it summed anew, and with one reading more on what was summed before.
 */
export function measure(): Row[] {
  const readings = yearOfReadings();
  const coats = Array.from({ length: COATS }, (_, index) => coatOf(index));
  const anew = medianOf(() => {
    const air = airOf(readings.slice(0, -1));
    return timed(() => predictAll(air, coats));
  });
  const oneMore = medianOf(() => {
    const before = airOf(readings.slice(0, -1));
    predictAll(before, coats);
    return timed(() => predictAll(airOf(readings, before), coats));
  });
  return [
    {
      name: `${PIECES} pieces, ${YEAR_OF_READINGS} readings, all anew`,
      value: anew,
      unit: "ms",
      ratio: null,
    },
    { name: "the same with one reading more", value: oneMore, unit: "ms", ratio: oneMore / anew },
  ];
}

function yearOfReadings(): AirReading[] {
  return Array.from({ length: YEAR_OF_READINGS }, (_, index) => {
    const at = index * EVERY;
    const [day, year] = [(at / DAY) * 2 * Math.PI, (at / (365 * DAY)) * 2 * Math.PI];
    return {
      at,
      celsius: 14 + 6 * Math.sin(day) + 8 * Math.sin(year),
      humidityPercent: 60 + 20 * Math.cos(day),
    };
  });
}

function airOf(readings: readonly AirReading[], before: ShopAir | null = null): ShopAir {
  const last = readings.at(-1) ?? null;
  const ahead = { ...statedDay({ low: 8, high: 20, humidityPercent: 60 }, 0), last };
  return new ShopAir(new Map([["", { since: 0, readings, ahead }]]), before);
}

function coatOf(index: number): Coat {
  return {
    name: `coat ${index}`,
    curesBy: (["resin", "water", "solvent", "moisture"] as const)[index % 4] ?? "resin",
    sheetAir: { celsius: 20 + (index % 3), humidityPercent: 50 },
    lowestCelsius: 5 + index,
    activationEnergy: null,
    feelFirst: false,
    stages: { "dust-free": 45, "tack-free": 120, "dry-hard": 720, "dry-through": 4_320 },
    windows: [
      { opens: 240, shuts: 1_440, first: null },
      { opens: 1_440, shuts: null, first: null },
    ],
    flashOff: 0,
    givesOff: [],
    cautions: [],
    sheet: {},
    source: null,
  };
}

/** Every piece hung once in the year, the last of them a moment ago. */
function predictAll(air: ShopAir, coats: readonly Coat[]): void {
  for (let piece = 1; piece <= PIECES; piece++) {
    const laidAt = Math.floor((piece / PIECES) * YEAR_OF_READINGS) * EVERY;
    const coat = coats[piece % coats.length];
    if (coat === undefined) continue;
    coatTimes(coat, laidAt, null, { air: air.of([{ at: laidAt, place: "rack" }]), factor: 1 });
  }
}

function timed(work: () => void): number {
  const before = performance.now();
  work();
  return performance.now() - before;
}

function medianOf(run: () => number): number {
  const times = Array.from({ length: TIMES }, run).sort((a, b) => a - b);
  return times[Math.floor(TIMES / 2)] ?? 0;
}
