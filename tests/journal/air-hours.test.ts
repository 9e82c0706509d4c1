import Database from "better-sqlite3";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { AirHour, NewAir } from "../../src/journal/air.ts";
import { FORMS } from "../../src/journal/tables.ts";
import { days, hours, monday } from "./made-acts.ts";
import { bareFile, bareRows, openForTest, scratchFolder, scratchJournal } from "./scratch.ts";

const reading = (at: number, celsius: number, other: Partial<NewAir> = {}): NewAir => ({
  ...{ at, place: null, celsius, humidityPercent: 50, doubt: null },
  ...other,
});

/** Two days of readings in any order, some sent twice, some in doubt. */
const anyReadings = fc.array(
  fc.record({
    at: fc.integer({ min: 0, max: 48 * 4 }).map((quarter) => monday + quarter * 900_000),
    place: fc.constantFrom(null, "warm box"),
    celsius: fc.integer({ min: 5, max: 30 }),
    humidityPercent: fc.integer({ min: 30, max: 90 }),
    doubt: fc.constantFrom(null, null, null, "its clock is wrong"),
  }),
  { maxLength: 60 },
);

/** The same reckoned from the readings themselves: of each place and moment the last that counts. */
function plainly(readings: readonly NewAir[]): AirHour[] {
  const counted = new Map<string, NewAir>();
  for (const one of readings) if (one.doubt === null) counted.set(`${one.place} ${one.at}`, one);
  const byHour = new Map<string, NewAir[]>();
  for (const one of counted.values()) {
    const key = `${one.place ?? ""}\n${Math.floor(one.at / 3_600_000 + 0.5) % 24}`;
    byHour.set(key, [...(byHour.get(key) ?? []), one]);
  }
  return [...byHour.values()].map((those) => {
    const mean = (of: (one: NewAir) => number) => those.reduce((sum, one) => sum + of(one), 0) / those.length;
    const [celsius, humidityPercent] = [mean((one) => one.celsius), mean((one) => one.humidityPercent)];
    return {
      place: those[0]?.place ?? null,
      hour: Math.floor((those[0]?.at ?? 0) / 3_600_000 + 0.5) % 24,
      days: new Set(those.map(({ at }) => Math.floor(at / 3_600_000 + 0.5))).size,
      celsius,
      humidityPercent,
      celsiusVariance: mean((one) => (one.celsius - celsius) ** 2),
      humidityVariance: mean((one) => (one.humidityPercent - humidityPercent) ** 2),
    };
  });
}

const sorted = (rows: readonly AirHour[]) =>
  rows
    .map((row) =>
      Object.entries(row)
        .sort()
        .map(([name, value]) => `${name} ${typeof value === "number" ? value.toFixed(6) : value}`)
        .join(),
    )
    .sort();

describe("the hours of the day, kept as readings come,", () => {
  test("are what all readings give, in whatever order and portions they came", async () => {
    await fc.assert(
      fc.asyncProperty(anyReadings, fc.integer({ min: 1, max: 9 }), async (readings, portion) => {
        const { journal } = await scratchJournal();
        for (let from = 0; from < readings.length; from += portion)
          await journal.appendAir(readings.slice(from, from + portion), "sensor:logger", monday);
        // One that is there already is passed over: then the earlier one keeps its place in the sequence.
        const seen = new Set<string>();
        const kept = readings.filter(({ at, place, celsius, humidityPercent }) => {
          const key = [at, place, celsius, humidityPercent].join();
          return !seen.has(key) && seen.add(key);
        });
        expect(sorted(await journal.airByHour(monday - days(1)))).toEqual(sorted(plainly(kept)));
      }),
      { numRuns: 25 },
    );
  });

  test("count from the hour of the moment asked from", async () => {
    const { journal } = await scratchJournal();
    await journal.appendAir([reading(monday, 10), reading(monday + hours(24), 20)], "maker", monday);
    const celsius = async (from: number) => (await journal.airByHour(from)).map((hour) => hour.celsius);
    expect(await celsius(monday)).toEqual([15]);
    expect(await celsius(monday + hours(1))).toEqual([20]);
  });

  test("are made of the readings of a file that had none of them", async () => {
    const readings = Array.from({ length: 60 }, (_, index) => reading(monday + index * 900_000, index % 17));
    const { journal, path } = await scratchJournal();
    await journal.appendAir(
      [...readings, reading(monday, 90, { doubt: "the unit may be wrong" })],
      "maker",
      monday,
    );
    const older = `${scratchFolder()}/older.db`;
    new Database(older).exec(FORMS.slice(0, 4).join("")).pragma("user_version = 4");
    bareFile(older).exec(`ATTACH '${path}' AS newer; INSERT INTO air SELECT * FROM newer.air;`);
    bareFile(older).pragma(`application_id = ${bareFile(path).pragma("application_id", { simple: true })}`);
    await openForTest(older);
    expect(bareRows(older, "air_hour")).toEqual(bareRows(path, "air_hour"));
    expect(bareRows(older, "air_hour").length).toBeGreaterThan(10);
  });
});
