import { expect, test } from "vitest";
import { axisFor } from "../../src/dashboard/clock-axis.ts";
import { benchMarks, hourMarks } from "../../src/dashboard/clock-marks.ts";
import { sessionsBetween } from "../../src/time/sessions.ts";
import { at, dublin, eveningHours } from "../fixtures/week-time.ts";

/** Weekdays 18 to 21, Saturday 9 to 16. */
const sessions = sessionsBetween(eveningHours, dublin, at("last Sun 0:00"), at("next Mon 23:00"));
const axisAt = (when: string) => axisFor(at(when), 40, sessions);
const hoursAt = (when: string) => hourMarks(axisAt(when), dublin);

test("hours stand over their cells, the night is named, and a new day has its weekday", () => {
  // Cells of 15 min: 18:00 at 2, 21:00 at 14; the night in ten; Tue 18:00 at 24, 21:00 at 36. The four are seams.
  expect(hoursAt("Mon 18:42")).toBe("  18  19  20  night Tue 18  19  20      ");
  expect(benchMarks(axisAt("Mon 18:42"), at("Mon 18:42"))).toBe(
    `  :'|${"'".repeat(9)}:${" ".repeat(9)}:${"'".repeat(11)}:   `,
  );
});

test("a day on which the bench stays shut is named", () => {
  expect(hoursAt("Sat 14:10")).toMatch(/ 14 {2}15 +Sun +Mon 18/);
});

test("while the bench is shut every fourth hour is told, and midnight by its weekday", () => {
  // An hour a cell from 21:00 on.
  expect(hoursAt("Mon 22:20")).toMatch(/^[ 0-9]*Tue 4 {3}8 {3}12 +18/);
});

test("on the night the clocks go forward an hour is missing and all later ones stand a cell earlier", () => {
  // Summer time in Dublin began on Sunday 29 March 2026 at 01:00 UTC (time-zone database): 00:00 + 7 h is 08:00.
  const hours = hoursAt("Sat 23:30");
  const midnight = hours.indexOf("Sun");
  expect(hours.indexOf(" 8 ") + 1).toBe(midnight + 7);
  expect(hours.indexOf(" 12 ") + 1).toBe(midnight + 11);
});
