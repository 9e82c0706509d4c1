import type { Refusal } from "../acts/refusal.ts";
import { sayList, sayTags } from "./say-list.ts";
import type { Refusals } from "./say-refusal.ts";
import { sayDrying, sayEnd, sayPreparation, sayShuts, sayState } from "./say-state.ts";
import { sayClock } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/** What is asked is known, but not possible as things are. */
export const REFUSALS_OF_STATE: Refusals<
  | "nothing to do"
  | "blocked"
  | "too early"
  | "too late"
  | "already in hand"
  | "not in hand"
  | "already done"
  | "ended"
  | "other in hand"
  | "coat half laid"
  | "no coat"
  | "not begun"
  | "before it was tagged"
  | "before the last"
  | "after the next"
  | "nothing to undo"
  | "leaned on"
  | "nothing stands"
> = {
  "nothing to do": ({ tag, states }, speech) => {
    const telling = states.filter(({ state }) => state.is !== "blocked" && state.is !== "done");
    const said = telling.map(({ step, state }) => sayState(step, state, speech));
    const none = states.every(({ state }) => state.is === "done")
      ? "all is done, mend it to go on"
      : "what is left comes after other steps";
    return `Nothing of ${tag} can be worked now: ${said.length === 0 ? none : sayList(said)}`;
  },
  blocked: ({ tag, step, by }) =>
    `${tag} ${step} comes after ${sayList(by)}: do ${by.length === 1 ? "that" : "those"} first`,
  "too early": sayTooEarly,
  "too late": ({ tag, step, since, preparation, mendFrom }, speech) => {
    const help =
      preparation === null
        ? `mend it and go on from ${mendFrom}`
        : `take it for ${sayPreparation(preparation)} first`;
    return `The window for ${tag} ${step} shut ${sayClock(since, speech)}: ${help}, or go on anyway with a reason`;
  },
  "already in hand": ({ tag, step, since }, speech) =>
    `${tag} ${step} has been in hand since ${sayClock(since, speech)}: hang it when it is done`,
  "not in hand": ({ tag }) => `${tag} is not in hand: take it first`,
  "already done": ({ tag, step, at }, speech) =>
    `${tag} ${step} was done ${sayClock(at, speech)}: mend the piece to do it again`,
  ended: ({ tag, how, at }, speech) =>
    `${tag} is ${sayEnd(how)} since ${sayClock(at, speech)}: ${sayAfterEnd(how)}`,
  "other in hand": ({ tag, tags, step, since }, speech) =>
    `${sayTags(tags)} ${step} ${tags.length === 1 ? "has" : "have"} been in hand since ${sayClock(since, speech)} and a coat begun cannot be left: hang ${sayTags(tags)} before ${tag}`,
  "coat half laid": ({ tag, step }) =>
    `${tag} ${step} is a coat already begun, which cannot be left: hang it when it is laid`,
  "no coat": ({ tag }) => `${tag} has no coat to touch: lay one first`,
  "not begun": ({ tag }) => `${tag} is not begun, so it hangs nowhere yet: work a step of it first`,
  "before it was tagged": ({ tag, taggedAt, at }, speech) =>
    `${sayClock(at, speech)} is before ${tag} was tagged, ${sayClock(taggedAt, speech)}: say a later time`,
  "before the last": ({ tag, lastAt, what, at }, speech) =>
    `${sayClock(at, speech)} is before what was last written of ${tag ?? "that station"} (${what}, ${sayClock(lastAt, speech)}): say a later time`,
  "after the next": ({ tag, nextAt, what, at }, speech) =>
    `${sayClock(at, speech)} is after what followed on ${tag ?? "that station"} (${what}, ${sayClock(nextAt, speech)}): say an earlier time`,
  "nothing to undo": () => "Nothing of yours is left to undo: each act stands once or is undone",
  "leaned on": ({ what, byAct, byWhat }) =>
    `"${what}" cannot be undone while "${byWhat}" (act ${byAct}) leans on it: undo that first`,
  "nothing stands": ({ station }) => `Nothing stands at the ${station}: ready it first`,
};

/** Why a step is not open yet: a touch must say so, a stage must be reached, or its window has not opened. */
function sayTooEarly({ tag, step, state }: Extract<Refusal, { code: "too early" }>, speech: Speech): string {
  const anyway = "or go on anyway with a reason";
  if (state.because === "tacky" || state.because === "air")
    return `${tag} ${step} ${sayDrying(state, speech)}, ${anyway}`;
  if (state.opens === null) {
    return `${tag} ${step} opens by a touch alone${state.coat === null ? "" : `, not by the clock (${state.coat})`}: touch it and say dry or hard, ${anyway}`;
  }
  const opens = sayClock(state.opens, speech);
  switch (state.because) {
    case "stage":
      return `${tag} ${step} opens ${opens}, when ${state.coat ?? "the coat before it"} is ${state.stage ?? "dry-hard"}: wait, ${anyway}`;
    case "between windows":
      return `${tag} ${step} is between two windows, the next opens ${opens}${
        state.preparation === null ? "" : ` after ${sayPreparation(state.preparation)}`
      }: wait, ${anyway}`;
    default:
      return `${tag} ${step} opens ${opens}${sayShuts(state.shuts, speech)}: wait, ${anyway}`;
  }
}

/** What can still be done with a piece that has ended. */
function sayAfterEnd(how: string): string {
  if (how === "finished") return "mend it to work on it again";
  if (how === "scrapped") return "undo that if it was a mistake, or tag another like it";
  return "tag another like it";
}
