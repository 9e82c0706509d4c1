import { pictureOf } from "../../src/dashboard/picture.ts";
import type { DashboardState, Effect, Facts, Key } from "../../src/dashboard/state.ts";
import { firstState } from "../../src/dashboard/state.ts";
import { update } from "../../src/dashboard/update.ts";
import { lineText } from "./line-text.ts";
import { busyAnswer, evening, makeFacts } from "./made-answer.ts";

/** A dashboard at rest that has read these facts; a busy evening unless said. */
export function makeState(
  facts: Facts = makeFacts(busyAnswer()),
  size = { columns: 80, rows: 24 },
): DashboardState {
  return update(firstState(size, evening), { is: "facts", facts }).state;
}

/** Presses keys one after another: single characters, or names in angles, `press(state, "1", "4", "<enter>")`. */
export function press(
  state: DashboardState,
  ...keys: string[]
): { readonly state: DashboardState; readonly effects: readonly Effect[] } {
  let now = state.now;
  const effects: Effect[] = [];
  let current = state;
  for (const key of keys) {
    now += 1000;
    const step = update(current, { is: "key", key: keyOf(key), now });
    current = step.state;
    effects.push(...step.effects);
  }
  return { state: current, effects };
}

/** The picture as the text a person reads. */
export function picture(state: DashboardState): string[] {
  return pictureOf(state).map(lineText);
}

function keyOf(key: string): Key {
  const named = /^<(.+)>$/.exec(key)?.[1];
  return named === undefined ? { name: "char", char: key } : ({ name: named } as Key);
}
