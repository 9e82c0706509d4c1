import type { JournalEvent } from "../journal/event.ts";
import type { Step } from "../process/step.ts";
import type { Instant } from "../time/instant.ts";
import { setUpState } from "./set-up-state.ts";
import { setUpWords } from "./set-up-words.ts";
import type { StandingSetUp, StationState } from "./shop.ts";

/** A station of which nothing is known. */
export function emptyStation(station: string): StationState {
  return { station, lastSeq: 0, setUp: null, lastUsed: null, clearedAt: null };
}

/**
 * A station with a set-up begun, ready or seen ready; what stood there gave way. A pot said to be ready while it keeps
 * is the same melt, lit when it was lit; one kept too long ended then, and this is a new one.
 */
export function readyStation(
  state: StationState,
  event: Extract<JournalEvent, { kind: "readied" }>,
): StationState {
  const before = state.setUp;
  const ended = before === null ? null : endOf(before, event);
  const isSameMelt =
    before !== null && before.what === event.setUp && event.keeps.way === "heat" && ended === null;
  const setUp: StandingSetUp = {
    what: event.setUp,
    begun: event.begun ?? (isSameMelt ? before.begun : null),
    ready: event.ready,
    keeps: event.keeps,
    putAwayMinutes: event.putAwayMinutes,
    givesOff: event.givesOff,
    lastUsed: null,
    served: 0,
    act: event.act,
  };
  const clearedAt = before === null || isSameMelt ? state.clearedAt : (ended ?? event.begun ?? event.at);
  return { ...state, setUp, clearedAt };
}

/** When a set-up was kept too long, if it was by the time of an event; null: it was still good. */
function endOf(setUp: StandingSetUp, { at }: JournalEvent): Instant | null {
  const { is, until } = setUpState(setUp, at);
  return is === "kept too long" ? until : null;
}

/** A station cleared; in words: there was nothing to put away. */
export function clearStation(state: StationState, event: JournalEvent): StationState | string {
  if (state.setUp === null) return `nothing stood at the ${state.station} to put away`;
  return { ...state, setUp: null, clearedAt: event.at };
}

/**
 * A station after work on a piece ended there. A pass that used the set-up standing there (its words are the same)
 * renews it and counts as one served.
 */
export function workAtStation(
  state: StationState,
  step: Step,
  event: Extract<JournalEvent, { kind: "hung" | "left" }>,
  colour: string | null,
): StationState {
  const lastUsed = Math.max(state.lastUsed ?? event.at, event.at);
  const { setUp } = state;
  const used =
    setUp !== null &&
    event.part === "step" &&
    step.setUp !== null &&
    setUpWords(step.setUp, colour) === setUp.what;
  if (!used) return { ...state, lastUsed };
  const served = setUp.served + (event.kind === "hung" ? 1 : 0);
  return {
    ...state,
    lastUsed,
    setUp: { ...setUp, lastUsed: Math.max(setUp.lastUsed ?? event.at, event.at), served },
  };
}
