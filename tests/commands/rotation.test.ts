import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";
import { done, newest, refused, typeAtTerminal } from "./type-lines.ts";

let bench: BenchInAFolder;

beforeEach(async () => {
  bench = new BenchInAFolder(at("Mon 17:50"));
  await done(bench, "Mon 17:50", "settings zone Europe/Dublin");
});
afterEach(() => bench.remove());

const DAILY = 'rotation "carved walker" --hours "daily 9-17"';

interface Rotation {
  pace: { pieces: number; days: number };
  table: { out: number; pace: { pieces: number; days: number }; proven: boolean }[];
  timetable: {
    is: string;
    out: number;
    outToDryThrough: number;
    span: number;
    proven: boolean;
    days: { opens: string; closes: string; work: { from: string; step: string; ago: number }[] }[];
  };
}

describe("rotation", () => {
  test("says how many to keep out for one a day, counted both ways, with the card of the day", async () => {
    const said = await done(bench, "Mon 18:00", DAILY);
    expect(said).toContain("carved walker in rotation, daily 9:00-17:00");
    expect(said).toMatch(/1 a day: 3 out, counted to the last hands-on; \d+ counted to dry-through\./);
    expect(said).toContain("No timetable takes less: proven.");
    expect(said).toMatch(/\n {2}\d\d:\d\d {2}melt lead +20 min +lead pot\n {2}\d\d:\d\d {2}pour the ballast/);
    expect(said).toContain("today's piece");
    expect(said).toContain("of 2 days ago");
    expect(said).toMatch(/before you shut, put away: .*melt lead \(15 min\)/);
  });

  test("gives the quickest pace for each number out from one up, each quicker than the one before", async () => {
    const { table } = await bench.json<Rotation>(DAILY);
    expect(table[0]).toEqual({ out: 1, pace: { pieces: 1, days: 3 }, proven: true });
    for (const [index, { out, pace }] of table.entries()) {
      const before = table[index - 1];
      if (before === undefined) continue;
      expect(out).toBeGreaterThan(before.out);
      expect(pace.pieces / pace.days).toBeGreaterThan(before.pace.pieces / before.pace.days);
    }
  });

  test("with two out takes the quickest pace that has no more", async () => {
    const { pace, timetable } = await bench.json<Rotation>(`${DAILY} --out 2`);
    expect(pace).toEqual({ pieces: 1, days: 2 });
    expect(timetable).toMatchObject({ is: "timetable", out: 2, proven: true });
  });

  test("has every step of the process once in the round, inside bench hours", async () => {
    const { timetable } = await bench.json<Rotation>(`${DAILY} --pace 1/day`);
    const [day] = timetable.days;
    const steps = day?.work.map(({ step }) => step) ?? [];
    expect(new Set(steps).size).toBe(16);
    expect(day?.work.every(({ from }) => from >= "09:00" && from < "17:00")).toBe(true);
    expect(day?.work.some(({ ago }) => ago === 2)).toBe(true);
  });

  test("keeps every line to 80 columns at a terminal of 80", async () => {
    const { out } = await typeAtTerminal(bench, DAILY, []);
    expect(out.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  test("takes a week of hours with closed days as a round of its own", async () => {
    const { timetable, pace } = await bench.json<Rotation>('rotation "carved walker" --pace 1/week');
    expect(pace).toEqual({ pieces: 1, days: 7 });
    expect(timetable).toMatchObject({ is: "timetable", out: 1, proven: true });
    // Weekdays and Saturday of the assumed hours.
    expect(timetable.days.map(({ opens }) => opens)).toEqual([...Array(5).fill("18:00"), "09:00"]);
  });

  test("finds more pieces a week for more out in evenings, and keeps to the number out that was asked", async () => {
    const { table, pace, timetable } = await bench.json<Rotation>('rotation "cast foam minnow" --out 3');
    const quickest = table.map((row) => row.pace.pieces / row.pace.days);
    expect(quickest).toEqual([...quickest].sort((one, other) => one - other));
    expect(new Set(quickest).size).toBe(quickest.length);
    // 2 days 14 h a piece alone: with three out at most 3 x 7 / 2.6 = 8 a week.
    expect(pace.pieces).toBeGreaterThanOrEqual(4);
    expect(pace.pieces).toBeLessThanOrEqual(8);
    expect(timetable.out).toBeLessThanOrEqual(3);
    const hung = timetable.days.flatMap(({ work }) => work.filter(({ step }) => step === "water test"));
    expect(hung.length).toBe(pace.pieces);
  });

  test("writes nothing, whatever is asked", async () => {
    const before = await newest(bench);
    await done(bench, "Mon 18:00", DAILY);
    expect(await newest(bench)).toBe(before);
  });
});

describe("what was not found in the time", () => {
  test("is told as such, with a quicker pace where the table has one", async () => {
    const said = (await done(bench, "Mon 18:00", `${DAILY} --pace 5/week`)).replace(/\s+/g, " ");
    expect(said).toMatch(
      /5 a week: (\d+ out|none was found in the time; that proves nothing\. A quicker one there is: 1 a day, 3 out)/,
    );
  });
});

describe("what cannot be", () => {
  test.each([
    ['rotation "carved walker" --hours "daily 18-18:20"', "pour the ballast needs 41 min at a stretch"],
    ['rotation "carved walker" --hours "daily closed"', "the bench is never open"],
    ['rotation "carved walker" --out 0', '--out "0" is no count'],
    ['rotation "carved walker" --pace 1/day --out 2', "Say --pace or --out, not both"],
    ['rotation "carved walker" --pace soon', '"soon" is no pace'],
    ['rotation "carved walker" --hours "Mon"', "--hours"],
    ['rotation "no such thing"', 'There is no process "no such thing"'],
  ])("%s", async (line, what) => {
    expect(await refused(bench, "Mon 18:00", line, 2)).toContain(what);
  });

  test("hours in which no piece is ever finished are told with the minutes it takes", async () => {
    const line = 'rotation "carved walker" --hours "Sat 9-10"';
    // As below 3 h 49 for one piece; an hour a week.
    expect(await refused(bench, "Mon 18:00", line, 2)).toContain(
      "it takes at least 3 h 49 of bench time in each round, and the bench is open 1 h",
    );
  });

  test("fewer out than any pace needs are told with the fewest there are", async () => {
    const line = 'rotation "turned popper" --hours "Sat 9-17" --out 1';
    expect(await refused(bench, "Mon 18:00", line, 2)).toMatch(
      /no pace was found with 1 out; the fewest found: 2 out, one every 2 weeks/,
    );
  });

  test("a pace no hours allow is told with the minutes, and with the quickest there is", async () => {
    const line = 'rotation "carved walker" --pace 1/day --hours "daily 18-21"';
    const { exit, err, out } = await bench.type(line);
    expect({ exit, out }).toEqual({ exit: 2, out: "" });
    // 157 min hands-on, 7 looks, 39 of set-ups made at least once (20, 4, 5, 5, 5) and 26 of putting away: 3 h 49.
    expect(err).toContain("it takes at least 3 h 49 of bench time in each round, and the bench is open 3 h");
    expect(err).toMatch(/The quickest there is: one every 2 days, 3 out\./);
  });
});
