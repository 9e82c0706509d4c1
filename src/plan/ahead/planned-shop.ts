import { after, type Instant, type Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import type { ShopProblem } from "../make-problem.ts";
import type { MadeTask } from "../make-tasks.ts";
import type { Plan } from "../plan.ts";
import type { PlannedPiece } from "../plan-answer.ts";
import type { ShopFacts } from "../plan-shop.ts";

/** A shop with the plan found for it: all that a timetable is told from. */
export interface PlannedShop {
  readonly facts: ShopFacts;
  readonly made: ShopProblem;
  readonly plan: Plan;
  /** By piece number, how a timetable names it. */
  readonly pieces: readonly PlannedPiece[];
  /** By task number. */
  readonly tasks: readonly MadeTask[];
}

/** Puts a plan beside the shop it was found for. */
export function plannedShop(facts: ShopFacts, made: ShopProblem, plan: Plan): PlannedShop {
  const tasks: MadeTask[] = [];
  for (const piece of made.pieces) for (const task of piece.tasks) tasks[task.task] = task;
  return { facts, made, plan, tasks, pieces: namePieces(facts, made, plan) };
}

/** Those not tagged yet are counted in the order in which they are begun. */
function namePieces(facts: ShopFacts, { problem, pieces }: ShopProblem, { visits }: Plan): PlannedPiece[] {
  const begins = pieces.map((_, number) => {
    const first = visits.find(({ task }) => problem.tasks[task]?.piece === number);
    return first === undefined ? Number.POSITIVE_INFINITY : first.start - first.setUp;
  });
  const untagged = pieces.flatMap(({ tag }, number) => (tag === null ? [number] : []));
  // Infinity less Infinity is no number: those that are never begun stay in their order.
  const order = untagged.toSorted((a, b) => at(begins, a) - at(begins, b) || a - b);
  return pieces.map(({ tag, process }, number) => {
    const name = tag === null ? process : (facts.pieces[number]?.piece.name ?? process);
    return { tag, nth: tag === null ? order.indexOf(number) + 1 : null, name, process };
  });
}

/** A minute of the problem as a moment. */
export function momentOf({ facts }: PlannedShop, minute: Minutes): Instant {
  return after(facts.context.now, minute);
}
