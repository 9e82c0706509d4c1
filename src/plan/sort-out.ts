import type { Tag } from "../journal/event.ts";
import { after, type Instant } from "../time/instant.ts";
import { firstFit, howManyFit, sessionNow } from "./bench-time.ts";
import type { Candidate } from "./candidates.ts";
import type { HeldRow } from "./now-answer.ts";
import type { Hold, ShopFacts, StepFacts } from "./plan-shop.ts";

/** One group of candidates, by what stands in its way. */
export interface SortedOut {
  /** Can be started this minute, together. */
  readonly work: readonly Candidate[];
  readonly held: readonly HeldTogether[];
}

export interface HeldTogether {
  readonly candidates: readonly Candidate[];
  readonly because: HeldRow["because"];
  /** What holds them besides. */
  readonly also?: readonly Hold[];
  readonly until: Instant | null;
}

/** Hands that cannot be freed now, and from when they are; null: only once the maker has said what became of it. */
export interface HandsFull {
  readonly tags: readonly Tag[];
  readonly step: string;
  readonly until: Instant | null;
}

/** Splits a group into what can be worked now and what is held, with the reason and the next moment. */
export function sortOut(group: readonly Candidate[], facts: ShopFacts, hands: HandsFull | null): SortedOut {
  const held: HeldTogether[] = [];
  const able = group.filter((one) => {
    const hindrance = ofItself(one, facts);
    if (hindrance !== null) held.push({ candidates: [one], ...hindrance });
    return hindrance === null;
  });
  const { fit, holds } = fitToStart(able, facts);
  held.push(...holds);
  if (fit.length === 0) return { work: [], held };
  const { now } = facts.context;
  const session = sessionNow(facts);
  if (session === null) {
    const until = facts.sessions[0]?.opens ?? null;
    const because = { code: "no bench hours", because: "the bench is shut", remedy: null } as const;
    return { work: [], held: [...held, { candidates: fit, because, until }] };
  }
  if (hands !== null)
    return { work: [], held: [...held, { candidates: fit, ...handsFull(hands, fit, facts) }] };
  const most = howManyFit(fit, now, session, facts);
  const rest = fit.slice(most);
  if (rest.length > 0) held.push({ candidates: rest, ...doesNotFit(rest, facts) });
  return { work: fit.slice(0, most), held };
}

/** What stands in its way whatever else is worked: its window shut for good, or another step of it in hand. */
function ofItself(one: Candidate, facts: ShopFacts): Pick<HeldTogether, "because" | "until"> | null {
  if (one.state.is === "shut" && one.state.preparation === null) {
    return { because: shutForGood(one), until: null };
  }
  const own = ownHandFull(one, facts);
  return own === null ? null : handsFull(own, [one], facts);
}

/** Those that safety lets start together, and the others, each with what lasts longest. */
function fitToStart(
  group: readonly Candidate[],
  facts: ShopFacts,
): { fit: Candidate[]; holds: HeldTogether[] } {
  if (group.length === 0) return { fit: [], holds: [] };
  if (holdsOf(group, facts).length === 0) return { fit: [...group], holds: [] };
  const fit: Candidate[] = [];
  const holds: HeldTogether[] = [];
  for (const candidate of group) {
    const [worst, ...also] = holdsOf([...fit, candidate], facts).toSorted((a, b) => rank(b) - rank(a));
    if (worst === undefined) {
      fit.push(candidate);
      continue;
    }
    const same = holds.find(({ because }) => because.because === worst.because);
    if (same === undefined) holds.push({ candidates: [candidate], also, ...heldBy(worst, candidate, facts) });
    else {
      const known = same.also ?? [];
      const more = also.filter((hold) => known.every(({ because }) => because !== hold.because));
      const candidates = [...same.candidates, candidate];
      holds[holds.indexOf(same)] = { ...same, candidates, also: [...known, ...more] };
    }
  }
  return { fit, holds };
}

/** What the clock does not end lasts longest. */
const rank = ({ until }: Hold): number => until ?? Number.POSITIVE_INFINITY;

function holdsOf(group: readonly Candidate[], facts: ShopFacts): readonly Hold[] {
  const [first] = group;
  if (first === undefined) return [];
  const { step, part, preparation, coats } = first;
  const tags = group.flatMap(({ tag }) => (tag === null ? [] : [tag]));
  return facts.holdsOn({ tags, step, part, preparation, coats, leaves: facts.putsDown(tags) });
}

/** A coat half laid, or work forgotten since an earlier session: it must be hung before other work is taken. */
export function isStuck({ state, step }: StepFacts): boolean {
  if (state.is !== "in hand") return false;
  return state.forgotten || (state.part === "step" && step.coat !== null);
}

/** Another step of the same piece that is in hand and must be hung first, however many hands there are; null: none. */
function ownHandFull({ tag, step, facts: piece }: Candidate, { context }: ShopFacts): HandsFull | null {
  const stuck = piece?.steps.find((one) => one.step.name !== step.name && isStuck(one));
  if (tag === null || stuck === undefined) return null;
  const { usual, spent, forgotten } = stuck.hand ?? { usual: 0, spent: 0, forgotten: null };
  const until = forgotten ? null : after(context.now, Math.max(1, Math.ceil(usual - spent)));
  return { tags: [tag], step: stuck.step.name, until };
}

/** A hold that ends too late for tonight's hours lasts until the bench opens again. */
function heldBy(hold: Hold, candidate: Candidate, facts: ShopFacts): Pick<HeldTogether, "because" | "until"> {
  if (hold.until === null) return { because: hold, until: null };
  const until = firstFit([candidate], hold.until, facts);
  const session = sessionNow(facts);
  const inTime = session !== null && hold.until < session.closes;
  if (inTime && (until === null || until >= session.closes)) return doesNotFit([candidate], facts, hold);
  return { because: hold, until };
}

function handsFull(hands: HandsFull, fit: readonly Candidate[], facts: ShopFacts) {
  const { tags, step, until } = hands;
  const because = {
    code: "hands full",
    because: `${tags.join(" ")} ${step} is in hand`,
    remedy: until === null ? "say when it was hung" : null,
  } as const;
  return { because, until: until === null ? null : firstFit(fit.slice(0, 1), until, facts) };
}

function shutForGood({ state, tag }: Candidate): HeldRow["because"] {
  const coat = state.is === "shut" ? state.coat : "";
  return { code: "shut for good", because: `the window of its ${coat} has shut`, remedy: `mend ${tag}` };
}

function doesNotFit(rest: readonly Candidate[], facts: ShopFacts, hold: Hold | null = null) {
  const until = firstFit(rest.slice(0, 1), sessionNow(facts)?.closes ?? facts.context.now, facts);
  const because =
    until === null
      ? "takes longer than any bench session"
      : `does not fit tonight${hold === null ? "" : afterHold(hold)}`;
  return { because: { code: "does not fit", because, remedy: null } as const, until };
}

/** The wait after which it is too late for tonight. What the clock ends is only told as a wait: none is seen to be gone. */
function afterHold({ code, because }: Hold): string {
  if (code === "unfit air") return ", once the air is fit for its coat";
  if (code === "no hook") return ", once a hook is free";
  return `, after the wait for ${because}`;
}
