import type { SchemePass } from "../journal/event.ts";
import type { Step } from "../process/step.ts";
import type { Hang, Piece, StepWork } from "./shop.ts";

/** What passes lean on of a piece. */
type Painted = Pick<Piece, "scheme" | "work">;

/** Nothing has been done of a step. */
const UNTOUCHED: StepWork = {
  hangs: [],
  voided: 0,
  completed: false,
  prepared: null,
  sentBack: null,
};

/** What has been done of a step; a step never touched has its own empty answer. */
export function workOf(piece: Pick<Piece, "work">, step: string): StepWork {
  return piece.work.get(step) ?? UNTOUCHED;
}

/** The passes of a step that count: those hung since it was last sent back. */
export function liveHangs(work: StepWork): readonly Hang[] {
  return work.voided === 0 ? work.hangs : work.hangs.slice(work.voided);
}

/** The pass of a step that was hung last and counts; null: none. */
export function lastHang(work: StepWork): Hang | null {
  return work.hangs.length > work.voided ? (work.hangs.at(-1) ?? null) : null;
}

/** The number of the next pass of a step: numbers only rise, over mends too. */
export function nextPassNumber(work: StepWork): number {
  return (work.hangs.at(-1)?.pass ?? 0) + 1;
}

/**
 * The colours of the scheme still to come at a scheme step, in the scheme's order; each pass hung takes one of its own
 * colour out, and one of no colour the first.
 */
export function coloursLeft(piece: Painted, step: Step): readonly SchemePass[] {
  if (step.passes === "one") return [];
  const left = [...piece.scheme];
  for (const { colour } of liveHangs(workOf(piece, step.name))) {
    const index = colour === null ? 0 : left.findIndex((pass) => pass.colour === colour);
    if (index >= 0) left.splice(index, 1);
  }
  return left;
}

/** How many passes of a step are still to hang: with an empty scheme one, its colour not said. */
export function passesLeft(piece: Painted, step: Step): number {
  const work = workOf(piece, step.name);
  if (work.completed) return 0;
  if (step.passes === "scheme" && piece.scheme.length > 0) return coloursLeft(piece, step).length;
  return liveHangs(work).length > 0 ? 0 : 1;
}

/** What the scheme says of the pass to come, or of one in a colour named; null: it says nothing. */
export function nextPass(piece: Painted, step: Step, colour: string | null = null): SchemePass | null {
  const left = coloursLeft(piece, step);
  return (colour === null ? left[0] : left.find((pass) => pass.colour === colour)) ?? null;
}

/** Whether all of a step's passes are hung and count. */
export function isDone(piece: Painted, step: Step): boolean {
  return passesLeft(piece, step) === 0;
}
