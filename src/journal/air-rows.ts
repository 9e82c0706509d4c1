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
)
`;

/**
 * Keeps readings, all or none. One that is there already is passed over: a logger whose pipe broke off sends again.
 *
 * @returns how many were kept
 */
export function appendAir(file: SqliteFile, readings: readonly NewAir[], by: By, recorded: Instant): number {
  const statement = file.prepare(insert);
  const append = file.database.transaction(() => {
    let kept = 0;
    for (const { at, place, celsius, humidityPercent, doubt } of readings) {
      const row = { at, place: place ?? "", celsius, humidity: humidityPercent, by, recorded, doubt };
      kept += statement.run(row).changes;
    }
    return kept;
  });
  return append.immediate();
}

const ofSpan = `
SELECT seq, at, place, celsius, humidity AS humidityPercent, "by", doubt FROM air INDEXED BY air_at
WHERE at >= ? AND at < ? ORDER BY at, seq
`;

/** @returns readings of a span, by moment, then as they came: those in doubt too */
export function readAir(file: SqliteFile, from: Instant, to: Instant): AirRow[] {
  // STRICT tables: but for the place the columns have the types of AirRow.
  const rows = file.prepare(ofSpan).all(from, to) as (AirRow & { place: string })[];
  return rows.map((row) => ({ ...row, place: row.place === "" ? null : row.place }));
}

// An hour of the day is half an hour to each side of its mark.
const byHour = `
SELECT place, ((at + 1800000) / 3600000) % 24 AS hour, count(*) AS readings,
  avg(celsius) AS celsius, avg(humidity) AS humidityPercent
FROM air INDEXED BY air_at WHERE at >= ? AND doubt IS NULL GROUP BY place, hour ORDER BY place, hour
`;

/** @returns the mean air of each hour of the day by place, over all readings from a moment on that count */
export function readAirByHour(file: SqliteFile, from: Instant): AirHour[] {
  const rows = file.prepare(byHour).all(from) as (AirHour & { place: string })[];
  return rows.map((row) => ({ ...row, place: row.place === "" ? null : row.place }));
}

const newest = "SELECT max(seq) FROM air";

/** @returns the count of the newest reading; 0: there is none */
export function newestAir(file: SqliteFile): number {
  return Number(file.prepare(newest).pluck().get() ?? 0);
}
