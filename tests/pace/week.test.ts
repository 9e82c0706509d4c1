/** The review of the made-up week, every sum done by hand. */
import { describe, expect, test } from "vitest";
import type { PieceRow } from "../../src/journal/journal.ts";
import { weekNeeds, weekReview } from "../../src/pace/week.ts";
import type { Shop } from "../../src/shop/shop.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker } from "../fixtures/walker.ts";
import { at, dublin } from "../fixtures/week-time.ts";
import { weekOfTheWalkers } from "./week-of-the-walkers.ts";

const date = "2026-03-29";

function review(
  shop: Shop,
  more: { now?: number; rows?: PieceRow[]; date?: string; firstWeekday?: number } = {},
) {
  return weekReview({ shop, rows: [], date, zone: dublin, now: at("Sun 20:05"), ...more });
}

function row(tag: number, finishedAt: number | null): PieceRow {
  const taggedAt = at("last Sat 9:00");
  return {
    tag,
    out: finishedAt === null,
    name: "",
    process: "hash",
    processName: "walker",
    taggedAt,
    finishedAt,
    scrappedAt: null,
  };
}

describe("the week of the walkers", () => {
  const week = review(weekOfTheWalkers().shop());

  test("nothing of its diary fell out", () => {
    expect(weekOfTheWalkers().shop().setAside).toEqual([]);
  });

  test("is week 13 of 2026, not over on Sunday evening", () => {
    expect(week).toMatchObject({ week: "2026-W13", start: "2026-03-23", end: "2026-03-29", running: true });
  });

  test("finished 5, at its second test, and tagged five", () => {
    expect(week.finished).toEqual({ count: 1, tags: [5] });
    expect(week.tagged).toEqual({ count: 5, tags: [1, 2, 3, 4, 5] });
    expect(week.scrapped).toEqual({ count: 0, tags: [], pieces: [] });
  });

  test("counts two mends, 10 and 5 min, and the piece the water test sent back apart", () => {
    expect(week.mended).toMatchObject({ count: 2, tags: [3, 5], minutes: 15 });
    expect(week.sentBack).toMatchObject({ count: 1, tags: [4] });
    expect(week.sentBack.results[0]).toMatchObject({ step: "water test", answer: "tune", to: "hangers" });
  });

  test("missed one window, 2's, at 5 min of scuffing", () => {
    // 2 was sealed the second time Mon 19:04; the varnish's window shuts 24 h later, and its colours were due.
    expect(week.windows.missed).toEqual({
      count: 1,
      tags: [2],
      minutes: 5,
      windows: [
        {
          tag: 2,
          coat: "varnish",
          laid: "second seal",
          next: "colours",
          shut: at("Tue 19:04"),
          taken: null,
          minutes: 5,
        },
      ],
    });
  });

  test("kept four: those of 1 for its colours and its detail, of 3 for its second seal and its colours", () => {
    expect(week.windows.kept).toMatchObject({ count: 4, tags: [1, 3] });
    expect(week.windows.kept.windows.map(({ tag, next, shut }) => [tag, next, shut])).toEqual([
      [1, "colours", at("Tue 19:04")], // Mon 19:04 and 24 h, taken Tue 18:15
      [1, "detail", at("Wed 20:45")], // Tue 20:45 and 24 h, taken Wed 20:00
      [3, "second seal", at("Thu 19:16")], // the seal done again Wed 19:16, taken Thu 19:05
      [3, "colours", at("Fri 19:11")], // Thu 19:11 and 24 h, taken Fri 18:40
    ]);
  });

  test("used 240 min of 1395 open", () => {
    // Mon 40 + 8 + 12 + 6 = 66, Tue 10 + 8 + 6 + 15 = 39, Wed 10 + 6 + 15 = 31, Thu 24 + 6 = 30, Fri 10,
    // Sat 20 + 10 + 10 + 5 + 9 + 10 = 64: 240 in all.
    // Open: 5 evenings of 3 h are 900, Thursday's 75 more, Saturday's 7 h are 420: 1395.
    expect(week.handsOn).toEqual({
      minutes: 240,
      tags: [1, 2, 3, 4, 5],
      open: 1395,
      left: 0,
      unknown: { count: 0, tags: [] },
      guessed: { count: 1, tags: [1] },
      halfDone: { count: 0, tags: [], minutes: 0 },
    });
  });

  test("had 5 out for 7 days, all but 52 min of them hanging", () => {
    // Hanging since Sat 21st 15:50, finished Sat 28th 15:50. In hand 8 + 10 + 10 + 5 + 9 + 10 = 52 min of 10080.
    expect(week.daysOut.median).toBe(7);
    expect(week.daysOut.hanging).toBeCloseTo(1 - 52 / 10_080, 12);
    expect(week.daysOut.pieces).toEqual([{ tag: 5, days: 7, hanging: week.daysOut.hanging }]);
  });

  test("sets each step's minutes against the process file's", () => {
    const said = week.steps.map(({ step, times, minutes, estimate, total, estimated, tags }) =>
      [step, times, minutes, estimate, total, estimated, tags.join(" ")].join(", "),
    );
    expect(said).toEqual([
      "shape, 1, 40, 40, 40, 40, 3",
      "drill, 1, 8, 8, 8, 8, 3",
      "pour the ballast, 1, 6, 6, 6, 6, 3",
      "seal, 2, 6, 6, 12, 12, 3",
      "second seal, 3, 6, 6, 18, 18, 1 2 3",
      "colours, 3, 10, 10, 28, 30, 1 3", // 10, 8, 10
      // First clear is missing: its 15 min were a guess.
      "detail, 1, 15, 15, 15, 15, 1",
      "last clear, 3, 8, 8, 24, 24, 1 4 5",
      "hangers, 3, 10, 10, 29, 30, 4 5", // 10, 10, 9
      "water test, 3, 10, 10, 30, 30, 4 5",
    ]);
  });

  test("leaves four out, and has no aim until one is set", () => {
    expect(week.aim).toEqual({
      finishedPerWeek: null,
      difference: null,
      out: null,
      outNow: { count: 4, tags: [1, 2, 3, 4] },
    });
  });

  test("is plain data: JSON and back changes nothing", () => {
    expect(JSON.parse(JSON.stringify(week))).toEqual(week);
  });
});

