import { after, type Instant } from "../time/instant.ts";
import type { ShopProblem } from "./make-problem.ts";
import type { HandRow } from "./now-answer.ts";
import type { PieceFacts, ShopFacts, StepFacts } from "./plan-shop.ts";
import type { Prepared } from "./prepare-dispatch.ts";
import { type HandsFull, isStuck } from "./sort-out.ts";
import { coatFor } from "./task-of-step.ts";
import { lookAhead } from "./window-ahead.ts";

interface Held {
  readonly number: number;
  readonly piece: PieceFacts;
  readonly step: StepFacts;
}

/**
 * What is in hand, a row for each act that took it (pieces taken together are worked and hung together), then what
 * lies half-done.
 */
export function handRows(facts: ShopFacts, made: ShopProblem, prepared: Prepared): HandRow[] {
  return groupsInHand(facts).map((group) => handRow(group, made, prepared));
}

/**
 * Hands that cannot be freed: a coat half laid, or work forgotten since an earlier session, must be hung first.
 *
 * @returns null while a pair of hands is free, or can be made so by leaving what may be left
 */
export function handsFullBy(facts: ShopFacts): HandsFull | null {
  const stuck = groupsInHand(facts).filter((group) => group.some(({ step }) => isStuck(step)));
  const [first] = stuck;
  if (first === undefined || stuck.length < facts.hands) return null;
  const ends = stuck.map((group) => endsAt(group, facts.context.now));
  const until = ends.some((end) => end === null) ? null : Math.min(...ends.map((end) => end ?? 0));
  return { tags: first.map(({ piece }) => piece.piece.tag), step: first[0]?.step.step.name ?? "", until };
}

/** When it will usually be hung; null: nobody knows, it was forgotten. */
function endsAt(group: readonly Held[], now: Instant): Instant | null {
  if (group.some(({ step }) => step.hand?.forgotten)) return null;
  return after(now, minutesLeft(group));
}

function minutesLeft(group: readonly Held[]): number {
  const left = group.reduce(
    (sum, { step: { hand } }) => sum + Math.max(0, (hand?.usual ?? 0) - (hand?.spent ?? 0)),
    0,
  );
  return Math.max(1, Math.ceil(left));
}

/** What is in hand by the act that took it; what lies half-done each by itself, after them. */
function groupsInHand(facts: ShopFacts): Held[][] {
  const running = new Map<number, Held[]>();
  const lying: Held[][] = [];
  for (const [number, piece] of facts.pieces.entries()) {
    for (const step of piece.steps) {
      if (step.hand === null) continue;
      const held = { number, piece, step };
      if (step.state.is === "left") {
        lying.push([held]);
        continue;
      }
      const { act } = step.hand.hand;
      running.set(act, [...(running.get(act) ?? []), held]);
    }
  }
  return [...running.values(), ...lying];
}

function handRow(group: readonly Held[], made: ShopProblem, prepared: Prepared): HandRow {
  const [first] = group;
  if (first?.step.hand == null) throw new Error("nothing in hand");
  const { step, state, hand, cautions } = first.step;
  const left = state.is === "left";
  const coat = coatFor(first.piece.piece, step);
  const task = made.pieces[first.number]?.tasks.find((one) => one.step === step.name && one.pass === 0)?.task;
  const laying =
    coat !== null && task !== undefined && !left && hand.forgotten === null && hand.hand.part === "step";
  const minutes = minutesLeft(group);
  return {
    tags: group.map(({ piece }) => piece.piece.tag),
    step: step.name,
    part: hand.hand.part,
    station: step.station,
    since: "since" in state ? state.since : hand.hand.since,
    usualMinutes: group.reduce((sum, one) => sum + (one.step.hand?.usual ?? 0), 0),
    left,
    forgotten: hand.forgotten,
    cautions,
    warning: laying ? lookAhead(prepared, task, minutes, minutes, coat) : null,
  };
}
