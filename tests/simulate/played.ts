import type { Plan } from "../../src/plan/plan.ts";
import type { PlanPiece, Problem } from "../../src/plan/problem.ts";
import {
  byRule,
  lastRungFirst,
  newestFirst,
  oldestFirst,
  oneAtATime,
  shutsFirst,
} from "../../src/simulate/makers-rules.ts";
import { atOnce, planned } from "../../src/simulate/planned.ts";
import type { Policy } from "../../src/simulate/play-forward.ts";
import type { PlayState } from "../../src/simulate/play-state.ts";

/** Every way of working there is, by name. Those that plan remember, so each is made anew. */
export const policies: Readonly<Record<string, () => Policy>> = {
  "one at a time": oneAtATime,
  "oldest first": () => byRule(oldestFirst),
  "newest first": () => byRule(newestFirst),
  "last rung first": () => byRule(lastRungFirst),
  "shuts first": () => byRule(shutsFirst),
  dispatch: atOnce,
  dryline: () => planned({ seed: 1, rounds: { first: 6, other: 3 } }),
};

/** What was done, as a plan for a problem in which all pieces there ever were stand from minute 0. */
export function asPlan(state: PlayState): { problem: Problem; plan: Plan } {
  const pieces = state.pieces.map(({ piece }): PlanPiece => piece);
  const tasks = state.tasks.map(({ task }) => task);
  return {
    problem: { ...state.shop, pieces, tasks },
    plan: {
      visits: state.visits.toSorted((a, b) => a.start - b.start),
      unplaced: state.tasks.filter(({ end }) => end === null).map(({ index }) => index),
      finish: state.pieces.map(({ finish }) => finish),
    },
  };
}
