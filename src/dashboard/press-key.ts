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

/** Keys that are about pieces, with what each asks or does: those of the typed tag, else of the marked row. */
const ON_TAGS: Readonly<Record<string, (tags: readonly Tag[], state: DashboardState) => Effect | Overlay>> = {
  t: (tags, state) => perform(takeOf(tags, markedStep(state), state.now)),
  h: (tags, state) => hangMarked(state, tags),
  l: (tags, state) => perform({ act: "leave", at: state.now, tags }),
  o: (tags, state) => touchMenu(state, tags),
  n: (tags) => typing(`Note on ${tags.join(" ")}`, { for: "note", tags }),
  m: (tags) => typing(askOfMend(tags), { for: "mend", tags }),
  c: (tags) => typing(`Paint ${tags.join(" ")} now, in which colour`, { for: "colour", tags }),
  e: (tags, state) => ({ do: "measure", tags, step: markedStep(state) }),
  v: (tags) => ({ do: "place", tags }),
  s: (tags, state) => ({ do: "sheet", tags, step: markedStep(state) }),
};

/** All other keys. */
const OTHERS: Readonly<Record<string, (state: DashboardState) => Step>> = {
  k: (state) => moveMark(state, -1),
  j: (state) => moveMark(state, 1),
  N: (state) =>
    still({ ...cleared(state), overlay: typing("Note of the whole shop", { for: "note", tags: [] }) }),
  u: askUndo,
  a: askProcess,
  r: readyMarked,
  p: putAway,
  w: (state) => ({ state: cleared(state), effects: [{ do: "week" }] }),
  d: (state) => ({ state: cleared(state), effects: [openDays(state)] }),
  "?": (state) => still({ ...state, overlay: { is: "text", title: "Keys", lines: HELP_LINES, top: 0 } }),
  "!": (state) =>
    state.refused === null
      ? still(state)
      : still({ ...state, overlay: typing("Why all the same", { for: "anyway", request: state.refused }) }),
  q: (state) => ({ state, effects: [{ do: "quit" }] }),
};

function pressChar(state: DashboardState, char: string): Step {
  if (/^[0-9]$/.test(char))
    return still({ ...state, typed: (state.typed + char).slice(0, 6), message: null });
  const onTags = ON_TAGS[char];
  return onTags === undefined ? (OTHERS[char]?.(state) ?? still(state)) : pressOnTags(state, onTags);
}

function pressOnTags(state: DashboardState, make: (typeof ON_TAGS)[string]): Step {
  const tags = tagsMeant(state);
  if (tags.length === 0)
    return still({ ...state, message: { text: "Mark a row or type a tag first.", tone: "told" } });
  const made = make(tags, state);
  return "do" in made
    ? { state: cleared(state), effects: [made] }
    : still({ ...cleared(state), overlay: made });
}

function askOfMend(tags: readonly Tag[]): string {
  return `Mend ${tags.join(" ")}: what was done, and the minutes it took (level the run 10)`;
}