describe("against the aim", () => {
  test("the aim in force on the week's last day counts, a later one does not", () => {
    const diary = weekOfTheWalkers();
    diary.settle({ of: "aim", from: "2026-03-23", finishedPerWeek: 3, out: 6 }, "Mon 18:00");
    diary.settle({ of: "aim", from: "2026-03-30", finishedPerWeek: 7, out: 9 }, "Sun 19:00");
    // 1 finished, 3 hoped for: two short.
    expect(review(diary.shop()).aim).toMatchObject({ finishedPerWeek: 3, difference: -2, out: 6 });
  });
});

describe("a week still running", () => {
  test("counts only what was by then, and splits the hours open into those gone and those left", () => {
    const week = review(weekOfTheWalkers().shop(), { now: at("Tue 19:00") });
    expect(week.finished.count).toBe(0);
    expect(week.tagged.tags).toEqual([1, 2, 3]);
    // Monday's 180 and an hour of Tuesday; 1395 - 240 are to come.
    expect([week.handsOn.open, week.handsOn.left]).toEqual([240, 1155]);
    expect(week.windows.missed.count).toBe(0);
  });

  test("a window is missed at the very minute it shuts, not before", () => {
    const missedAt = (words: string) =>
      review(weekOfTheWalkers().shop(), { now: at(words) }).windows.missed.count;
    expect([missedAt("Tue 19:03"), missedAt("Tue 19:04")]).toEqual([0, 1]);
  });
});

describe("hours open", () => {
  test("for two pairs of hands are twice as many from the day they are said", () => {
    const diary = weekOfTheWalkers();
    diary.settle({ of: "hands", from: "2026-03-28", pairs: 2 }, "Fri 20:00");
    // Only Saturday's 420 double: 1395 + 420.
    expect(review(diary.shop()).handsOn.open).toBe(1815);
  });

  test("on days away are none", () => {
    const diary = weekOfTheWalkers();
    diary.settle({ of: "away", from: "2026-03-27", to: "2026-04-12" }, "Thu 23:00");
    // Friday's 180 and Saturday's 420 fall out: 1395 - 600.
    expect(review(diary.shop()).handsOn.open).toBe(795);
  });
});

