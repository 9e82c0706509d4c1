import type { ProcessDefinition } from "../../process/definition.ts";
import { hasFitAir, tooLong } from "../ahead/no-time.ts";
import { at } from "../at.ts";
import type { ShopProblem } from "../make-problem.ts";
import type { MadeTask } from "../make-tasks.ts";
import type { ShopFacts } from "../plan-shop.ts";
import type { BenchRound } from "./bench-round.ts";
import { longestOf } from "./lags-of-day.ts";
import type { InThisAir, NoRotation } from "./rotation-answer.ts";

interface Looked {
  readonly facts: ShopFacts;
  readonly definition: ProcessDefinition;
  /** Of one piece. */
  readonly made: ShopProblem;
  readonly round: BenchRound;
}

/**
 * Why no rotation need be looked for: a step fits no bench session, a coat may not be laid in the air of any of them, or
 * dries at no time in it. Null: nothing of this is so.
 */
export function noRotation(looked: Looked): NoRotation | null {
  const { made, round } = looked;
  const { problem, pieces } = made;
  for (const { task, step } of at(pieces, 0).tasks) {
    const long = tooLong({ ...problem, sessions: round.sessions }, at(problem.tasks, task), step);
    if (long !== null) return long;
  }
  for (const one of at(pieces, 0).tasks) {
    const air = neverLaid(looked, one) ?? neverDries(looked, one);
    if (air !== null) return air;
  }
  return null;
}

/** A coat that no session has fit air for; what makes it unfit is asked of the minute the bench opens. */
function neverLaid({ facts, definition, made, round }: Looked, one: MadeTask): InThisAir | null {
  const step = definition.steps.find(({ name }) => name === one.step);
  const all = { sessions: round.sessions, horizon: Number.POSITIVE_INFINITY };
  if (step === undefined || hasFitAir(all, at(made.problem.tasks, one.task))) return null;
  const work = {
    tags: [],
    step,
    part: "step",
    preparation: null,
    coats: definition.coats,
    leaves: [],
  } as const;
  const air = facts.holdsOn(work).find(({ code }) => code === "unfit air");
  return {
    because: "air",
    step: one.step,
    coat: one.coat ?? "",
    air: air?.air ?? null,
    remedy: air?.remedy ?? null,
  };
}

function neverDries({ made }: Looked, { task, step, coat }: MadeTask): InThisAir | null {
  const { hook } = at(made.problem.tasks, task);
  const upon = made.problem.tasks.flatMap(({ waits }) => waits.filter(({ on }) => on === task));
  const never =
    upon.some(
      ({ windows: [first] }) => first !== undefined && longestOf(first.opens) === Number.POSITIVE_INFINITY,
    ) ||
    (hook !== null && longestOf(hook.until) === Number.POSITIVE_INFINITY);
  return never ? { because: "never dries", step, coat: coat ?? "" } : null;
}
