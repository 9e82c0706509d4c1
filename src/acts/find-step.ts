import type { Step } from "../process/step.ts";
import type { Moment } from "../shop/moment.ts";
import type { Piece } from "../shop/shop.ts";
import type { StepState } from "../shop/states.ts";
import { stepState } from "../shop/step-state.ts";
import { matchName } from "./match-name.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";

/** The step an act is about, and how it stands. */
export interface FoundStep {
  readonly piece: Piece;
  readonly step: Step;
  readonly state: StepState;
  /** The maker named the preparation ("scuff"), not the step. */
  readonly namedPreparation: boolean;
}

type Standing = Omit<FoundStep, "namedPreparation" | "piece">;

/**
 * Finds which step of a piece is meant: the one named, else the one that fits. In hand comes before all; else what
 * is open, shut or left half-done; else what is still drying, so that the refusal can say until when.
 *
 * @param colour a colour said speaks of a step that is painted by the scheme
 *
 * @example the steps "first clear" (open) and "last clear" (blocked): "clear" means "first clear"
 */
export function findStep(
  piece: Piece,
  said: string | null,
  colour: string | null,
  at: Moment,
): FoundStep | Refused {
  const all = piece.route.map((step) => ({ step, state: stepState(piece, step.name, at) }));
  if (said !== null) return findNamed(piece, said, all);
  // A coat in hand is hung before anything else is worked, whatever colour was said of it.
  const laying = all.filter(({ step, state }) => state.is === "in hand" && step.coat !== null);
  if (laying.length > 0) return chooseOne(piece, laying, [["in hand"]]);
  const painted = all.filter(({ step }) => step.passes === "scheme");
  return colour !== null && painted.length > 0
    ? chooseOne(piece, painted, [["in hand"], ["open", "shut", "left"], ["drying"], ["blocked"], ["done"]])
    : chooseOne(piece, all, [["in hand"], ["open", "shut", "left"], ["drying"]]);
}

/** The one step in the first of these groups of states that has any. */
function chooseOne(
  piece: Piece,
  all: readonly Standing[],
  groups: readonly (readonly StepState["is"][])[],
): FoundStep | Refused {
  for (const group of groups) {
    const fitting = all.filter(({ state }) => group.includes(state.is));
    const [only] = fitting;
    if (only && fitting.length === 1) return { piece, ...only, namedPreparation: false };
    if (only) return severalFit(piece, fitting);
  }
  return nothingToDo(piece, all);
}

function findNamed(piece: Piece, said: string, all: readonly Standing[]): FoundStep | Refused {
  const steps = all.map(({ step }) => step.name);
  const match = matchName(said, steps);
  if ("found" in match) {
    const standing = all.find(({ step }) => step.name === match.found);
    if (standing) return { piece, ...standing, namedPreparation: false };
  }
  if ("several" in match) {
    // Of "first clear" and "last clear", "clear" means the one that can be worked.
    const named = all.filter(({ step }) => match.several.includes(step.name));
    return chooseOne(piece, named, [["in hand"], ["open", "shut", "left"], ["drying", "blocked", "done"]]);
  }
  const prepared = findPreparation(piece, said, all);
  if (prepared) return prepared;
  const nearest = "nearest" in match ? match.nearest : null;
  return refuse({ code: "no such step", tag: piece.tag, step: said, nearest, steps });
}

/** The step whose preparation has this name; null when no coat of the piece asks for any such work. */
function findPreparation(piece: Piece, said: string, all: readonly Standing[]): FoundStep | Refused | null {
  const known = Object.values(piece.coats).flatMap(({ windows }) =>
    windows.flatMap(({ first }) => first?.do ?? []),
  );
  const match = matchName(said, [...new Set(known)]);
  if (!("found" in match)) return null;
  const asking = all.filter(({ state }) => asksFor(state, match.found));
  const found = chooseOne(piece, asking, [["in hand"], ["shut", "left"], ["drying"]]);
  if (isRefused(found)) return found.refusal.code === "nothing to do" ? nothingToDo(piece, all) : found;
  return { ...found, namedPreparation: true };
}

/** Whether a step in this state wants that preparation, now or in the window to come, or has it in hand. */
function asksFor(state: StepState, preparation: string): boolean {
  if (state.is === "in hand" || state.is === "left") return state.part === "preparation";
  return (state.is === "shut" || state.is === "drying") && state.preparation?.do === preparation;
}

function severalFit(piece: Piece, fitting: readonly Standing[]): Refused {
  return refuse({
    code: "several steps fit",
    tag: piece.tag,
    steps: fitting.map(({ step }) => step.name),
  });
}

function nothingToDo(piece: Piece, all: readonly Standing[]): Refused {
  const states = all.map(({ step, state }) => ({ step: step.name, state }));
  return refuse({ code: "nothing to do", tag: piece.tag, states });
}
