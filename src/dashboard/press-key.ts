import type { ActRequest } from "../acts/request.ts";
import type { Tag } from "../journal/event.ts";
import { openDays } from "./days-view.ts";
import { forgottenQuestion } from "./forgotten-question.ts";
import { HELP_LINES } from "./help-lines.ts";
import { numbered } from "./numbered.ts";
import { hangOf, takeOf } from "./requests.ts";
import type { ActRow } from "./rows.ts";
import type { Choice, DashboardState, Effect, Key, Overlay, Step } from "./state.ts";

/** A set-up that takes at least this long is begun by itself; a shorter one is part of taking the work. */
const OWN_WORK_FROM = 10;
/** A second Enter so soon is a bouncing pedal or a glove, in milliseconds: it must not hang what the first took. */
const BOUNCE = 400;

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

/** One key does the obvious act: hang what is in hand, ready a pot, take the work, tag a new piece, measure it first. */
function doObvious(state: DashboardState): Step {
  if (state.now - state.lastEnterAt < BOUNCE) return still({ ...state, lastEnterAt: state.now });
  const pressed = { ...cleared(state), lastEnterAt: state.now };
  const act = (request: ActRequest): Step => ({ state: pressed, effects: [perform(request)] });
  if (state.typed !== "") {
    const tag = Number(state.typed);
    const inHand = state.facts?.answer.inHand.some((row) => !row.left && row.tags.includes(tag));
    return act(inHand === true ? hangOf([tag], state.now) : takeOf([tag], null, state.now));
  }
  const marked = markedRow(state);
  if (marked === null) return askProcess(pressed);
  if (marked.row.tags.length === 0) {
    return marked.is === "work"
      ? { state: pressed, effects: [{ do: "tag", process: marked.row.process, name: null }] }
      : askProcess(pressed);
  }
  if (marked.is === "hand" && !marked.row.left) return act(hangOf(marked.row.tags, state.now));
  if (marked.is === "work") {
    const { setUp } = marked.row;
    if (setUp !== null && !setUp.standing && setUp.minutes >= OWN_WORK_FROM) return readyMarked(pressed);
  }
  const { tags, step } = marked.row;
  if (marked.is === "held" && marked.row.because.code === "measure first") {
    return { state: pressed, effects: [{ do: "measure", tags, step }] };
  }
  return act(takeOf(tags, step, state.now));
}

/**
 * Hangs the tags meant. With other work in hand and the mark on a row that was never taken, it is asked which: the one
 * in hand is the likelier.
 */
function hangMarked(state: DashboardState, tags: readonly Tag[]): Effect | Overlay {
  const hang = (meant: readonly Tag[], step: string | null) => perform(hangOf(meant, state.now, { step }));
  const step = markedStep(state);
  const inHand = (state.facts?.answer.inHand ?? []).filter(({ left }) => !left);
  const isInHand = inHand.some((row) => tags.some((tag) => row.tags.includes(tag)));
  if (state.typed !== "" || isInHand || inHand.length === 0) return hang(tags, step);
  const rows = [
    ...inHand.map((row) => ({
      tags: row.tags,
      step: null,
      label: `${row.tags.join(" ")} ${row.step}, in hand`,
    })),
    { tags, step, label: `${tags.join(" ")} ${step ?? ""}, never taken: its time is not known` },
  ];
  const choices = numbered(rows, (row) => ({ label: row.label, effect: hang(row.tags, row.step) }));
  return { is: "choose", title: "Hang which?", lines: [], choices };
}

function askOfMend(tags: readonly Tag[]): string {
  return `Mend ${tags.join(" ")}: what was done, and the minutes it took (level the run 10)`;
}

function touchMenu(state: DashboardState, tags: readonly Tag[]): Overlay {
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

function askUndo(state: DashboardState): Step {
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

function askProcess(state: DashboardState): Step {
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

function readyMarked(state: DashboardState): Step {
  const marked = markedRow(state);
  if (marked?.is !== "work" || marked.row.setUp === null) {
    return still({
      ...state,
      message: { text: "Mark a row of work that needs a set-up first.", tone: "told" },
    });
  }
  const { station, setUp } = marked.row;
  const request: ActRequest = {
    act: "ready",
    at: state.now,
    station,
    what: setUp.what,
    begun: null,
    beginning: true,
    anyway: null,
    ticked: [],
  };
  return { state: cleared(state), effects: [perform(request)] };
}

function putAway(state: DashboardState): Step {
  const standing = state.facts?.answer.prepared ?? [];
  const effect = (station: string): Effect => perform({ act: "put away", at: state.now, station });
  const [only] = standing;
  if (only === undefined)
    return still({ ...state, message: { text: "Nothing stands ready.", tone: "told" } });
  if (standing.length === 1) return { state: cleared(state), effects: [effect(only.station)] };
  const choices = numbered(standing, (row) => ({
    label: `${row.setUp} at the ${row.station}`,
    effect: effect(row.station),
  }));
  return still({ ...cleared(state), overlay: { is: "choose", title: "Put away what?", lines: [], choices } });
}

function moveMark(state: DashboardState, by: number): Step {
  const at = state.rows.findIndex(({ id }) => id === state.mark);
  const to = Math.min(Math.max(at + by, 0), state.rows.length - 1);
  return still({ ...state, mark: state.rows[to]?.id ?? null });
}

function markedRow(state: DashboardState): ActRow | null {
  return state.rows.find(({ id }) => id === state.mark) ?? null;
}

function markedStep(state: DashboardState): string | null {
  const marked = markedRow(state);
  return state.typed !== "" || marked === null || marked.is === "hand" ? null : marked.row.step;
}

/** The typed tag, else those of the marked row. */
function tagsMeant(state: DashboardState): readonly Tag[] {
  return state.typed === "" ? (markedRow(state)?.row.tags ?? []) : [Number(state.typed)];
}

function typing(title: string, purpose: Extract<Overlay, { is: "type" }>["purpose"]): Overlay {
  return { is: "type", title, typed: "", purpose };
}

function perform(request: ActRequest): Effect {
  return { do: "perform", request };
}

function cleared(state: DashboardState): DashboardState {
  return { ...state, typed: "", message: null, refused: null };
}

function still(state: DashboardState): Step {
  return { state, effects: [] };
}
