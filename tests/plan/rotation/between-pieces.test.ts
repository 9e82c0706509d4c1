import { expect, test } from "vitest";
import { readShop } from "../../../src/plan/plan-shop.ts";
import { benchRound, repeatRound } from "../../../src/plan/rotation/bench-round.ts";
import { circleOfProblem } from "../../../src/plan/rotation/circle-of-problem.ts";
import { ApartTables } from "../../../src/plan/rotation/pattern/apart-tables.ts";
import { PatternSearch } from "../../../src/plan/rotation/pattern/find-pattern.ts";
import { freeMinutes, NEVER } from "../../../src/plan/rotation/pattern/free-minutes.ts";
import { Harms } from "../../../src/plan/rotation/pattern/harm.ts";
import { Occupied } from "../../../src/plan/rotation/pattern/occupied.ts";
import type { Placed } from "../../../src/plan/rotation/pattern/placed.ts";
import { Space } from "../../../src/plan/rotation/pattern/space.ts";
import { rotationProblem } from "../../../src/plan/rotation/rotation-problem.ts";
import { readWeeklyHours } from "../../../src/time/read-hours.ts";
import { Diary } from "../../fixtures/diary.ts";
import { keepApart, processes } from "../../process/shipped-files.ts";
import { contextAt } from "../ask-now.ts";

const NAMES = processes.map(({ name }) => name);

/** Two pieces of a process each week of evenings, and what one more between them is reckoned by. */
function between(name: string) {
  const definition = processes.find((one) => one.name === name);
  const read = readWeeklyHours("weekdays 18-21, Sat 9-16");
  const round = "weekly" in read ? benchRound(read.weekly) : null;
  if (definition === undefined || round === null) throw new Error(`no process ${name}`);
  const facts = readShop(
    new Diary(definition).shop(),
    contextAt("Mon 18:00", { rules: { keepApart, cautions: {} } }),
  );
  const { problem } = rotationProblem(facts, definition, 1);
  const { circle } = circleOfProblem(problem, round.minutes, repeatRound(round, 1));
  const search = new PatternSearch(circle);
  const ask = { pieces: 2, out: 9, seed: 1, rounds: 5, shorten: null, isOver: () => false };
  const pieces: readonly Placed[] = search.search({ ...ask, begun: [] });
  const { route } = search;
  const tables = new ApartTables(route);
  const occupied = new Occupied(route, pieces);
  return { route, tables, occupied, pieces, free: freeMinutes(occupied, tables, new Space(route)) };
}

test.each(NAMES)("what a task of %s takes from further pieces is as counted slot by slot", (name) => {
  const { route, tables, pieces, free } = between(name);
  expect(pieces).toHaveLength(2);
  const { time, circle } = route;
  const sums = new Harms(route, tables).of(free, 1);
  let harmful = 0;
  for (const [task, { minutes }] of circle.tasks.entries()) {
    for (const [slot, minute] of time.minuteOf.entries()) {
      if ((free.setUps[task]?.[slot] ?? NEVER) === NEVER) continue;
      let taken = 0;
      for (const { task: other, count } of tables.kinds) {
        const there = tables.standing(task, other);
        const back = tables.standing(other, task);
        if (there < 0 || (there <= minutes && back <= (circle.tasks[other]?.minutes ?? 0))) continue;
        for (const [start, at] of time.minuteOf.entries()) {
          const isTaken = at > minute - back && at < minute + there;
          if (isTaken && free.hindered[other]?.[start] === 0) taken += count;
        }
      }
      if (taken > 0) harmful++;
      expect(sums[task]?.[slot]).toBe(taken);
    }
  }
  expect(harmful).toBeGreaterThan(0);
});

test.each(NAMES)(
  "whether what stands at %s's stations is left alone changes only where it is said to",
  (name) => {
    const { route, occupied } = between(name);
    const { uses } = occupied;
    for (const task of route.circle.tasks.keys()) {
      for (const made of [false, true]) {
        let [answer, until] = [false, 0];
        for (const minute of route.time.minuteOf) {
          const fits = uses.fitsBefore(task, minute, made);
          if (minute < until) expect(fits).toBe(answer);
          else [answer, until] = [fits, uses.fitsUntil(task, minute)];
        }
      }
    }
  },
);
