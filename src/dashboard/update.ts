import { answerKey } from "./answer-key.ts";
import { pressKey } from "./press-key.ts";
import { keepOrder, rowsOf } from "./rows.ts";
import type { DashboardState, Facts, Happened, Step } from "./state.ts";

/** Rows keep their places so long after a key, in milliseconds. */
const HAND_RESTS = 3000;

/** What happened makes the next state and what must be done. Pure: the loop in run-dashboard.tsx does it. */
export function update(state: DashboardState, happened: Happened): Step {
  switch (happened.is) {
    case "key": {
      const pressed = { ...state, now: happened.now, lastKeyAt: happened.now };
      return pressed.overlay === null
        ? pressKey(pressed, happened.key)
        : answerKey(pressed, pressed.overlay, happened.key);
    }
    case "tick":
      return still({ ...state, now: happened.now });
    case "size":
      return still({ ...state, size: happened.size });
    case "facts":
      return still(withFacts(state, happened.facts));
    case "told":
      return still({ ...state, message: happened.message, refused: null });
    case "refused":
      return still({
        ...state,
        message: {
          text: happened.mayGoOn ? `${happened.text} (! goes on all the same)` : happened.text,
          tone: "refused",
        },
        refused: happened.mayGoOn ? happened.request : null,
      });
    case "unread":
      return still({
        ...state,
        overlay: {
          is: "caution",
          cautions: happened.cautions,
          lines: happened.lines,
          top: 0,
          request: happened.request,
        },
      });
    case "overlay":
      return still({ ...state, overlay: happened.overlay });
  }
}

function withFacts(state: DashboardState, facts: Facts): DashboardState {
  const fresh = rowsOf(facts.answer);
  const rows = state.now - state.lastKeyAt < HAND_RESTS ? keepOrder(state.rows, fresh) : fresh;
  const marked = rows.some(({ id }) => id === state.mark);
  return {
    ...state,
    facts,
    rows,
    mark: marked
      ? state.mark
      : followMark(
          state,
          rows.map(({ id }) => id),
        ),
  };
}

/** A marked row that went away leaves the mark at its place; the first rows of all are marked from the top. */
function followMark(state: DashboardState, ids: readonly string[]): string | null {
  const old = state.rows.findIndex(({ id }) => id === state.mark);
  return ids[Math.min(Math.max(old, 0), ids.length - 1)] ?? null;
}

function still(state: DashboardState): Step {
  return { state, effects: [] };
}
