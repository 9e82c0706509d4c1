import { describe, expect, test } from "vitest";
import { hoursIf } from "../../../src/plan/ahead/what-if.ts";
import type { PlanAnswer } from "../../../src/plan/plan-answer.ts";
import { hoursOn } from "../../../src/time/sessions.ts";
import { Diary } from "../../fixtures/diary.ts";
import { inARow, makeCoat, makeProcess, makeStep } from "../../fixtures/walker.ts";
import { eveningHours } from "../../fixtures/week-time.ts";
import { newPieceOf } from "../ask-now.ts";
import { askIf, askPlan, clock, short, timetable } from "./ask-plan.ts";

const TUESDAY = "2026-03-24";
const WEDNESDAY = "2026-03-25";

/** Finished in two evenings: the coat is dry-hard 12 h after, past the first one's end. */
const plain = makeProcess(
  "plain",
  inARow([
    makeStep("cut", 30),
    makeStep("coat", 6, { coat: "slow" }),
    makeStep("hangers", 10, { waitsFor: "dry-hard" }),
  ]),
  [makeCoat("slow", { stages: { "dust-free": 60, "dry-hard": 720 } })],
);

function one(due: string | null = null): Diary {
  const diary = new Diary(plain);
  diary.tag(1, "Mon 17:00", { due });
  return diary;
}

function planned(answer: ReturnType<typeof askIf>): PlanAnswer {
  if ("fitsNoSession" in answer) throw new Error("nothing was to be too long");
  return answer.answer;
}

describe("a bench that stays shut", () => {
  const answer = planned(askIf(one(TUESDAY), "Mon 17:00", { days: [{ date: TUESDAY, hours: [] }] }));

  test("has no session that day, and the work goes to the next", () => {
    expect(timetable(answer).at(-1)).toBe("Wed 18:00-18:10 1 hangers");
    expect(answer.sessions.map(({ opens }) => clock(opens).slice(0, 3))).not.toContain("Tue");
  });

  test("says what changes: a day later, and late by it", () => {
    const [change] = answer.changes?.finishes ?? [];
    expect([clock(change?.without ?? null), clock(change?.with ?? null)]).toEqual(["Tue 18:10", "Wed 18:10"]);
    expect(answer.changes?.newlyLate.map(short)).toEqual(["1"]);
    expect(answer.changes?.nowOnTime).toEqual([]);
    expect(answer.pieces[0]?.late?.why.because).toBe("hours");
  });
});

test("an earlier opening brings a piece on time that was late", () => {
  const early = [{ opens: 17 * 60, closes: 21 * 60 }];
  // 100 + 100 min: in 180 only one fits, in 240 both do.
  const two = makeProcess("two", inARow([makeStep("shape", 100), makeStep("polish", 100)]));
  const diary = new Diary(two);
  diary.tag(1, "Mon 12:00", { due: "2026-03-23" });
  const answer = planned(askIf(diary, "Mon 16:00", { days: [{ date: "2026-03-23", hours: early }] }));
  expect(timetable(answer)).toEqual(["Mon 17:00-18:40 1 shape", "Mon 18:40-20:20 1 polish"]);
  expect(answer.changes?.nowOnTime.map(short)).toEqual(["1"]);
});

