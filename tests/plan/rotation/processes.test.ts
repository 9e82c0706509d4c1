import { describe, expect, test } from "vitest";
import { checkPlan } from "../../../src/plan/check-plan.ts";
import { readShop } from "../../../src/plan/plan-shop.ts";
import { benchRound, repeatRound } from "../../../src/plan/rotation/bench-round.ts";
import { circleOfProblem } from "../../../src/plan/rotation/circle-of-problem.ts";
import { rotationProblem } from "../../../src/plan/rotation/rotation-problem.ts";
import { solvePieces } from "../../../src/plan/rotation/solve-pieces.ts";
import type { ProcessDefinition } from "../../../src/process/definition.ts";
import { readWeeklyHours } from "../../../src/time/read-hours.ts";
import { Diary } from "../../fixtures/diary.ts";
import { keepApart, processes } from "../../process/shipped-files.ts";
import { contextAt } from "../ask-now.ts";
import { unroll } from "./unroll.ts";

/** Periods played out: more than any of these pieces is out. */
const PERIODS = 10;

function named(name: string): ProcessDefinition {
  const found = processes.find((one) => one.name === name);
  if (found === undefined) throw new Error(`no process ${name}`);
  return found;
}

/** Solves so many pieces in so many rounds of the bench, and plays the rotation out. */
function playOut(name: string, hours: string, pieces: number, rounds: number, hooks: number | null) {
  const definition = named(name);
  const shop = new Diary(definition).shop();
  const facts = readShop(shop, contextAt("Mon 18:00", { rules: { keepApart, cautions: {} } }));
  const places: typeof facts.places = hooks === null ? new Map() : new Map([["rack", { hooks }]]);
  const read = readWeeklyHours(hours);
  const round = "weekly" in read ? benchRound(read.weekly) : null;
  if (round === null) throw new Error("no hours");
  const problemOf = (count: number) => rotationProblem({ ...facts, places }, definition, count).problem;
  const circleOf = (count: number) =>
    circleOfProblem(problemOf(count), round.minutes * rounds, repeatRound(round, rounds));
  let nodes = 0;
  const isOver = (): boolean => nodes++ > 3_000;
  const answer = solvePieces({ circleOf, pieces, isOver });
  const played =
    answer.starts === null ? null : unroll(problemOf(pieces * PERIODS), circleOf(pieces), answer, PERIODS);
  return { answer, played, period: round.minutes * rounds };
}

/**
 * What the checker of plans finds. Of the first pieces it may find that a set-up does not stand that in the round
 * stands from pieces begun before the first.
 */
function breaches({ played, period }: ReturnType<typeof playOut>): string[] {
  if (played === null) return ["no rotation"];
  return checkPlan(played.problem, played.plan).filter((wrong) => {
    const [, at] = /needs at (\d+) does not stand/.exec(wrong) ?? [];
    return at === undefined || Number(at) > period * (PERIODS - 2);
  });
}

describe("rotations of the shipped processes, played out and judged by the checker of plans", () => {
  test.each([
    { name: "carved walker", hours: "daily 9-17", pieces: 1, rounds: 1, hooks: null },
    { name: "carved walker", hours: "daily 9-17", pieces: 1, rounds: 2, hooks: null },
    { name: "carved walker", hours: "daily 9-12 13-17", pieces: 1, rounds: 1, hooks: null },
    { name: "carved walker", hours: "daily 18-21", pieces: 1, rounds: 2, hooks: null },
    { name: "carved walker", hours: "daily 9-17", pieces: 1, rounds: 1, hooks: 2 },
    { name: "carved walker", hours: "weekdays 18-21, Sat 9-16", pieces: 1, rounds: 1, hooks: null },
    { name: "carved walker", hours: "weekdays 18-21, Sat 9-16", pieces: 2, rounds: 1, hooks: null },
    { name: "cast foam minnow", hours: "daily 18-21", pieces: 1, rounds: 1, hooks: null },
    { name: "cast foam minnow", hours: "daily 22-2", pieces: 1, rounds: 1, hooks: null },
    { name: "turned popper", hours: "daily 18-21", pieces: 1, rounds: 2, hooks: null },
    { name: "repainted veteran", hours: "daily 9-17", pieces: 1, rounds: 1, hooks: null },
    { name: "repainted veteran", hours: "daily 9-17", pieces: 2, rounds: 2, hooks: 3 },
  ])("$pieces $name in $rounds rounds of $hours, hooks $hooks", ({ name, hours, pieces, rounds, hooks }) => {
    expect(breaches(playOut(name, hours, pieces, rounds, hooks))).toEqual([]);
  });

  test("the checker finds a rotation in which one task comes before all it waits for", () => {
    const round = playOut("carved walker", "daily 9-17", 1, 1, null);
    const { plan, problem } = round.played ?? { plan: null, problem: null };
    if (plan === null) throw new Error("no rotation");
    // The water test of the first piece, moved to the very beginning.
    const last = plan.visits.find(({ task }) => task === problem.tasks.length / PERIODS - 1);
    const moved = plan.visits.map((visit) => (visit === last ? { ...visit, start: 1, end: 9 } : visit));
    expect(checkPlan(problem, { ...plan, visits: moved })).not.toEqual([]);
  });
});

describe("the carved walker in ordinary daily hours", () => {
  test("one a day takes three out: 2 days 6 h from the first hands-on to the last, proven", () => {
    const { answer } = playOut("carved walker", "daily 9-17", 1, 1, null);
    expect(answer.status).toBe("optimal");
    expect(Math.ceil((answer.span ?? 0) / 1440)).toBe(3);
  });

  test("a night lies before sanding the seal (12 h to dry-hard) and one before the hangers (24 h): more than 2 days", () => {
    const { answer } = playOut("carved walker", "daily 9-17", 1, 5, null);
    // However slow the pace, 12 h and 24 h of cure leave no piece under two days in hours of 9 to 17.
    expect(answer.span).toBeGreaterThan(2 * 1440);
  });
});
