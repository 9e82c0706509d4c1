import type { Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import { dispatch } from "../dispatch.ts";
import type { LateWhy } from "../plan-answer.ts";
import { prepareDispatch } from "../prepare-dispatch.ts";
import type { Problem } from "../problem.ts";
import { momentOf, type PlannedShop } from "./planned-shop.ts";

/**
 * What makes a piece late, found by taking hindrances away one after the other and planning again (by dispatch, which is
 * quick): the first that is enough is the reason. Its own waits, then the bench hours, the air, hooks, then the hands that
 * other pieces need.
 */
export function lateWhy(shop: PlannedShop, number: number): LateWhy {
  const { problem } = shop.made;
  const due = at(problem.pieces, number).due ?? 0;
  if (due <= 0) return { because: "date passed" };
  const moment = (minute: Minutes | null) => (minute === null ? null : momentOf(shop, minute));
  const alone = without(problem, (piece) => piece !== number);
  const inAnyAir = { ...alone, tasks: alone.tasks.map((task) => ({ ...task, unfit: [] })) };
  const alwaysOpen = finishIn({ ...inAnyAir, sessions: [{ opens: 0, closes: problem.horizon }] }, number);
  if (isLate(alwaysOpen, due)) return { because: "waits", soonest: moment(alwaysOpen) };
  const inHours = finishIn(inAnyAir, number);
  if (isLate(inHours, due)) return { because: "hours", soonest: moment(inHours) };
  const inThisAir = finishIn(alone, number);
  if (isLate(inThisAir, due)) return { because: "air", soonest: moment(inThisAir) };
  const hook = hookInTheWay(problem, number, due);
  if (hook !== null) return { because: "hook", place: hook };
  return {
    because: "hands",
    others: othersInTheWay(problem, number, due).map((other) => at(shop.pieces, other)),
  };
}

/** The place whose hooks are too few for the piece to be on time; null: hooks are not what is missing. */
function hookInTheWay(problem: Problem, number: number, due: Minutes): string | null {
  if (!isLate(finishIn(problem, number), due)) return null;
  for (const [index, { name }] of problem.places.entries()) {
    const places = problem.places.map((place, other) =>
      other === index ? { ...place, hooks: problem.pieces.length } : place,
    );
    if (!isLate(finishIn({ ...problem, places }, number), due)) return name;
  }
  return null;
}

/** Other pieces, each of which alone is enough to make this one late. */
function othersInTheWay(problem: Problem, number: number, due: Minutes): number[] {
  if (!isLate(finishIn(problem, number), due)) return [];
  return [...problem.pieces.keys()].filter((other) => {
    if (other === number || !problem.tasks.some(({ piece }) => piece === other)) return false;
    const rest = without(problem, (piece) => piece === other);
    return !isLate(finishIn(rest, number), due);
  });
}

/** The problem with the work of some pieces taken as done: they need no hands and no hook, and wait for nothing. */
function without(problem: Problem, isGone: (piece: number) => boolean): Problem {
  return {
    ...problem,
    pieces: problem.pieces.map((piece, number) => (isGone(number) ? { ...piece, hook: null } : piece)),
    tasks: problem.tasks.map((task) =>
      isGone(task.piece) ? { ...task, ended: task.ended ?? 0, running: false, waits: [], hook: null } : task,
    ),
  };
}

function finishIn(problem: Problem, number: number): Minutes | null {
  return dispatch(prepareDispatch(problem)).finish[number] ?? null;
}

function isLate(finish: Minutes | null, due: Minutes): boolean {
  return finish === null || finish > due;
}
