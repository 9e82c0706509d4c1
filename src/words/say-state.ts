import type { Preparation } from "../process/coat.ts";
import type { StepState } from "../shop/states.ts";
import { sayList } from "./say-list.ts";
import { sayClock, sayWait } from "./say-time.ts";
import type { Speech } from "./speech.ts";

type Drying = Extract<StepState, { is: "drying" }>;
type Shut = Extract<StepState, { is: "shut" }>;

/**
 * What is so with one step, as a clause that begins with its name.
 *
 * @example sayState("first clear", state, speech) // "first clear opens 23:04, shuts Tue 19:04"
 */
export function sayState(step: string, state: StepState, speech: Speech): string {
  switch (state.is) {
    case "blocked":
      return `${step} waits for ${sayList(state.by)}`;
    case "drying":
      return `${step} ${sayDrying(state, speech)}`;
    case "open":
      return `${step} is open${sayShuts(state.shuts, speech)}`;
    case "shut":
      return `${step} ${sayShut(state, speech)}`;
    case "in hand":
      return `${step} has been in hand since ${sayClock(state.since, speech)}`;
    case "left":
      return `${step} lies half-done since ${sayClock(state.since, speech)}`;
    case "done":
      return `${step} was done ${sayClock(state.at, speech)}`;
    case "ended":
      return `the piece is ${sayEnd(state.how)}`;
  }
}

/** How a piece ended, after "is": `finished`, `scrapped`, `sold`, `given away`, `kept`. */
export function sayEnd(how: string): string {
  return how === "given" ? "given away" : how;
}

/** Of a coat that hangs in air too cold or too damp for it. */
export const NEVER_IN_THIS_AIR = "does not cure in this air: move it, or warm the air";

/** When a step that waits will open, or that only a touch can say. `opens 23:04, shuts Tue 19:04` */
export function sayDrying(state: Drying, speech: Speech): string {
  if (state.because === "tacky") return "waits for a touch that says dry: it was tacky";
  if (state.because === "air") return NEVER_IN_THIS_AIR;
  if (state.opens === null) return "opens by a touch alone: feel it";
  const first = state.preparation === null ? "" : ` after ${sayPreparation(state.preparation)}`;
  return `opens ${sayClock(state.opens, speech)}${first}${sayShuts(state.shuts, speech)}`;
}

/** That a window shut, and what helps. `shut 19:04: scuff 5 min first` */
export function sayShut(state: Shut, speech: Speech): string {
  const help =
    state.preparation === null
      ? `only a mend from ${state.step} helps`
      : `${sayPreparation(state.preparation)} first`;
  return `shut ${sayClock(state.since, speech)}: ${help}`;
}

/** `, shuts Tue 19:04`; nothing for a window that never shuts. */
export function sayShuts(shuts: number | null, speech: Speech): string {
  return shuts === null ? "" : `, shuts ${sayClock(shuts, speech)}`;
}

/** Work asked for before a coat, with its usual minutes. `scuff 5 min` */
export function sayPreparation(preparation: Preparation): string {
  return `${preparation.do} ${sayWait(preparation.handsOn.likely)}`;
}
