import { MINUTE } from "../time/instant.ts";
import type { DashboardState, Effect, Happened, Step } from "./state.ts";

/** Cells that an overlay keeps clear at its sides. */
const MARGIN = 3;

/** Opens the plan of the coming days. */
export function openDays(state: DashboardState): Effect {
  return { do: "days", about: aboutDays(state), columns: columnsOf(state), again: false };
}

/** Has the plan that lies open made anew when a minute, an act, a better plan or another width has come. */
export function withDaysAnew(state: DashboardState): Step {
  const about = aboutDays(state);
  if (state.overlay?.is !== "days" || state.overlay.about === about) return { state, effects: [] };
  return { state, effects: [{ do: "days", about, columns: columnsOf(state), again: true }] };
}

/** Shows the plan; one made anew stays where it was read. */
export function showDays(
  state: DashboardState,
  { lines, about, again }: Extract<Happened, { is: "days" }>,
): DashboardState {
  const open = state.overlay?.is === "days" ? state.overlay : null;
  if (again && open === null) return state;
  return { ...state, overlay: { is: "days", lines, about, top: open?.top ?? 0 } };
}

/** What the plan of the days depends on, as one text to compare. */
function aboutDays({ facts, now, size }: DashboardState): string {
  return JSON.stringify([
    Math.floor(now / MINUTE),
    size.columns,
    facts?.newestAct?.act ?? null,
    facts?.answer.basis ?? null,
    facts?.answer.plan ?? null,
    facts?.answer.bench.closes ?? null,
  ]);
}

function columnsOf({ size }: DashboardState): number {
  return Math.max(size.columns - MARGIN, 40);
}
