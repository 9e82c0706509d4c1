import { type Candidate, findCandidates, newCandidate } from "./candidates.ts";
import { groupCandidates } from "./group-candidates.ts";
import { handsFullBy } from "./hand-rows.ts";
import { roomForOne } from "./need-new-piece.ts";
import type { Plan } from "./plan.ts";
import { type HeldTogether, type SortedOut, sortOut } from "./sort-out.ts";
import type { Found } from "./work-rows.ts";

/** Every piece's open work, by what can be begun this minute and what is held. */
export interface NowRows {
  /** Best first: in the order in which the plan begins them. */
  readonly work: readonly (readonly Candidate[])[];
  readonly held: readonly HeldTogether[];
}

/** Sorts out what can be worked now and puts it in the order in which a plan begins it. */
export function nowRows({ facts, made, plan, wantsNew }: Found): NowRows {
  const hands = handsFullBy(facts);
  const begins = firstBegins(plan);
  const candidates = inOrder(findCandidates(facts, made), begins);
  const sorted = groupCandidates(candidates, facts).map((group) => sortOut(group, facts, hands));
  const nothing = sorted.every(({ work }) => work.length === 0);
  const another = wantsNew || (nothing && roomForOne(facts)) ? newCandidate(facts, made) : null;
  const all = another === null ? sorted : [...sorted, sortOut([another], facts, hands)];
  return { work: workInOrder(all, begins), held: heldInOrder(all) };
}

/** By task: when the plan begins it. */
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
