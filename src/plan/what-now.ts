import { benchNow, preparedRows } from "./bench-now.ts";
import { type Candidate, findCandidates, newCandidate } from "./candidates.ts";
import { dispatch } from "./dispatch.ts";
import { groupCandidates } from "./group-candidates.ts";
import { handRows, handsFullBy } from "./hand-rows.ts";
import { makeProblem } from "./make-problem.ts";
import { aimNeedsOne, roomForOne } from "./need-new-piece.ts";
import type { NowAnswer } from "./now-answer.ts";
import type { Plan } from "./plan.ts";
import { type NowContext, readShop } from "./plan-shop.ts";
import { prepareDispatch } from "./prepare-dispatch.ts";
import { type HeldTogether, type SortedOut, sortOut } from "./sort-out.ts";
import { waitingRows } from "./waiting-rows.ts";
import { type Found, heldRow, workRow } from "./work-rows.ts";

export type PlanContext = NowContext;

/**
 * What can be worked now, best first, and what leaving it brings; what is held, what hangs, what stands ready. The
 * order is that in which dispatch begins the work. The same shop, moment and hours give the same answer.
 *
 * Every row of work can be begun this minute: nothing in the room keeps it apart, hands and hook are free, its window
 * is open, and it fits the bench hours left with its set-up and all that must be put away. Everything else that waits
 * only for such things is held, with the reason and the next moment.
 *
 * @throws never for a shop that was folded from a journal, however odd
 * @example whatNow(shop, context).work[0] // { tags: [1, 2], step: "second seal", beginBy: Mon 20:00, ... }
 */
export function whatNow(shop: Parameters<typeof readShop>[0], context: PlanContext): NowAnswer {
  const facts = readShop(shop, context);
  const withNew = aimNeedsOne(facts);
  const made = makeProblem(facts, withNew);
  const prepared = prepareDispatch(made.problem);
  const plan = dispatch(prepared);
  const found: Found = { facts, prepared, plan };

  const hands = handsFullBy(facts);
  const begins = firstBegins(plan);
  const candidates = inOrder(findCandidates(facts, made), begins);
  const sorted = groupCandidates(candidates, facts).map((group) => sortOut(group, facts, hands));
  const asked = withNew || (sorted.every(({ work }) => work.length === 0) && roomForOne(facts));
  const another = asked ? newCandidate(facts, made) : null;
  const all = another === null ? sorted : [...sorted, sortOut([another], facts, hands)];

  return {
    at: context.now,
    basis: "dispatch",
    work: workInOrder(all, begins).map((row, index, rows) =>
      workRow(row, rows.slice(index + 1).flat(), found),
    ),
    inHand: handRows(facts, made, prepared),
    waiting: waitingRows(facts),
    held: heldInOrder(all).map((held) => heldRow(held, facts)),
    prepared: preparedRows(facts),
    bench: benchNow(facts),
  };
}

/** By task: when dispatch begins it. */
type Begins = ReadonlyMap<number, number>;

function firstBegins({ visits }: Plan): Begins {
  const begins = new Map<number, number>();
  for (const { task, start } of visits) if (!begins.has(task)) begins.set(task, start);
  return begins;
}

function beginOf({ task }: Candidate, begins: Begins): number {
  return (task === null ? undefined : begins.get(task)) ?? Number.POSITIVE_INFINITY;
}

/** Ties go by tag, a new piece last. */
function compare(a: Candidate, b: Candidate, begins: Begins): number {
  const [one, other] = [beginOf(a, begins), beginOf(b, begins)];
  if (one !== other) return one < other ? -1 : 1;
  return (a.tag ?? Number.MAX_SAFE_INTEGER) - (b.tag ?? Number.MAX_SAFE_INTEGER);
}

function inOrder(candidates: readonly Candidate[], begins: Begins): Candidate[] {
  return candidates.toSorted((a, b) => compare(a, b, begins));
}

/** Rows by the first of their pieces; within a row the tags rise. */
function workInOrder(sorted: readonly SortedOut[], begins: Begins): Candidate[][] {
  return sorted
    .map(({ work }) => work)
    .filter((work) => work.length > 0)
    .toSorted((a, b) => compareFirst(a, b, begins))
    .map((work) => work.toSorted((a, b) => (a.tag ?? 0) - (b.tag ?? 0)));
}

function compareFirst(a: readonly Candidate[], b: readonly Candidate[], begins: Begins): number {
  const [one] = a;
  const [other] = b;
  return one === undefined || other === undefined ? 0 : compare(one, other, begins);
}

/** What is free soonest first; what the clock does not free last. */
function heldInOrder(sorted: readonly SortedOut[]): HeldTogether[] {
  const until = ({ until: moment }: HeldTogether): number => moment ?? Number.MAX_SAFE_INTEGER;
  return sorted
    .flatMap(({ held }) => held)
    .map((one) => ({ ...one, candidates: one.candidates.toSorted((a, b) => (a.tag ?? 0) - (b.tag ?? 0)) }))
    .toSorted((a, b) => until(a) - until(b) || (a.candidates[0]?.tag ?? 0) - (b.candidates[0]?.tag ?? 0));
}
