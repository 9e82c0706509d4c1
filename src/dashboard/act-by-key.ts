import type { ActRequest } from "../acts/request.ts";
import type { Tag } from "../journal/event.ts";
import { askProcess } from "./ask-by-key.ts";
import { cleared, perform, still } from "./key-steps.ts";
import { markedRow, markedStep } from "./marked-row.ts";
import { numbered } from "./numbered.ts";
import { hangOf, takeOf } from "./requests.ts";
import type { DashboardState, Effect, Overlay, Step } from "./state.ts";

/** A set-up that takes at least this long is begun by itself; a shorter one is part of taking the work. */
const OWN_WORK_FROM = 10;
/** A second Enter so soon is a bouncing pedal or a glove, in milliseconds: it must not hang what the first took. */
const BOUNCE = 400;

/** One key does the obvious act: hang what is in hand, ready a pot, take the work, tag a new piece, measure it first. */
export function doObvious(state: DashboardState): Step {
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
export function hangMarked(state: DashboardState, tags: readonly Tag[]): Effect | Overlay {
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

/** Begins the set-up of the typed tag's work, else of the marked row: the pot is lit, the brush is being loaded. */
export function readyMarked(state: DashboardState): Step {
  const { typed, rows } = state;
  const meant =
    typed === "" ? [markedRow(state)] : rows.filter(({ row }) => row.tags.includes(Number(typed)));
  const found = meant.find((one) => one?.is === "work" && one.row.setUp !== null);
  if (found?.is !== "work" || found.row.setUp === null) {
    const text =
      typed === ""
        ? "Mark a row of work that needs a set-up first."
        : `No work of ${typed} now needs a set-up first.`;
    return still({ ...cleared(state), message: { text, tone: "told" } });
  }
  const { station, setUp } = found.row;
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

/** Puts away what stands ready, once it is said which: with a pot thought cold, vapour is let into the room. */
export function putAway(state: DashboardState): Step {
  const standing = state.facts?.answer.prepared ?? [];
  const effect = (station: string): Effect => perform({ act: "put away", at: state.now, station });
  if (standing.length === 0)
    return still({ ...cleared(state), message: { text: "Nothing stands ready.", tone: "told" } });
  const choices = numbered(standing, (row) => ({
    label: `${row.setUp} at the ${row.station}`,
    effect: effect(row.station),
  }));
  return still({ ...cleared(state), overlay: { is: "choose", title: "Put away what?", lines: [], choices } });
}