describe("what was overridden", () => {
  test("is told once an act, with its pieces and the maker's reason", () => {
    const diary = weekOfTheWalkers();
    const overrides = [{ over: "too early", reason: "it is hard to the nail" }];
    diary.take([1, 4], "hangers", "Sat 14:00", { overrides });
    diary.ready("lead pot", "melt lead", "Sat 14:10", {
      overrides: [{ over: "keep apart", reason: "door open" }],
    });
    expect(review(diary.shop()).overrides).toEqual([
      {
        at: at("Sat 14:00"),
        tags: [1, 4],
        what: "hangers",
        over: "too early",
        reason: "it is hard to the nail",
      },
      { at: at("Sat 14:10"), tags: [], what: "melt lead", over: "keep apart", reason: "door open" },
    ]);
    expect(review(diary.shop(), { now: at("Sat 13:59") }).overrides).toEqual([]);
  });
});

describe("pieces that end", () => {
  test("scrapped ones are told with why, and are no longer out", () => {
    const diary = weekOfTheWalkers();
    diary.say(2, { kind: "scrapped", why: "the lip broke" }, "Fri 20:00");
    const week = review(diary.shop());
    expect(week.scrapped).toEqual({
      count: 1,
      tags: [2],
      pieces: [{ tag: 2, at: at("Fri 20:00"), why: "the lip broke" }],
    });
    expect(week.aim.outNow.tags).toEqual([1, 3, 4]);
  });

  test("a finished one counts in the week of its last hang, also when it is sold or scrapped later", () => {
    const sold = weekOfTheWalkers();
    sold.say(5, { kind: "gone", how: "sold", price: 2800, to: null }, "next Mon 10:00");
    const scrapped = weekOfTheWalkers();
    scrapped.say(5, { kind: "scrapped", why: "trodden on" }, "next Mon 10:00");
    for (const diary of [sold, scrapped]) {
      const week = review(diary.shop(), { now: at("next Mon 12:00") });
      expect(week).toMatchObject({ running: false, finished: { tags: [5] }, scrapped: { count: 0 } });
      // On Sunday night 5 was finished and so not out.
      expect(week.aim.outNow.tags).toEqual([1, 2, 3, 4]);
    }
  });
});

describe("the last eight weeks", () => {
  test("are counted by the clock of the zone, each piece in the week it was finished, this one from the shop", () => {
    // Sunday 22 March 23:59 is still week 12; Monday 0:00 is week 13. The row of 9 is older than eight weeks.
    const rows = [
      row(8, at("last Sun 23:59")),
      row(6, at("last Sat 9:00")),
      row(9, Date.UTC(2026, 0, 20)),
      row(2, null),
    ];
    const { lastWeeks } = review(weekOfTheWalkers().shop(), { rows });
    expect(lastWeeks.map(({ week, count }) => `${week} ${count}`)).toEqual([
      "2026-W06 0",
      "2026-W07 0",
      "2026-W08 0",
      "2026-W09 0",
      "2026-W10 0",
      "2026-W11 0",
      "2026-W12 2",
      "2026-W13 1",
    ]);
    expect(lastWeeks.at(-2)?.tags).toEqual([6, 8]);
  });

  test("what must be read reaches back seven weeks and on to now", () => {
    const needs = weekNeeds({ date, zone: dublin, now: at("next Mon 12:00") });
    // Monday 2 February 2026, 0:00 of winter time; the week itself ends Monday 30 March 0:00 of summer time, 23:00 UTC.
    expect(needs.rows).toEqual({ from: Date.UTC(2026, 1, 2), to: Date.UTC(2026, 2, 29, 23) });
    expect(needs.span).toEqual({ from: Date.UTC(2026, 2, 23), to: at("next Mon 12:00") + 1 });
  });

  test("with Sunday first the 29th of March begins a week of its own", () => {
    const week = review(weekOfTheWalkers().shop(), { firstWeekday: 7 });
    expect(week).toMatchObject({ start: "2026-03-29", end: "2026-04-04", finished: { count: 0 } });
  });
});

test("a shop in which nothing was ever done has an empty week", () => {
  const week = review(new Diary(walker).shop());
  expect(week).toMatchObject({
    finished: { count: 0 },
    steps: [],
    overrides: [],
    aim: { outNow: { count: 0 } },
  });
  expect(week.daysOut).toEqual({ median: null, hanging: null, tags: [], pieces: [] });
});
