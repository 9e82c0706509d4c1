import { at } from "../plan/at.ts";
import type { Visit } from "../plan/plan.ts";
import type { Minutes } from "../time/instant.ts";
import { carryOut } from "./carry-out.ts";
import type { PlayState, PlayTask } from "./play-state.ts";
import { type Moment, problemNow } from "./problem-now.ts";
import type { WorkNoise } from "./work-noise.ts";

/**
 * How a maker chooses: what to do first, in the numbers and minutes of the problem asked about (the first act of a
 * plan). It need not begin at once: until its beginning nothing is done. Null: nothing can be done at all.
 */
export type Policy = (moment: Moment) => readonly Visit[] | null;

/**
 * Plays a shop forward for one pair of hands: what the policy says is done, as long as it really takes, and then it is
 * asked again with the shop as it has become. Ends at the first choice at or after `until`, or when nothing more can
 * be done.
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
  for (const task of state.tasks) if (task.task.running) carryOut(state, [goOn(task)], noise);
  for (;;) {
    moveTo(state, state.now);
    supply(state);
    const { opens } = state.shop.sessions[state.session] ?? { opens: Number.POSITIVE_INFINITY };
    if (state.now < opens) moveTo(state, opens);
    if (state.now >= until) return;
    const moment = problemNow(state);
    const act = policy(moment);
    const [first] = act ?? [];
    if (first === undefined) return;
    const begin = state.now + first.start - first.setUp;
    if (begin > state.now) moveTo(state, begin);
    else carryOut(state, inPlay(act ?? [], moment), noise);
  }
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

/** Lets time pass. At the end of each session all that is to be put away is. */
function moveTo(state: PlayState, minute: Minutes): void {
  state.now = minute;
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
