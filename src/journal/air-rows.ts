import type { Instant } from "../time/instant.ts";
import type { AirHour, AirRow, NewAir } from "./air.ts";
import type { By } from "./event.ts";
import type { SqliteFile } from "./sqlite-file.ts";

const insert = `
INSERT INTO air (at, place, celsius, humidity, "by", recorded, doubt)
SELECT :at, :place, :celsius, :humidity, :by, :recorded, :doubt
WHERE NOT EXISTS (
  SELECT 1 FROM air
  WHERE place = :place AND at = :at AND "by" = :by AND celsius = :celsius AND humidity = :humidity
    AND (doubt IS NULL OR :doubt IS NOT NULL)
)
`;

// One reading of a moment counts, the newest.
const sumHour = `
INSERT OR REPLACE INTO air_hour
SELECT :hour, :place, count(*), sum(celsius), sum(humidity), sum(celsius * celsius), sum(humidity * humidity)
FROM (
  SELECT celsius, humidity, max(seq) FROM air INDEXED BY air_place
  WHERE place = :place AND at >= :hour * 3600000 - 1800000 AND at < :hour * 3600000 + 1800000 AND doubt IS NULL
  GROUP BY at
)
`;

/**
 * Keeps readings, all or none, and adds up their hours anew. One that is there already is passed over: a logger whose pipe
 * broke off sends again. What was in doubt (its line was cut off, its place not yet known) counts once it comes without.
 *
 * @returns how many were kept
 */
export function appendAir(file: SqliteFile, readings: readonly NewAir[], by: By, recorded: Instant): number {
  const [keep, sum] = [file.prepare(insert), file.prepare(sumHour)];
  const append = file.database.transaction(() => {
    let kept = 0;
    const hours = new Map<string, { readonly hour: number; readonly place: string }>();
    for (const { at, place, celsius, humidityPercent, doubt } of readings) {
      const row = { at, place: place ?? "", celsius, humidity: humidityPercent, by, recorded, doubt };
      if (keep.run(row).changes === 0) continue;
      kept++;
      const hour = hourOf(at);
      if (doubt === null) hours.set(`${hour} ${row.place}`, { hour, place: row.place });
    }
    for (const hour of hours.values()) sum.run(hour);
    return kept;
  });
  return append.immediate();
}

/** The hour, since 1970, whose mark a moment is nearest to. */
const hourOf = (at: Instant): number => Math.floor(at / 3_600_000 + 0.5);

const ofSpan = `
SELECT at, nullif(place, '') AS place, celsius, humidity AS humidityPercent FROM air INDEXED BY air_at
WHERE at >= ? AND at < ? AND doubt IS NULL ORDER BY at, seq
`;

/** @returns readings of a span that count, by moment, then as they came */
export function readAir(file: SqliteFile, from: Instant, to: Instant): AirRow[] {
  // A STRICT table: the columns have the types of AirRow.
  return file.prepare(ofSpan).all(from, to) as AirRow[];
}

// Squares are added up as they are: what a garage's air loses by the difference of their means is the eleventh figure.
const byHour = `
SELECT nullif(place, '') AS place, hour % 24 AS hour, count(*) AS days,
  sum(celsius) / sum(readings) AS celsius, sum(humidity) / sum(readings) AS humidityPercent,
  sum(celsius_squared) / sum(readings) AS celsiusSquared, sum(humidity_squared) / sum(readings) AS humiditySquared
FROM air_hour WHERE hour >= ? GROUP BY air_hour.place, air_hour.hour % 24 ORDER BY air_hour.place, air_hour.hour % 24
`;

/** @returns the mean air of each hour of the day by place, over all hours from a moment on that have readings that count */
export function readAirByHour(file: SqliteFile, from: Instant): AirHour[] {
  const rows = file.prepare(byHour).all(hourOf(from)) as (Omit<
    AirHour,
    "celsiusVariance" | "humidityVariance"
  > & { readonly celsiusSquared: number; readonly humiditySquared: number })[];
  return rows.map(({ celsiusSquared, humiditySquared, ...hour }) => ({
    ...hour,
    celsiusVariance: Math.max(0, celsiusSquared - hour.celsius ** 2),
    humidityVariance: Math.max(0, humiditySquared - hour.humidityPercent ** 2),
  }));
}

const newest = "SELECT max(seq) FROM air";

/** @returns the count of the newest reading; 0: there is none */
export function newestAir(file: SqliteFile): number {
  return Number(file.prepare(newest).pluck().get() ?? 0);
}
