import { at } from "../plan/at.ts";
import { openingAfter } from "../plan/lag.ts";
import type { Visit } from "../plan/plan.ts";
import type { Minutes } from "../time/instant.ts";
import { beginAct, endAct } from "./carry-out.ts";
import type { PlayState, PlayTask } from "./play-state.ts";
import { type Moment, problemNow } from "./problem-now.ts";
import type { WorkNoise } from "./work-noise.ts";

/**
 * How a maker chooses: what to do first, in the numbers and minutes of the problem asked about (the first act of a
 * plan). It need not begin at once: until its beginning nothing is done. Null: nothing can be done at all.
 */
export type Policy = (moment: Moment) => readonly Visit[] | null;

/**
 * Plays a shop forward: what the policy says is done, as long as it really takes, and with each pair of hands that
 * comes free it is asked again with the shop as it has become. Ends at the first choice at or after `until`, or when
 * nothing more can be done.
 *
 * @param supply called before each choice: may put pieces under those there are
 * @example playForward(beginPlay(problem), byRule(oldestFirst), noNoise, 7 * 1440)
 */
export function playForward(
  state: PlayState,
  policy: Policy,
  noise: WorkNoise,
  until: Minutes,
  supply: (state: PlayState) => void = () => {},
): void {
  for (const task of state.tasks) if (task.task.running) beginAct(state, [goOn(task)], noise);
  while (state.now < until) {
    const nextFree = Math.min(...state.inHand.map(({ end }) => end));
    if (state.inHand.length >= Math.max(1, state.shop.hands)) {
      moveTo(state, nextFree, noise);
      continue;
    }
    supply(state);
    const begin = choose(state, policy, noise, until);
    // Nothing to begin now: as time goes on something is freed, or shows itself.
    if (begin === Number.POSITIVE_INFINITY && state.inHand.length === 0) return;
    if (begin > state.now) moveTo(state, Math.min(begin, nextFree, nextTouch(state)), noise);
  }
}

/** Asks the policy, and begins its act if it is to begin now. @returns when it is to begin; Infinity: no act */
function choose(state: PlayState, policy: Policy, noise: WorkNoise, until: Minutes): Minutes {
  const session = state.shop.sessions[state.session];
  if (session === undefined) return Number.POSITIVE_INFINITY;
  if (state.now < session.opens) return session.opens;
  const moment = problemNow(state);
  const act = policy(moment);
  const [first] = act ?? [];
  if (first === undefined) return Number.POSITIVE_INFINITY;
  const begin = state.now + first.start - first.setUp;
  if (begin <= state.now && begin < until) beginAct(state, inPlay(act ?? [], moment), noise);
  return begin;
}

/** When the next wait is over by its sheet, and shows how it went. */
function nextTouch({ now, unfinished, tasks }: PlayState): Minutes {
  let next = Number.POSITIVE_INFINITY;
  for (const piece of unfinished) {
    for (const { task, end } of piece.tasks) {
      if (end !== null) continue;
      for (const { on, windows } of task.waits) {
        const before = tasks[on]?.end ?? null;
        const opens = before === null ? now : openingAfter(at(windows, 0).opens, before);
        if (opens > now) next = Math.min(next, opens);
      }
    }
  }
  return next;
}

function goOn({ index, rest }: PlayTask): Visit {
  return { task: index, part: "step", setUp: 0, start: 0, end: rest };
}

function inPlay(act: readonly Visit[], { now, tasks }: Moment): Visit[] {
  return act.map((visit) => ({
    ...visit,
    task: at(tasks, visit.task),
    start: visit.start + now,
    end: visit.end + now,
  }));
}

/** Lets time pass: what is in hand until then is done, and at the end of each session all is put away that is to be. */
function moveTo(state: PlayState, minute: Minutes, noise: WorkNoise): void {
  state.now = minute;
  const done = state.inHand.filter(({ end }) => end <= minute);
  for (const one of done.sort((a, b) => a.end - b.end)) endAct(state, one, noise);
  const { sessions, setUps } = state.shop;
  for (;;) {
    const session = sessions[state.session];
    if (session === undefined || session.closes > minute) return;
    state.session++;
    for (const [index, standing] of state.standing.entries()) {
      if (standing === null || standing === "any" || at(setUps, standing.setUp).putAway === 0) continue;
      state.standing[index] = null;
    }
  }
}
