import type { Tag } from "../journal/event.ts";
import { still } from "./key-steps.ts";
import type { ActRow } from "./rows.ts";
import type { DashboardState, Step } from "./state.ts";

/** Moves the mark so many rows down, or up if negative; it stops at the ends. */
export function moveMark(state: DashboardState, by: number): Step {
  const at = state.rows.findIndex(({ id }) => id === state.mark);
  const to = Math.min(Math.max(at + by, 0), state.rows.length - 1);
  return still({ ...state, mark: state.rows[to]?.id ?? null });
}

/** The row the mark is on; null: there is none. */
export function markedRow(state: DashboardState): ActRow | null {
  return state.rows.find(({ id }) => id === state.mark) ?? null;
}

/** The step of the marked row; null: a tag was typed, or it is in hand and so needs no naming. */
export function markedStep(state: DashboardState): string | null {
  const marked = markedRow(state);
  return state.typed !== "" || marked === null || marked.is === "hand" ? null : marked.row.step;
}

/** The typed tag, else those of the marked row. */
export function tagsMeant(state: DashboardState): readonly Tag[] {
  return state.typed === "" ? (markedRow(state)?.row.tags ?? []) : [Number(state.typed)];
}
