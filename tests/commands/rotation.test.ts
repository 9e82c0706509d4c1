import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import type { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { benchAfter, done, newest, refused, typeAtTerminal } from "./type-lines.ts";

/** Short searches; what is asserted holds of longer ones as well. */
const QUICK = { planRounds: 20 };
const QUICKEST = { planRounds: 5 };

let bench: BenchInAFolder;

beforeEach(async () => {
  bench = await benchAfter("Mon 17:50", ["settings zone Europe/Dublin"], QUICK);
});
afterEach(() => bench.remove());

const DAILY = 'rotation "carved walker" --hours "daily 9-17"';

interface Rotation {
  changes: { kind: string; out: number; span: number; proven: boolean }[];
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

describe("the carved walker, daily from 9 to 17", () => {
  let screen: string;
  let json: Rotation;

  beforeAll(async () => {
    const own = await benchAfter("Mon 17:50", ["settings zone Europe/Dublin"], QUICKEST);
    screen = (await typeAtTerminal(own, DAILY, [])).out;
    json = await own.json<Rotation>(DAILY);
    own.remove();
  }, 120_000);

  test("says how many to keep out for one a day, counted both ways, with the card of the day", () => {
    expect(screen).toContain("carved walker in rotation, daily 9:00-17:00");
    expect(screen).toMatch(/1 a day: 3 out, counted to the last hands-on; \d+ counted to dry-through\./);
    expect(screen).toContain("No timetable takes less: proven.");
    expect(screen).toMatch(
      /\n {2}\d\d:\d\d {2}melt lead +20 min +lead pot\n {2}\d\d:\d\d {2}pour the ballast/,
    );
    expect(screen).toContain("today's piece");
    expect(screen).toContain("of 2 days ago");
    expect(screen.replace(/\s+/g, " ")).toMatch(/before you shut, put away: .*melt lead \(15 min\)/);
  });

  test("keeps every line to 80 columns at a terminal of 80", () => {
    expect(screen.split("\n").filter((line) => line.length > 80)).toEqual([]);
  });

  test("gives the quickest pace for each number out from one up, each quicker than the one before", () => {
    const { table } = json;
    expect(table[0]).toEqual({ out: 1, pace: { pieces: 1, days: 3 }, proven: true });
    for (const [index, { out, pace }] of table.entries()) {
      const before = table[index - 1];
      if (before === undefined) continue;
      expect(out).toBeGreaterThan(before.out);
      expect(pace.pieces / pace.days).toBeGreaterThan(before.pace.pieces / before.pace.days);
    }
  });

  test("has every step of the process once in the round, inside bench hours", () => {
    const [day] = json.timetable.days;
    const steps = day?.work.map(({ step }) => step) ?? [];
    expect(new Set(steps).size).toBe(16);
    expect(day?.work.every(({ from }) => from >= "09:00" && from < "17:00")).toBe(true);
    expect(day?.work.some(({ ago }) => ago === 2)).toBe(true);
  });
});

describe("rotation", () => {
  test("with two out takes the quickest pace that has no more", async () => {
    const { pace, timetable } = await bench.json<Rotation>(`${DAILY} --out 2`);
    expect(pace).toEqual({ pieces: 1, days: 2 });
    expect(timetable).toMatchObject({ is: "timetable", out: 2, proven: true });
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

  test("tells what one change would give a week of several pieces, as found and not as proven", async () => {
    const { changes, timetable } = await bench.json<Rotation>('rotation "cast foam minnow" --pace 4/week');
    expect(changes.length).toBeGreaterThan(0);
    for (const { out, span, proven } of changes) {
      expect(proven).toBe(false);
      expect(out < timetable.out || (out === timetable.out && span < timetable.span)).toBe(true);
    }
  });

  test("writes nothing, whatever is asked", async () => {
    const before = await newest(bench);
    await done(bench, "Mon 18:00", 'rotation "cast foam minnow" --hours "daily 9-17" --out 1');
    expect(await newest(bench)).toBe(before);
  });
});

describe("fewer a week than one a day", () => {
  test("are some of the pieces of one a day, and so have no more out", async () => {
    const { table, timetable } = await bench.json<Rotation>(
      'rotation "cast foam minnow" --hours "daily 9-17" --pace 5/week',
    );
    const daily = table.find(({ pace }) => pace.pieces === pace.days);
    expect(timetable.is).toBe("timetable");
    expect(timetable.out).toBeLessThanOrEqual(daily?.out ?? 0);
  });
});

describe("in other air", () => {
  test("coats that may not be laid in it at all refuse the rotation, with what to do", async () => {
    const cold = `${DAILY} --air 5C,40%`;
    expect(await refused(bench, "Mon 18:00", cold, 3)).toBe(
      "Carved walker: seal may not be done in any bench hours, for the air is at 5 °C and thin epoxy sealer wants 12 °C or more: warm the shop.",
    );
    expect(await refused(bench, "Mon 18:00", `${DAILY} --air 27C,99%`, 3)).toContain(
      "its dew point at 26.8 °C",
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
    ['rotation "carved walker" --pace 0', '"0" finishes nothing'],
    ['rotation "carved walker" --pace 0/day', '"0/day" finishes nothing'],
    ['rotation "carved walker" --out -1', "is no count"],
    ['rotation "carved walker" --hours "Mon"', "--hours"],
    ['rotation "carved walker" --hours nonsense', '--hours "nonsense" is neither a day nor hours'],
    ['rotation "carved walker" --air nonsense', '--air "nonsense" is no air: write 27C,45% or 80F,45%'],
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
    const { exit, err } = await bench.type('rotation "turned popper" --hours "Sat 9-17" --out 1');
    expect(exit).toBe(2);
    expect(err).toMatch(/no pace was found with 1 out; the fewest found: 2 out, one every 2 weeks/);
  });

  test("a pace far beyond the hours is told in hours, and the quickest as found where more was not shut out", async () => {
    const { exit, err } = await bench.type('rotation "cast foam minnow" --pace 20/week');
    expect(exit).toBe(2);
    // The assumed hours: five evenings of 3 h and 7 h on Saturday. 20 x (105 + 2 looks) are 35 h 40 by themselves.
    expect(err).toMatch(
      /it takes at least 3\d h( \d\d)? of bench time in each round, and the bench is open 22 h\./,
    );
    expect(err).toMatch(/The quickest found: \d+ a week, \d+ out\./);
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