describe("pieces more", () => {
  const added = [{ count: 2, definition: plain, due: WEDNESDAY }];

  test("are planned as if tagged now, told by number, with their promise", () => {
    const { pieces } = planned(askIf(one(), "Mon 17:00", { added }));
    expect(pieces.map(({ piece }) => short(piece))).toEqual(["1", "new 1", "new 2"]);
    // Three pieces of 36 min are 108 of Monday's 180; hangers on Tuesday from 18:00.
    expect(pieces.map(({ lastHandsOn }) => clock(lastHandsOn)?.slice(0, 3))).toEqual(["Tue", "Tue", "Tue"]);
    expect(pieces.map(({ late }) => late)).toEqual([null, null, null]);
  });

  test("come in place of those the aim asks for", () => {
    const diary = one();
    diary.settle({ of: "aim", from: "2026-03-23", finishedPerWeek: null, out: 3 }, "Mon 17:00");
    const newPiece = newPieceOf(plain);
    const without = askPlan(diary, "Mon 17:00", 1, { newPiece });
    expect(without.pieces.map(({ piece }) => short(piece))).toEqual(["1", "new 1", "new 2"]);
    const { pieces } = planned(askIf(diary, "Mon 17:00", { added }, { newPiece }));
    const begunMonday = pieces.filter(({ lastHandsOn }) => (clock(lastHandsOn) ?? "").startsWith("Tue"));
    expect(begunMonday).toHaveLength(3);
  });

  test("are numbered in the order in which they are begun, whatever the order they were said in", () => {
    const due = "2026-03-24";
    const more = [
      { count: 1, definition: makeProcess("later", [makeStep("cut", 100)]), due: null },
      { count: 1, definition: makeProcess("sooner", [makeStep("cut", 100)]), due },
      { count: 1, definition: makeProcess("last", [makeStep("cut", 110)]), due: null },
    ];
    const { pieces, sessions } = planned(askIf(new Diary(plain), "Mon 17:00", { added: more }));
    expect(pieces.map(({ piece }) => piece.nth)).toEqual([1, 2, 3]);
    const begun = sessions.flatMap(({ rows }) => rows.flatMap((row) => row.pieces.map(({ nth }) => nth)));
    expect(begun).toEqual([1, 2, 3]);
  });

  test("of a process with a step longer than any session are refused by that step", () => {
    const long = makeProcess("long", inARow([makeStep("cut", 10), makeStep("carve", 500)]));
    const answer = askIf(one(), "Mon 17:00", { added: [{ count: 1, definition: long, due: null }] });
    expect(answer).toEqual({
      fitsNoSession: { because: "too long", process: "long", step: "carve", minutes: 500, longest: 420 },
    });
  });

  test("promised far off are looked at that far", () => {
    const due = "2026-05-01";
    const soak = makeProcess("soak", inARow([makeStep("fill", 5, { wait: 20 * 1440 }), makeStep("rub", 5)]));
    const answer = planned(askIf(one(), "Mon 17:00", { added: [{ count: 1, definition: soak, due }] }));
    // 14 days would not be enough: Mon 23 March and 20 days are Sunday 12 April; the bench opens Monday the 13th.
    const [, soaked] = answer.pieces;
    expect(clock(soaked?.lastHandsOn ?? null)).toMatch(/^Mon 18:/);
    expect(soaked?.late).toBeNull();
  });
});

test("a what-if that changes nothing says so by saying nothing", () => {
  const answer = planned(askIf(one(), "Mon 17:00", { days: [{ date: "2026-03-29", hours: [] }] }));
  expect(answer.changes).toEqual({ finishes: [], newlyLate: [], nowOnTime: [], amends: 0 });
});

describe("hours of single days", () => {
  const noon = [{ opens: 12 * 60, closes: 14 * 60 }];

  test("stand in place of the pattern, and only on that day", () => {
    const hours = hoursIf(eveningHours, { days: [{ date: TUESDAY, hours: noon }], added: [] });
    expect(hoursOn(hours, TUESDAY)).toEqual(noon);
    expect(hoursOn(hours, WEDNESDAY)).toEqual(hoursOn(eveningHours, WEDNESDAY));
  });

  test("count although the maker is away then; the other days away stay shut", () => {
    const away = { ...eveningHours, away: [{ from: "2026-03-23", to: "2026-03-27" }] };
    const hours = hoursIf(away, { days: [{ date: TUESDAY, hours: noon }], added: [] });
    expect(hoursOn(hours, TUESDAY)).toEqual(noon);
    for (const date of ["2026-03-23", WEDNESDAY, "2026-03-27"]) expect(hoursOn(hours, date)).toEqual([]);
    expect(hoursOn(hours, "2026-03-28")).toEqual(hoursOn(eveningHours, "2026-03-28"));
  });
});
