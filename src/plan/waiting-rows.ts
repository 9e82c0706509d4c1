import { after, type Instant } from "../time/instant.ts";
import type { WaitingRow } from "./now-answer.ts";
import { type PieceFacts, type ShopFacts, type StepFacts, windowsUpon } from "./plan-shop.ts";
import { coatFor } from "./task-of-step.ts";

/** Every piece that is out or waits to be begun, by tag, with the step it will go on with. */
export function waitingRows(facts: ShopFacts): WaitingRow[] {
  return facts.pieces.flatMap((piece) => {
    const step = nextStep(piece);
    return step === null ? [] : [waitingRow(piece, step)];
  });
}

/**
 * What is in hand, else what a coat lets begin or shuts (other bench work of the piece stands among the work for now,
 * and must not hide its countdown), else half-done, else the step that opens first.
 */
function nextStep({ steps }: PieceFacts): StepFacts | null {
  const reachable = steps
    .filter(({ state }) => state.is !== "blocked")
    .toSorted((a, b) => order(a) - order(b));
  const inHand = reachable.find(({ state }) => state.is === "in hand");
  return inHand ?? reachable.find(isCountedDown) ?? reachable[0] ?? null;
}

/** Whether a coat under a step has a moment to tell: it opens, or it shuts. */
function isCountedDown({ state, wait }: StepFacts): boolean {
  if (wait === null || wait.coats.length === 0) return false;
  return state.is === "drying" || state.is === "shut" || (state.is === "open" && state.shuts !== null);
}

function order({ state }: StepFacts): number {
  if (state.is === "in hand") return -2;
  if (state.is === "left") return -1;
  if (state.is === "drying") return state.opens ?? Number.POSITIVE_INFINITY;
  return state.is === "open" || state.is === "shut" ? state.since : Number.POSITIVE_INFINITY;
}

function waitingRow(facts: PieceFacts, step: StepFacts): WaitingRow {
  const { piece, coat, lastHung } = facts;
  return {
    tag: piece.tag,
    name: piece.name,
    step: step.step.name,
    stage: coat?.stage ?? null,
    progress: coat?.progress ?? 0,
    since: coat?.laidAt ?? lastHung,
    // Under a coat that is being laid, the one before no longer tells when the piece is hard.
    hard: isBeingLaid(step) ? null : (coat?.hard ?? null),
    place: piece.place,
    ...openings(facts, step),
  };
}

const isBeingLaid = ({ step, state }: StepFacts): boolean =>
  state.is === "in hand" && state.part === "step" && step.coat !== null;

/** What the clock says of a piece, by the state of the step it goes on with. */
type Openings = Pick<WaitingRow, "opens" | "shuts" | "state" | "because" | "otherEnd">;

function openings(facts: PieceFacts, { step, state, hand }: StepFacts): Openings {
  const none = { opens: null, shuts: null, because: null, otherEnd: null };
  switch (state.is) {
    case "drying": {
      const { because } = state;
      const notByClock =
        because === "tacky" || because === "feel first" || because === "air" ? because : null;
      return { ...none, state: "drying", opens: state.opens, shuts: state.shuts, because: notByClock };
    }
    case "open": {
      const begun = facts.piece.begunAt !== null;
      return { ...none, state: begun ? "open" : "not begun", opens: state.since, shuts: state.shuts };
    }
    case "shut":
      return {
        ...none,
        state: "shut",
        opens: state.preparation === null ? null : state.since,
        shuts: state.since,
      };
    case "in hand": {
      if (hand?.forgotten == null) return { ...none, state: "in hand" };
      const { usual, latest } = hand.forgotten;
      return {
        ...none,
        state: "in hand",
        ...windowFrom(facts, step, usual),
        otherEnd: windowFrom(facts, step, latest),
      };
    }
    default:
      return { ...none, state: "left" };
  }
}

/** The window for the next step of a coat forgotten in hand, if it was hung at a moment. */
function windowFrom({ piece }: PieceFacts, step: StepFacts["step"], hungAt: Instant) {
  const coat = coatFor(piece, step);
  const next = piece.route.find(({ after }) => after.includes(step.name));
  const window = coat === null || next === undefined ? undefined : windowsUpon(coat, next, null)[0];
  if (window === undefined) return { opens: null, shuts: null };
  return {
    opens: after(hungAt, window.opens),
    shuts: window.shuts === null ? null : after(hungAt, window.shuts),
  };
}
