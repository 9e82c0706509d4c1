import fc from "fast-check";
import { expect, test } from "vitest";
import { AirLines, gapsBetween, isOldAsByZone } from "../../src/words/air-lines.ts";
import { type AirWords, readAirWords } from "../../src/words/read-air.ts";
import { zoneNamed } from "../time/zones-to-try.ts";

const now = Date.UTC(2026, 2, 24, 22, 0);
const as: AirWords = { now, zone: zoneNamed("Etc/UTC"), unit: "C" };

test.each([
  ["62F 58%", now, (62 - 32) / 1.8, 58],
  ["16.5C 58%", now, 16.5, 58],
  ["58 % 16.5 °C", now, 16.5, 58],
  ["16,5C 58%", now, 16.5, 58],
  ["58,5 %; -3,25 °C", now, -3.25, 58.5],
  ["2026-03-24 21:59,20C,50%", now - 60_000, 20, 50],
  ["-3C, 80%", now, -3, 80],
  ["2026-03-24T21:59Z 20C 50%", now - 60_000, 20, 50],
  ["50%; 20 °C; 2026-03-24 21:59", now - 60_000, 20, 50],
  ["1774389540 20C 50%", now - 60_000, 20, 50],
  ["1774389540000,20C,50%", now - 60_000, 20, 50],
  ['{"temperature": 20.1, "humidity": 50}', now, 20.1, 50],
  ['garage/air {"temp_f":"68","rh":"50","ts":1774389540}', now - 60_000, 20, 50],
  ['{"time":"2026-03-24T22:59:00+01:00","temperature":"68 F","humidity":"50 %"}', now - 60_000, 20, 50],
])("reads %s", (text, at, celsius, humidityPercent) => {
  const read = readAirWords(text, as);
  expect(read).toMatchObject({ at, humidityPercent, doubt: null });
  expect("celsius" in read && read.celsius).toBeCloseTo(celsius, 9);
});

test.each([
  ["20 50%", /lacks a temperature with its unit/],
  ["20C 50", /lacks a humidity in %/],
  ["hello", /lacks a temperature/],
  ['{"temperature": 20', /no JSON|lacks/],
  ['{"humidity": 20}', /lacks a temperature/],
  ["someday 20C 50%", /someday/],
])("says what %s lacks", (text, problem) => {
  const read = readAirWords(text, as);
  expect("problem" in read && read.problem).toMatch(problem);
});

test.each([
  `${"x".repeat(100_000)}`,
  `{"humidity": 20, ${"x".repeat(100_000)}}`,
  `${"x".repeat(100_000)} 20C 50%`,
])("a line without end is told by its beginning", (text) => {
  const read = readAirWords(text, as);
  expect("problem" in read && read.problem.length).toBeLessThan(200);
});

test.each([
  ["20C 140%", /140 % cannot be/],
  ["400F 50%", /no air of a bench/],
  // 68 °F and 50 % by a sensor whose units are taken for others.
  ["68C 50%", /68\.0 °C is no air of a bench, so the unit may be wrong/],
  ['{"temperature": 20, "humidity": 0.5}', /0\.5 % is drier than any air, so it may be a share of 1/],
  ["2026-03-25T22:00Z 20C 50%", /of the future/],
])("marks %s as in doubt", (text, doubt) => {
  const read = readAirWords(text, as);
  expect("doubt" in read && read.doubt).toMatch(doubt);
});

test("an hour in Fahrenheit is the same hour in Celsius", () => {
  fc.assert(
    fc.property(fc.integer({ min: -100, max: 450 }), (tenths) => {
      const celsius = tenths / 10;
      const read = readAirWords(`${celsius * 1.8 + 32}F 50%`, as);
      expect("celsius" in read && Math.abs(read.celsius - celsius)).toBeLessThan(1e-9);
    }),
  );
});

test("a table is read by the names of its columns, in any order and unit", () => {
  const table = [
    "RH (%),Location,Temperature (°F),Date Time,Battery",
    '58,"warm box",62,2026-03-24 21:00,3.1',
    ",rack,62,2026-03-24 21:10,3.1",
    "",
    "60,,62.0,2026-03-24 21:20,3.1",
  ].join("\r\n");
  const [first, second, third, ...more] = new AirLines(() => as).take(`${table}\n`);
  expect(first).toMatchObject({ line: 2, place: "warm box", humidityPercent: 58, at: now - 3_600_000 });
  expect(second).toMatchObject({ line: 3, problem: expect.stringMatching(/lacks a humidity/) });
  expect(third).toMatchObject({ line: 5, place: null, celsius: expect.closeTo(16.667, 3) });
  expect(more).toEqual([]);
});

test("semicolons part columns that have decimal commas", () => {
  const lines = new AirLines(() => as);
  const read = lines.take("time;temp_c;humidity\n2026-03-24 21:00;16,5;58,5\n");
  expect(read).toMatchObject([{ celsius: 16.5, humidityPercent: 58.5 }]);
});

test("quoted cells have decimal commas too, where semicolons part them", () => {
  const lines = new AirLines(() => as);
  expect(lines.take('time;temperature;rh\n"2026-03-24 21:00";"19,1";"55,5"\n')).toMatchObject([
    { celsius: 19.1, humidityPercent: 55.5, doubt: null },
  ]);
});

test("lines may come in pieces of any size, the last without an end", () => {
  const text = "20C 50%\n21C 51%\r\n22C 52%";
  fc.assert(
    fc.property(fc.array(fc.nat({ max: text.length })), (cuts) => {
      const lines = new AirLines(() => as);
      const ends = [...cuts.toSorted((a, b) => a - b), text.length];
      let from = 0;
      const read = ends.flatMap((end) => {
        const piece = text.slice(from, end);
        from = end;
        return [...lines.take(piece)];
      });
      const all = [...read, ...lines.end()];
      expect(all.map((one) => "celsius" in one && one.celsius)).toEqual([20, 21, 22]);
    }),
  );
});

test("no text makes it throw", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), (text) => {
      const lines = new AirLines(() => as);
      expect(() => [lines.take(text), lines.end(), readAirWords(text, as)]).not.toThrow();
    }),
  );
});

test("the last row of a table that has no end is in doubt: its last figure may be cut off", () => {
  const lines = new AirLines(() => as);
  // 55 %, broken off.
  expect(lines.take("time,temperature,humidity\n2026-03-24 21:00,18,55\n2026-03-24 21:10,18,5")).toHaveLength(
    1,
  );
  expect(lines.end()).toMatchObject([
    { line: 3, humidityPercent: 5, doubt: expect.stringMatching(/cut off/) },
  ]);
  expect(new AirLines(() => as).take("")).toEqual([]);
  // A line of words is whole where its percent sign is.
  const words = new AirLines(() => as);
  words.take("20C 50%");
  expect(words.end()).toMatchObject([{ humidityPercent: 50, doubt: null }]);
});

test.each([
  [60, true],
  [62, true],
  [330, true],
  [0, false],
  [10, false],
  [45, false],
  [24 * 60, false],
])("a reading %i min old as it comes may be of another zone: %s", (minutes, isOld) => {
  expect(isOldAsByZone(now - minutes * 60_000, now)).toBe(isOld);
});

test("a span without readings is told from three hours on", () => {
  const hour = 3_600_000;
  expect(gapsBetween([5 * hour, 0, hour, 4 * hour, 9 * hour])).toEqual([{ from: 5 * hour, to: 9 * hour }]);
});
