import { sayHandRow } from "../words/say-work.ts";
import { hangOf } from "./requests.ts";
import type { DashboardState, Step } from "./state.ts";

/** Asks, at the next key, about a step begun in an earlier bench session and never said done; null: none to ask. */
export function forgottenQuestion(state: DashboardState): Step | null {
  const facts = state.facts;
  const row = facts?.answer.inHand.find(
    (one) => one.forgotten !== null && !state.asked.includes(keyOf(one.tags, one.since)),
  );
  if (facts === null || row === undefined) return null;
  const yes = {
    key: "y",
    label: "y  yes, hung as usual",
    effects: [{ do: "perform" as const, request: hangOf(row.tags, state.now, { asUsual: true }) }],
  };
  return {
    state: {
      ...state,
      asked: [...state.asked, keyOf(row.tags, row.since)],
      overlay: {
        is: "choose",
        title: sayHandRow(row, facts.speech),
        lines: ["A better time can be said later: dryline amend TAG TIME"],
        choices: [yes],
      },
    },
    effects: [],
  };
}

function keyOf(tags: readonly number[], since: number): string {
  return `${tags.join(",")} ${since}`;
}
