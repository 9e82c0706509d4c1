import { expect, test } from "vitest";
import { axisFor, cellOf } from "../../src/dashboard/clock-axis.ts";
import { sessionsBetween } from "../../src/time/sessions.ts";
import { at, dublin, eveningHours } from "../fixtures/week-time.ts";

/** Weekdays 18 to 21, Saturday 9 to 16. */
const sessions = sessionsBetween(eveningHours, dublin, at("last Sun 0:00"), at("next Mon 23:00"));

test("40 cells reach from an hour ago over tonight and the night to the end of tomorrow's bench hours", () => {
  const axis = axisFor(at("Mon 18:42"), 40, sessions);
  // Tonight from 18:30 on and tomorrow are 150 + 180 min, the night takes 10 cells, and a tenth, 4, lie behind: at
  // 15 min a cell 10 + 10 + 12 + 4 = 36 of 40; at 10 min 14 + 10 + 18 + 4 = 46.
  expect(axis.minutesPerCell).toBe(15);
  expect(axis.starts).toHaveLength(41);
  expect(cellOf(axis, at("Mon 18:42"))).toBe(4);
  // Before 18:00 the bench was shut, and those hours are drawn short.
  expect(cellOf(axis, at("Mon 18:00"))).toBe(2);
  expect(cellOf(axis, at("Mon 21:00"))).toBe(14);
  expect(cellOf(axis, at("Tue 18:00"))).toBe(24);
  expect(cellOf(axis, at("Tue 21:00"))).toBe(36);
});

test("a moment before the first cell is at -1, one past the last at their number", () => {
  const axis = axisFor(at("Mon 18:42"), 40, sessions);
  expect(cellOf(axis, at("last Sun 12:00"))).toBe(-1);
  expect(cellOf(axis, at("next Mon 12:00"))).toBe(40);
});

test("more room is used for finer cells, less for coarser", () => {
  // At 5 min 28 + 10 + 36 cells and 13 behind are 87 of 134.
  expect(axisFor(at("Mon 18:42"), 134, sessions).minutesPerCell).toBe(5);
  // At 20 min 7 + 10 + 9 cells and 3 behind are 29 of 33; at 15 min 35.
  expect(axisFor(at("Mon 18:42"), 33, sessions).minutesPerCell).toBe(20);
});

test("while the bench is shut its hours are drawn whole around now", () => {
  const axis = axisFor(at("Tue 10:30"), 40, sessions);
  const now = cellOf(axis, at("Tue 10:30"));
  expect(cellOf(axis, at("Tue 13:30")) - now).toBe(3);
  expect(cellOf(axis, at("Tue 18:00")) - now).toBe(8);
});

test("a Sunday is no longer than a night", () => {
  const axis = axisFor(at("Sat 15:00"), 40, sessions);
  // Shut from Sat 16:00 to Mon 18:00, 49 hours in that week: ten cells.
  expect(cellOf(axis, at("next Mon 18:00")) - cellOf(axis, at("Sat 16:00"))).toBe(10);
});

test.each([0, 1, 5, 39, 200])("with %i cells each begins later than the one before", (cells) => {
  for (const when of ["Mon 18:42", "Tue 3:00", "Sat 15:59", "Sun 12:00"]) {
    const { starts } = axisFor(at(when), cells, sessions);
    expect(starts).toHaveLength(cells + 1);
    expect(starts.every((start, index) => index === 0 || start > (starts[index - 1] ?? 0))).toBe(true);
  }
});

test("with no bench hours ahead the clock goes on by the hour", () => {
  const axis = axisFor(at("Mon 18:42"), 40, []);
  expect(axis.starts).toHaveLength(41);
  expect(cellOf(axis, at("Tue 6:42")) - cellOf(axis, at("Mon 18:42"))).toBe(12);
});
