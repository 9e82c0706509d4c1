import { expect, test } from "vitest";
import { axisFor, benchMarks, cellOf, hourMarks } from "../../src/dashboard/clock-axis.ts";
import { sessionsBetween } from "../../src/time/sessions.ts";
import { at, dublin, eveningHours } from "../fixtures/week-time.ts";

test("33 cells show a day and a night ahead by the hour, with now a tenth of the way in", () => {
  const axis = axisFor(at("Mon 18:42"), 33);
  // 33 / 10 is 3 whole cells before 18:00.
  expect(axis).toEqual({ from: at("Mon 15:00"), minutesPerCell: 60, cells: 33 });
  expect(cellOf(axis, at("Mon 18:42"))).toBe(3);
  expect(cellOf(axis, at("Mon 14:59"))).toBe(-1);
});

test("more room is used for finer cells", () => {
  // 30 h ahead in nine tenths of 134 cells: 1800 / 120.6 = 14.9 min, so a cell is 15 min.
  expect(axisFor(at("Mon 18:42"), 134).minutesPerCell).toBe(15);
});

test("hours stand over their cells and midnight is told by its weekday", () => {
  expect(hourMarks(axisFor(at("Mon 18:42"), 33), dublin)).toBe(" 16  20  Tue 4   8   12  16  20  ");
});

test("on the night the clocks go forward an hour is missing and all later ones stand a cell earlier", () => {
  // Summer time in Dublin began on Sunday 29 March 2026 at 01:00 UTC (time-zone database): 00:00 + 3 h is 04:00.
  const axis = axisFor(at("Sat 23:30"), 33);
  const marks = hourMarks(axis, dublin);
  const midnight = marks.indexOf("Sun");
  expect(cellOf(axis, at("Sun 0:00"))).toBe(midnight);
  expect(cellOf(axis, at("Sun 4:00"))).toBe(midnight + 3);
  expect(marks.indexOf(" 8 ") + 1).toBe(midnight + 7);
});

test("bench hours stand under the hours and now in its cell", () => {
  const now = at("Mon 18:42");
  const sessions = sessionsBetween(eveningHours, dublin, at("Mon 0:00"), at("Wed 0:00"));
  // Cells from 15:00: bench 18 to 21 is cells 3, 4, 5 with now in 3; Tuesday's is 24 cells on.
  expect(benchMarks(axisFor(now, 33), sessions, now)).toBe(`   |''${" ".repeat(21)}'''${" ".repeat(3)}`);
});
