import type { Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import { eachDay } from "../fit-minutes.ts";
import type { ShopProblem } from "../make-problem.ts";
import type { UnfitSpan } from "../problem.ts";
import type { BenchRound } from "./bench-round.ts";
import type { UnfitHours } from "./rotation-answer.ts";

const DAY: Minutes = 1_440;

/** When coats of a process are not laid, for the air is unfit for them, as far as the bench is open then. */
export function unfitHours({ problem, pieces }: ShopProblem, round: BenchRound): UnfitHours[] {
  return at(pieces, 0).tasks.flatMap(({ task, step }) => {
    const unfit = at(problem.tasks, task).unfit ?? [];
    return joined(eachDay(unfit, DAY, DAY))
      .filter((span) => isOpenIn(round, span))
      .map(([from, until]) => ({ step, from: clock(round, from), until: clock(round, until) }));
  });
}

/** Of one day that comes round: what ends with it goes on at its beginning. */
function joined(unfit: readonly UnfitSpan[]): readonly UnfitSpan[] {
  const [first] = unfit;
  const last = unfit.at(-1);
  if (first === undefined || last === undefined || unfit.length < 2) return unfit;
  if (first[0] > 0 || last[1] < DAY) return unfit;
  return [...unfit.slice(1, -1), [last[0], first[1] + DAY]];
}

/** Whether the bench is open in a stretch of the day, on any day of the round. */
function isOpenIn({ sessions, minutes }: BenchRound, [from, until]: UnfitSpan): boolean {
  for (let day = -DAY; day < minutes; day += DAY) {
    if (sessions.some(({ opens, closes }) => from + day < closes && until + day > opens)) return true;
  }
  return false;
}

function clock({ begins }: BenchRound, minute: Minutes): Minutes {
  return (begins + minute) % DAY;
}
