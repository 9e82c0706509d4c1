import { describe, expect, test } from "vitest";
import { Diary } from "../../fixtures/diary.ts";
import { inARow, makeCoat, makeProcess, makeStep, mixResin, walker } from "../../fixtures/walker.ts";
import { at } from "../../fixtures/week-time.ts";
import { newPieceOf } from "../ask-now.ts";
import { askPlan, clock, short, timetable } from "./ask-plan.ts";

const DAY = 24 * 60;

/** Cut 30, one coat (dry-hard after 12 h, dry-through after 3 days), hangers 10 once that is dry-hard. */
const plain = makeProcess(
  "plain",
  inARow([
    makeStep("cut", 30),
    makeStep("coat", 6, { coat: "slow", look: [5] }),
    makeStep("hangers", 10, { waitsFor: "dry-hard" }),
  ]),
  [makeCoat("slow", { stages: { "dust-free": 60, "dry-hard": 720, "dry-through": 3 * DAY } })],
);

function tagged(definition: typeof plain, count: number): Diary {
  const diary = new Diary(definition);
  for (let tag = 1; tag <= count; tag++) diary.tag(tag, "Mon 17:00");
  return diary;
}

describe("one piece", () => {
  const plan = askPlan(tagged(plain, 1), "Mon 17:00", 3);

  test("is told by day and bench session, from the opening on", () => {
    // 18:00 + 30 = 18:30, + 6 = 18:36, + 12 h = Tue 06:36: hangers as the bench opens Tue 18:00.
    expect(timetable(plan)).toEqual([
      "Mon 18:00-18:30 1 cut",
      "Mon 18:30-18:36 1 coat",
      "Tue 18:00-18:10 1 hangers",
    ]);
  });

  test("shows every session of the days asked for, with the time left over", () => {
    // Three evenings of 180 min: 36, 10 and 0 of them worked.
    expect(plan.sessions.map(({ opens, closes, free }) => [clock(opens), clock(closes), free])).toEqual([
      ["Mon 18:00", "Mon 21:00", 144],
      ["Tue 18:00", "Tue 21:00", 170],
      ["Wed 18:00", "Wed 21:00", 180],
    ]);
  });

  test("is finished with its last hands-on, and dry-through 3 days after its coat", () => {
    const [forecast] = plan.pieces;
    expect(clock(forecast?.lastHandsOn ?? null)).toBe("Tue 18:10");
    expect(forecast?.dryThrough).toBe(at("Mon 18:36") + 3 * DAY * 60_000);
    expect(plan.sessions[1]?.rows[0]?.finishes.map(short)).toEqual(["1"]);
  });

  test("tells what is asked besides: station, looks, minutes", () => {
    expect(plan.sessions[0]?.rows[1]).toMatchObject({
      station: "bench",
      coat: "slow",
      minutes: 6,
      looks: [5],
      setUp: null,
      inHand: false,
    });
  });

  test("one worked before keeps the dry-through of the coat it has", () => {
    const diary = tagged(plain, 1);
    diary.workUpTo(1, "coat", "Mon 17:30");
    diary.hang(1, "coat", "Mon 17:40");
    const [forecast] = askPlan(diary, "Mon 17:45").pieces;
    // Dry-hard Tue 05:40, hangers Tue 18:00; dry-through Mon 17:40 + 3 d.
    expect(clock(forecast?.lastHandsOn ?? null)).toBe("Tue 18:10");
    expect(forecast?.dryThrough).toBe(at("Mon 17:40") + 3 * DAY * 60_000);
  });
});

describe("rows", () => {
  test("the same work done in a row is one row, and one cup is mixed for it", () => {
    const cup = makeProcess(
      "cup",
      [makeStep("coat", 8, { coat: "slow", setUp: mixResin })],
      [makeCoat("slow")],
    );
    const { sessions } = askPlan(tagged(cup, 3), "Mon 17:00", 1);
    // Mixing 4 from 18:00, then three of 8: 18:28. The cup serves four.
    expect(sessions[0]?.rows).toMatchObject([
      {
        minutes: 24,
        setUp: { what: "mix resin", minutes: 4 },
        from: at("Mon 18:00"),
        until: at("Mon 18:28"),
      },
    ]);
    expect(sessions[0]?.putAway).toEqual([
      { station: "bench", what: "mix resin", minutes: 2, by: at("Mon 21:00") },
    ]);
    // By the bench's own clock, though it is asked between two minutes.
    const between = askPlan(tagged(cup, 3), "Mon 17:00", 1, { now: at("Mon 17:00") + 20_000 });
    expect(between.sessions[0]?.putAway).toMatchObject([{ by: at("Mon 21:00") }]);
    // 180 - 28 - 2 of putting away.
    expect(sessions[0]?.free).toBe(150);
  });

  test("a part of what is split says of how much", () => {
    const long = makeProcess("long", [makeStep("carve", 250, { mayStop: true })]);
    const rows = askPlan(tagged(long, 1), "Mon 17:00", 2).sessions.flatMap((session) => session.rows);
    expect(rows.map(({ minutes, ofMinutes }) => [minutes, ofMinutes])).toEqual([
      [180, 250],
      [70, 250],
    ]);
  });

  test("a late window tells its preparation by name, before the coat", () => {
    const diary = new Diary(walker);
    diary.came(1, "seal", "last Sun 17:00", "Mon 17:30");
    // The varnish of Sunday 17:00 shut Monday 17:00: a scuff of 5 min, then the seal.
    const [first, second] = askPlan(diary, "Mon 17:30", 1).sessions[0]?.rows ?? [];
    expect(first).toMatchObject({
      part: "preparation",
      preparation: "scuff",
      step: "second seal",
      minutes: 5,
    });
    expect(second).toMatchObject({ part: "step", preparation: null, step: "second seal", minutes: 6 });
  });

  test("what is in hand after the bench shut stands first, outside bench hours", () => {
    const diary = tagged(plain, 1);
    diary.take(1, "cut", "Mon 20:50");
    const [first] = askPlan(diary, "Mon 21:05").sessions;
    expect(first?.outsideHours).toBe(true);
    // 30 min, 15 of them worked.
    expect(first?.rows).toMatchObject([{ step: "cut", inHand: true, minutes: 15 }]);
  });
});

