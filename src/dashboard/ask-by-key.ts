import type { Tag } from "../journal/event.ts";
import { cleared, perform, still } from "./key-steps.ts";
import { numbered } from "./numbered.ts";
import type { Choice, DashboardState, Overlay, Step } from "./state.ts";

/** What a touch test found, a key each. */
export function touchMenu(state: DashboardState, tags: readonly Tag[]): Overlay {
  const choice = (key: string, found: "tacky" | "dry" | "hard"): Choice => ({
    key,
    label: `${key}  ${found}`,
    effects: [perform({ act: "touch", at: state.now, tags, found })],
  });
  return {
    is: "choose",
    title: `How does ${tags.join(" ")} feel?`,
    lines: [],
    choices: [choice("t", "tacky"), choice("d", "dry"), choice("h", "hard")],
  };
}

/** Names the newest act before it is taken back. */
export function askUndo(state: DashboardState): Step {
  const newest = state.facts?.newestAct ?? null;
  if (newest === null) return still({ ...state, message: { text: "Nothing to undo.", tone: "told" } });
  const yes: Choice = {
    key: "y",
    label: "y  take it back",
    effects: [perform({ act: "undo", at: state.now, target: newest.act })],
  };
  return still({
    ...cleared(state),
    overlay: { is: "choose", title: "Undo?", lines: [newest.words], choices: [yes] },
  });
}

/** Which process a new piece is of. */
export function askProcess(state: DashboardState): Step {
  const processes = state.facts?.processes ?? [];
  const choices = numbered(processes, (process) => ({
    label: process,
    effect: { do: "tag", process, name: null },
  }));
  return still({
    ...cleared(state),
    overlay: { is: "choose", title: "Tag a new piece of which process?", lines: [], choices },
  });
}
