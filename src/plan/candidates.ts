import type { Tag } from "../journal/event.ts";
import type { Coat, Preparation } from "../process/coat.ts";
import type { Step } from "../process/step.ts";
import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import type { ShopProblem } from "./make-problem.ts";
import type { WorkRow } from "./now-answer.ts";
import { type PieceFacts, type ShopFacts, type StepFacts, type StepState, setUpWords } from "./plan-shop.ts";
import { coatFor, usualOf } from "./task-of-step.ts";

/** Work on one piece that nothing before it stands in the way of: a row of the answer before rows are put together. */
export interface Candidate {
  /** Null: a new piece, not tagged yet. */
  readonly tag: Tag | null;
  readonly name: string | null;
  readonly process: string;
  readonly step: Step;
  readonly coat: Coat | null;
  readonly coats: Readonly<Record<string, Coat>>;
  readonly part: "step" | "preparation";
  readonly preparation: Preparation | null;
  readonly colour: string | null;
  /** Hands-on of this part. */
  readonly minutes: Minutes;
  /** Hands-on that follows the preparation at once: the step itself. */
  readonly thenMinutes: Minutes;
  readonly state: StepState;
  /** Its numbers in the problem; null: it is not in it. */
  readonly task: number | null;
  readonly piece: number | null;
  readonly facts: PieceFacts | null;
}

/**
 * Everything that waits for nothing but hands, air and room, by tag: steps whose window is open or late, and what lies
 * half-done. A piece has several where its steps branch.
 */
export function findCandidates(facts: ShopFacts, { pieces, problem }: ShopProblem): Candidate[] {
  const found: Candidate[] = [];
  for (const [number, piece] of facts.pieces.entries()) {
    for (const step of piece.steps) {
      if (!isWork(step.state)) continue;
      const task =
        pieces[number]?.tasks.find((made) => made.step === step.step.name && made.pass === 0)?.task ?? null;
      const minutes = (task === null ? undefined : problem.tasks[task]?.minutes) ?? 0;
      found.push(candidateOf(piece, step, number, task, minutes));
    }
  }
  return found;
}

function isWork(state: StepState): boolean {
  return state.is === "open" || state.is === "left" || state.is === "shut";
}

function candidateOf(
  facts: PieceFacts,
  { step, state, passes, wait, hand }: StepFacts,
  piece: number,
  task: number | null,
  minutes: Minutes,
): Candidate {
  const preparation = preparationNow(state, wait?.windows ?? []);
  return {
    tag: facts.piece.tag,
    name: facts.piece.name,
    process: facts.piece.definition.name,
    step,
    coat: coatFor(facts.piece, step),
    coats: facts.piece.coats,
    part: preparation === null ? "step" : "preparation",
    preparation,
    colour: hand?.hand.colour ?? passes[0]?.colour ?? null,
    minutes: preparation === null ? minutes : usualOf(preparation.handsOn),
    thenMinutes: preparation === null ? 0 : minutes,
    state,
    task,
    piece,
    facts,
  };
}

function preparationNow(state: StepState, windows: readonly { readonly first: Preparation | null }[]) {
  if (state.is === "shut") return state.preparation;
  if (state.is !== "left" || state.part === "step") return null;
  return windows.find(({ first }) => first !== null)?.first ?? null;
}

/** A new piece's first step. */
export function newCandidate({ context }: ShopFacts, { pieces }: ShopProblem): Candidate | null {
  const { newPiece, usualMinutes, now } = context;
  const step = newPiece?.definition.steps.find(({ after }) => after.length === 0);
  if (newPiece === null || step === undefined) return null;
  const { definition } = newPiece;
  const piece = pieces.findIndex(({ tag }) => tag === null);
  return {
    tag: null,
    name: null,
    process: definition.name,
    step,
    coat: coatFor(definition, step),
    coats: definition.coats,
    part: "step",
    preparation: null,
    colour: null,
    minutes: Math.max(1, Math.ceil(usualMinutes(definition.name, step))),
    thenMinutes: 0,
    state: {
      is: "open",
      since: now,
      shuts: null,
      preparationAfter: null,
      opensAgain: false,
      nextOpens: null,
    },
    task: pieces[piece]?.tasks.find((made) => made.step === step.name)?.task ?? null,
    piece: piece < 0 ? null : piece,
    facts: null,
  };
}

/** What must be set up before so many pieces of this work, and what of it stands. */
export function setUpFor(
  { step, part, colour }: Candidate,
  count: number,
  facts: ShopFacts,
): WorkRow["setUp"] {
  const { setUp, station } = step;
  if (setUp === null || part === "preparation") return null;
  const what = setUpWords(setUp, colour);
  const stands = facts.standing.find((one) => one.station === station && one.setUp.what === what);
  if (stands !== undefined) {
    const { keeps, served } = stands.setUp;
    const serves = keeps.way !== "mix" || served + count <= keeps.serves;
    if (serves && stands.state.is === "ready") return { what, minutes: 0, standing: true };
    if (serves && stands.state.is === "getting ready") {
      return { what, minutes: minutesTo(facts.context.now, stands.setUp.ready), standing: true };
    }
  }
  return { what, minutes: setUp.takes, standing: false };
}

function minutesTo(now: Instant, moment: Instant): Minutes {
  return Math.max(0, Math.ceil((moment - now) / MINUTE));
}