describe("the aim", () => {
  const aimed = (out: number): Diary => {
    const diary = tagged(plain, 1);
    diary.settle({ of: "aim", from: "2026-03-23", finishedPerWeek: null, out }, "Mon 17:00");
    return diary;
  };

  test("has new ones begun under its limit: one now, and another when one is finished", () => {
    const plan = askPlan(aimed(2), "Mon 17:00", 2, { newPiece: newPieceOf(plain) });
    const rows = plan.sessions.flatMap((session) => session.rows);
    const tagging = rows.filter(({ tagsNew }) => tagsNew);
    expect(tagging.flatMap(({ pieces }) => pieces).map(short)).toContain("new 1");
    // Two out Monday; the second new one waits for a finish on Tuesday.
    const monday = plan.sessions[0]?.rows.flatMap(({ pieces }) => pieces.map(short)) ?? [];
    expect(new Set(monday)).toEqual(new Set(["1", "new 1"]));
  });

  test("without an aim, and with enough out, none is proposed", () => {
    const newPiece = newPieceOf(plain);
    for (const diary of [tagged(plain, 1), aimed(1)]) {
      const monday = askPlan(diary, "Mon 17:00", 1, { newPiece }).pieces;
      expect(monday.map(({ piece }) => short(piece))).toEqual(["1"]);
    }
  });

  test("pieces it asks for later than the days shown are not told", () => {
    const plan = askPlan(aimed(2), "Mon 17:00", 1, { newPiece: newPieceOf(plain) });
    expect(plan.pieces.map(({ piece }) => short(piece))).toEqual(["1", "new 1"]);
  });
});

describe("windows ahead", () => {
  const coat = (shuts: number) =>
    makeProcess(
      "two coats",
      inARow([makeStep("first", 6, { coat: "quick" }), makeStep("second", 6, { coat: "quick" })]),
      [
        makeCoat("quick", {
          stages: { "dry-hard": 30 },
          windows: [
            { opens: 60, shuts, first: null },
            { opens: Math.max(1440, shuts), shuts: null, first: null },
          ],
        }),
      ],
    );

  const secondOf = (shuts: number) =>
    askPlan(tagged(coat(shuts), 1), "Mon 17:00", 1)
      .sessions.flatMap(({ rows }) => rows)
      .find(({ step }) => step === "second")?.shuts;

  test("one that shuts tonight is told with its shut, as now tells it", () => {
    // Hung 18:06, open 19:06, too late from 20:36 on: 18:06 + 150.
    expect(secondOf(150)).toEqual({ by: at("Mon 20:36") });
  });

  test("one upon a coat that hangs shuts when now says so, whatever second it is", () => {
    const diary = new Diary(coat(150));
    diary.tag(1, "Mon 17:00");
    diary.hang(1, "first", at("Mon 18:10") + 20_000);
    // Shuts 20:40:20; asked at 19:30:30 whole minutes end at 20:39:30 and 20:40:30.
    const rows = askPlan(diary, "Mon 19:30", 1, { now: at("Mon 19:30") + 30_000 }).sessions.flatMap(
      (session) => session.rows,
    );
    expect(rows.find(({ step }) => step === "second")?.shuts).toEqual({ by: at("Mon 20:40") + 20_000 });
  });

  test("one that shuts in the night is told as not to be left", () => {
    // 18:06 + 600 is Tuesday 04:06, with no bench open in between.
    expect(secondOf(600)).toEqual({ by: null });
  });

  test("one that is still open when the bench opens again is not told", () => {
    // 18:06 + 1,500 is Tuesday 19:06.
    expect(secondOf(1500)).toBeNull();
  });

  test("by a cup that will have gone off, the minutes to mix another come off the shut", () => {
    const twice = makeProcess(
      "twice",
      inARow([
        makeStep("first", 8, { coat: "resin", setUp: mixResin }),
        makeStep("second", 8, { coat: "resin", setUp: mixResin }),
      ]),
      [
        makeCoat("resin", {
          stages: { "dry-hard": 1440 },
          windows: [
            { opens: 0, shuts: 120, first: null },
            { opens: 1440, shuts: null, first: null },
          ],
        }),
      ],
    );
    const rows = askPlan(tagged(twice, 1), "Mon 18:00", 1).sessions.flatMap((session) => session.rows);
    // Mixed 18:04, laid till 18:12, the second from the same cup. It shuts 20:12, and the cup is past it at
    // 18:34: 4 min to mix another.
    expect(rows.find(({ step }) => step === "second")).toMatchObject({
      setUp: { minutes: 0 },
      shuts: { by: at("Mon 20:08") },
    });
  });
});
