import { instantOf } from "../../src/time/civil.ts";
import type { CivilDate, Instant } from "../../src/time/instant.ts";
import { readZone } from "../../src/time/read-zone.ts";
import type { Zone } from "../../src/time/zone.ts";

/** Zones with every oddity the database has: half-hour shifts, odd minutes, midnight changes, far ends, none at all. */
export const NAMES_TO_TRY = [
  "UTC",
  "Europe/Dublin",
  "Europe/Berlin",
  "America/New_York",
  "America/St_Johns",
  "America/Havana",
  "America/Santiago",
  "America/Nuuk",
  "Atlantic/Azores",
  "Africa/Cairo",
  "Africa/Casablanca",
  "Antarctica/Troll",
  "Asia/Beirut",
  "Asia/Gaza",
  "Asia/Almaty",
  "Asia/Kathmandu",
  "Australia/Lord_Howe",
  "Pacific/Chatham",
  "Pacific/Kiritimati",
  "Pacific/Pago_Pago",
];

/** A zone that must be; a misspelling in a test is our mistake. */
export function zoneNamed(name: string): Zone {
  const zone = readZone(name);
  if (zone === null) throw new Error(`no zone ${name}`);
  return zone;
}

export const DUBLIN = zoneNamed("Europe/Dublin");

/** A moment by Dublin's clock: `dublin("2026-03-28", "18:00")`. */
export function dublin(date: CivilDate, clock: string): Instant {
  const [hour = 0, minute = 0] = clock.split(":").map(Number);
  return instantOf(DUBLIN, date, hour * 60 + minute);
}
