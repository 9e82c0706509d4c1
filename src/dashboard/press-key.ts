import type { Tag } from "../journal/event.ts";
import { doObvious, hangMarked, putAway, readyMarked } from "./act-by-key.ts";
import { askProcess, askUndo, touchMenu } from "./ask-by-key.ts";
import { openDays } from "./days-view.ts";
import { forgottenQuestion } from "./forgotten-question.ts";
import { HELP_LINES } from "./help-lines.ts";
import { cleared, perform, still, typing } from "./key-steps.ts";
import { markedStep, moveMark, tagsMeant } from "./marked-row.ts";
import { takeOf } from "./requests.ts";
import type { DashboardState, Effect, Key, Overlay, Step } from "./state.ts";

/** A key with nothing lying over the picture. Unknown keys do nothing. */
export function pressKey(state: DashboardState, key: Key): Step {
  const question = forgottenQuestion(state);
  if (question !== null) return question;
  switch (key.name) {
    case "up":
      return moveMark(state, -1);
    case "down":
      return moveMark(state, 1);
    case "pageUp":
      return moveMark(state, -8);
    case "pageDown":
      return moveMark(state, 8);
    case "backspace":
      return still({ ...state, typed: state.typed.slice(0, -1) });
    case "escape":
      return still({ ...state, typed: "", message: null, refused: null });
    case "enter":
      return doObvious(state);
    case "char":
      return pressChar(state, key.char);
  }
}

function pressChar(state: DashboardState, char: string): Step {
  if (/^[0-9]$/.test(char))
    return still({ ...state, typed: (state.typed + char).slice(0, 6), message: null });
  const tags = tagsMeant(state);
  switch (char) {
    case "k":
      return moveMark(state, -1);
    case "j":
      return moveMark(state, 1);
    case "t":
      return onTags(state, tags, () => perform(takeOf(tags, markedStep(state), state.now)));
    case "h":
      return onTags(state, tags, () => hangMarked(state, tags));
    case "l":
      return onTags(state, tags, () => perform({ act: "leave", at: state.now, tags }));
    case "o":
      return onTags(state, tags, () => touchMenu(state, tags));
    case "n":
      return onTags(state, tags, () => typing(`Note on ${tags.join(" ")}`, { for: "note", tags }));
    case "N":
      return still({
        ...cleared(state),
        overlay: typing("Note of the whole shop", { for: "note", tags: [] }),
      });
    case "m":
      return onTags(state, tags, () => typing(askOfMend(tags), { for: "mend", tags }));
    case "c":
      return onTags(state, tags, () =>
        typing(`Paint ${tags.join(" ")} now, in which colour`, { for: "colour", tags }),
      );
    case "e":
      return onTags(state, tags, () => ({ do: "measure", tags, step: markedStep(state) }));
    case "v":
      return onTags(state, tags, () => ({ do: "place", tags }));
    case "s":
      return onTags(state, tags, () => ({ do: "sheet", tags, step: markedStep(state) }));
    case "u":
      return askUndo(state);
    case "a":
      return askProcess(state);
    case "r":
      return readyMarked(state);
    case "p":
      return putAway(state);
    case "w":
      return { state: cleared(state), effects: [{ do: "week" }] };
    case "d":
      return { state: cleared(state), effects: [openDays(state)] };
    case "?":
      return still({ ...state, overlay: { is: "text", title: "Keys", lines: HELP_LINES, top: 0 } });
    case "!":
      return state.refused === null
        ? still(state)
        : still({ ...state, overlay: typing("Why all the same", { for: "anyway", request: state.refused }) });
    case "q":
      return { state, effects: [{ do: "quit" }] };
    default:
      return still(state);
  }

  function onTags(from: DashboardState, meant: readonly Tag[], make: () => Effect | Overlay): Step {
    if (meant.length === 0)
      return still({ ...from, message: { text: "Mark a row or type a tag first.", tone: "told" } });
    const made = make();
    return "do" in made
      ? { state: cleared(from), effects: [made] }
      : still({ ...cleared(from), overlay: made });
  }
}

function askOfMend(tags: readonly Tag[]): string {
  return `Mend ${tags.join(" ")}: what was done, and the minutes it took (level the run 10)`;
}
