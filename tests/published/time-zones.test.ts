/** The zone table against the time-zone database: named changes of its release 2025b, and Node's own copy throughout. */
import { describe, expect, test } from "vitest";
import { localTime, offsetAt } from "../../src/time/civil.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { readZone } from "../../src/time/read-zone.ts";
import { zoneNamed } from "../time/zones-to-try.ts";

const FROM = Date.UTC(2024, 0, 1);
const TO = Date.UTC(2036, 0, 1);

describe("changes published by the database (release 2025b, as its program zdump lists them)", () => {
  test.each([
    // R E 1981 ma - Mar lastSu 1u; R E 1996 ma - O lastSu 1u
    ["Europe/Dublin", "2026-03-29T01:00Z", 0, 60],
    ["Europe/Dublin", "2026-10-25T01:00Z", 60, 0],
    // R u 2007 ma - Mar Su>=8 2; R u 2007 ma - N Su>=1 2
    ["America/New_York", "2026-03-08T07:00Z", -300, -240],
    ["America/New_York", "2026-11-01T06:00Z", -240, -300],
    // R LH 2008 ma - Ap Su>=1 2 0; R LH 2008 ma - O Su>=1 2 0:30 (half an hour only)
    ["Australia/Lord_Howe", "2026-04-04T15:00Z", 660, 630],
    ["Australia/Lord_Howe", "2026-10-03T15:30Z", 630, 660],
    // 12:45 east, changing at 2:45 of standard time
    ["Pacific/Chatham", "2026-04-04T14:00Z", 825, 765],
    ["Pacific/Chatham", "2026-09-26T14:00Z", 765, 825],
    // R K 2023 ma - Ap lastF 0 1; R K 2023 ma - O lastTh 24 0 (at midnight)
    ["Africa/Cairo", "2026-04-23T22:00Z", 120, 180],
    ["Africa/Cairo", "2026-10-29T21:00Z", 180, 120],
    // Z Asia/Almaty 6 - %z 2024 Mar: once, for good
    ["Asia/Almaty", "2024-02-29T18:00Z", 360, 300],
  ])("%s at %s goes from %i to %i minutes", (name, moment, before, later) => {
    const zone = zoneNamed(name);
    const at = Date.parse(moment);
    expect(zone.changes).toContainEqual({ at, offsetMinutes: later });
    expect([offsetAt(zone, at - 1), offsetAt(zone, at)]).toEqual([before, later]);
  });

  test("a summer time put off for some weeks is not missed", () => {
    // R K 2010: A 10 24 0 -, S 9 24 1 S, S lastTh 24 0 -: Cairo, off from 11 August, on from 10 September, off from October.
    const changes = zoneNamed("Africa/Cairo").changes.filter(
      ({ at }) => at > Date.UTC(2010, 7, 1) && at < Date.UTC(2010, 10, 1),
    );
    expect(changes).toEqual([
      { at: Date.parse("2010-08-10T21:00Z"), offsetMinutes: 120 },
      { at: Date.parse("2010-09-09T22:00Z"), offsetMinutes: 180 },
      { at: Date.parse("2010-09-30T21:00Z"), offsetMinutes: 120 },
    ]);
  });
});

/** How Node's Intl shows a moment: written apart from the table's own reader. */
function intlReading(name: string): (instant: number) => string {
  const format = new Intl.DateTimeFormat("en-CA", {
    timeZone: name,
    dateStyle: "short",
    timeStyle: "short",
    hourCycle: "h23",
  });
  return (instant) => format.format(instant).replace(", ", " ");
}

function tableReading(zone: ReturnType<typeof zoneNamed>, instant: number): string {
  const { date, hour, minute } = localTime(zone, instant);
  return `${date} ${String(hour).padStart(2, "0")}:${String(minute).padStart(2, "0")}`;
}

describe("Node's Intl", () => {
  test("every zone it knows shows the same clock every third day of 2024 to 2035, and round each change", () => {
    const names = Intl.supportedValuesOf("timeZone");
    expect(names.length).toBeGreaterThan(400);
    const wrong: string[] = [];
    let changes = 0;
    for (const name of names) {
      const zone = zoneNamed(name);
      const shown = intlReading(name);
      const check = (instant: number) => {
        const [theirs, ours] = [shown(instant), tableReading(zone, instant)];
        if (theirs !== ours) wrong.push(`${name} ${new Date(instant).toISOString()} ${theirs}, not ${ours}`);
      };
      for (const change of zone.changes.filter(({ at }) => at >= FROM && at < TO)) {
        changes += 1;
        for (const instant of [change.at - MINUTE, change.at, change.at + MINUTE]) check(instant);
      }
      // Three days and 7 h 13 min, so that every hour of the day comes up.
      for (let at = FROM; at < TO; at += (3 * 1440 + 433) * MINUTE) check(at);
    }
    expect(wrong).toEqual([]);
    expect(changes).toBeGreaterThan(2_000);
  });

  test("a zone nobody knows is no zone", () => {
    expect(readZone("Europe/Dubln")).toBeNull();
    expect(readZone("")).toBeNull();
  });
});
