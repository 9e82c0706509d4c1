/** ISO 8601-1:2019, 3.1.1.23: a week begins on Monday, and week 01 holds the year's first Thursday. */
import { expect, test } from "vitest";
import { addDays } from "../../src/time/civil.ts";
import { weekOf, weekSpan } from "../../src/time/weeks.ts";
import { DUBLIN } from "../time/zones-to-try.ts";

test.each([
  // The table of dates round New Year in the encyclopaedia article "ISO week date", from the rule of the standard.
  ["1977-01-01", "1976-W53"],
  ["1977-12-31", "1977-W52"],
  ["1978-01-01", "1977-W52"],
  ["1978-12-31", "1978-W52"],
  ["1979-12-30", "1979-W52"],
  ["1979-12-31", "1980-W01"],
  ["1980-12-28", "1980-W52"],
  ["1980-12-29", "1981-W01"],
  ["1981-12-31", "1981-W53"],
  ["1982-01-03", "1981-W53"],
  ["2008-12-29", "2009-W01"],
  ["2009-12-31", "2009-W53"],
  ["2010-01-03", "2009-W53"],
  ["2026-03-29", "2026-W13"],
])("%s lies in %s", (date, name) => {
  expect(weekOf(date).name).toBe(name);
});

test("with Sunday first, a week belongs to the year of its fourth day", () => {
  // Sunday 29 March begins a week; its Wednesday is 1 April, day 91 of the year: (91 - 1) / 7 = 12, so week 13.
  expect(weekOf("2026-03-29", 7)).toEqual({ start: "2026-03-29", name: "2026-W13" });
  expect(weekOf("2026-03-28", 7)).toEqual({ start: "2026-03-22", name: "2026-W12" });
});

test("every day of thirteen years lies in the week that begins on or before it", () => {
  for (let date = "2024-01-01"; date < "2037-01-01"; date = addDays(date, 1)) {
    for (const first of [1, 6, 7]) {
      const { start, name } = weekOf(date, first);
      expect(start <= date && date < addDays(start, 7)).toBe(true);
      expect(weekOf(start, first)).toEqual({ start, name });
      expect(weekOf(addDays(start, 7), first).name > name).toBe(true);
    }
  }
});

test("the week the clocks go forward is an hour shorter", () => {
  const { from, to } = weekSpan("2026-03-23", DUBLIN);
  expect((to - from) / 3_600_000).toBe(7 * 24 - 1);
});
