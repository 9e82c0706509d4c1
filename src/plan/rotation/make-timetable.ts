import type { Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import type { ShopProblem } from "../make-problem.ts";
import type { MadeTask } from "../make-tasks.ts";
import type { BenchRound } from "./bench-round.ts";
import type { CircleWork, ProblemCircle } from "./circle-of-problem.ts";
import { mod } from "./pattern/mod.ts";
import { mostOut } from "./pattern/placed.ts";
import type { Pace, RotationDay, RotationRow, Timetable } from "./rotation-answer.ts";
import type { CircleAnswer } from "./solve-circle.ts";
import { spanOf } from "./spans.ts";

const DAY: Minutes = 1_440;

interface Solved {
  readonly made: ShopProblem;
  readonly built: ProblemCircle;
  readonly answer: CircleAnswer;
  readonly starts: readonly Minutes[];
  /** No timetable of so many pieces has fewer out, by what is known beside the answer. */
  readonly leastOut: number;
  /** Minutes from the end of a step until its coat is dry-through; null: no sheet says. */
  readonly dryThrough: (step: string) => Minutes | null;
}

/** A solved circle as the timetable of a bench, in days and clock times. */
export function makeTimetable(solved: Solved, round: BenchRound, pace: Pace): Timetable {
  const { built, answer, starts } = solved;
  const { circle } = built;
  const spans = circle.pieces.map((piece) => {
    const from = Math.min(...piece.begins.map((task) => at(starts, task)));
    return { from, until: from + spanOf(piece, starts) };
  });
  const dry = spans.map(({ from, until }, piece) => ({ from, until: dryThroughOf(solved, piece, until) }));
  const through = dry.every(({ until }) => until !== null)
    ? dry.map(({ from, until }) => ({ from, until: until ?? from }))
    : null;
  const total = (all: readonly { from: Minutes; until: Minutes }[]): Minutes =>
    all.reduce((sum, { from, until }) => sum + until - from, 0);
  return {
    is: "timetable",
    pace,
    period: circle.period,
    proven: answer.status === "optimal",
    span: total(spans),
    leastSpan: answer.bound,
    dryThrough: through === null ? null : total(through),
    out: mostOut(spans, circle.period),
    leastOut: Math.max(solved.leastOut, Math.ceil(answer.bound / circle.period)),
    outToDryThrough: through === null ? null : mostOut(through, circle.period),
    days: daysOf(solved, round),
  };
}

/** When the last of a piece's coats is dry through, at its longest over the day; null: no sheet says. */
function dryThroughOf(
  { made, built, starts, dryThrough }: Solved,
  piece: number,
  until: Minutes,
): Minutes | null {
  let latest: Minutes | null = null;
  for (const [index, { task, part }] of built.work.entries()) {
    if (part !== "step" || at(made.problem.tasks, task).piece !== piece) continue;
    const dries = dryThrough(taskMade(made, task).step);
    const end = at(starts, index) + at(built.circle.tasks, index).minutes;
    if (dries !== null) latest = Math.max(latest ?? 0, until, end + dries);
  }
  return latest;
}

function daysOf(solved: Solved, round: BenchRound): RotationDay[] {
  const { circle } = solved.built;
  return circle.sessions.map(({ opens, closes }) => {
    const clock = opens + round.begins;
    const day = Math.floor(clock / DAY);
    const midnight = day * DAY - round.begins;
    const inside = [...solved.starts.keys()]
      .filter((index) => {
        const minute = minuteOf(solved, index);
        return minute >= opens && minute < closes;
      })
      .sort((one, other) => minuteOf(solved, one) - minuteOf(solved, other));
    return {
      day,
      opens: opens - midnight,
      closes: closes - midnight,
      rows: inside.map((index) => rowOf(solved, index, midnight)),
      putAway: putAwayAfter(solved, inside),
    };
  });
}

function rowOf(solved: Solved, index: number, midnight: Minutes): RotationRow {
  const { made, built, answer, starts } = solved;
  const { circle, work } = built;
  const { task, part, split }: CircleWork = at(work, index);
  const { piece } = at(made.problem.tasks, task);
  const { step, station, colour, setUp } = taskMade(made, task);
  const number = at(circle.tasks, index).setUp;
  const head = answer.made[index] === true && number !== null ? at(circle.setUps, number).minutes : 0;
  const begun = Math.min(...at(circle.pieces, piece).begins.map((first) => at(starts, first)));
  const turn = Math.floor(at(starts, index) / circle.period) - Math.floor(begun / circle.period);
  return {
    from: minuteOf(solved, index) - head - midnight,
    minutes: at(circle.tasks, index).minutes,
    step,
    station,
    colour,
    part,
    split,
    setUp: number === null || setUp === null ? null : { what: setUp, minutes: head },
    piece,
    ago: turn,
  };
}

/** What stands at each station at the end of a session and must be put away. */
function putAwayAfter({ made, built }: Solved, inside: readonly number[]): RotationDay["putAway"] {
  const { circle, work } = built;
  const last = new Map<number, { setUp: string; minutes: Minutes }>();
  for (const index of inside) {
    const number = at(circle.tasks, index).setUp;
    if (number === null) continue;
    const { station, putAway } = at(circle.setUps, number);
    const setUp = taskMade(made, at(work, index).task).setUp ?? "";
    if (putAway > 0) last.set(station, { setUp, minutes: putAway });
  }
  return [...last.values()];
}

function minuteOf({ built, starts }: Solved, index: number): Minutes {
  return mod(at(starts, index), built.circle.period);
}

function taskMade({ pieces, problem }: ShopProblem, task: number): MadeTask {
  const { tasks } = at(pieces, at(problem.tasks, task).piece);
  const found = tasks.find((made) => made.task === task);
  if (found === undefined) throw new Error(`task ${task} of the problem is of no step`);
  return found;
}
