import type { Override, Part, Tag } from "../journal/event.ts";
import type { Step } from "../process/step.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";
import { openForAnother } from "./another-pass.ts";
import { checkTime } from "./check-time.ts";
import { checkName, checkText } from "./check-value.ts";
import { contextAt, type DecideContext } from "./context.ts";
import { findPiecesOut } from "./find-pieces.ts";
import { type FoundStep, findStep } from "./find-step.ts";
import { judgeState } from "./judge-state.ts";
import { type PassToWork, passToWork } from "./pass-to-work.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";
import type { Anyway } from "./request.ts";

/** Work on one piece, chosen and allowed by its state. */
export interface Work extends PassToWork {
  readonly piece: Piece;
  readonly step: Step;
  readonly part: Part;
  /** It was in hand or lay half-done before. */
  readonly begun: boolean;
  readonly overrides: readonly Override[];
}

/** What a take and a hang ask alike. */
interface Asked {
  readonly tags: readonly Tag[];
  readonly step: string | null;
  readonly colour: string | null;
  readonly anyway: Anyway | null;
}

/**
 * Finds what each tag's work is and whether its state allows it; the first that is refused refuses all.
 *
 * @param at when the work begins or was done; each step stands as it did then
 * @returns work in the order of the tags
 */
export function chooseWork(
  asked: Asked,
  act: "take" | "hang",
  at: Instant,
  shop: Shop,
  context: DecideContext,
): readonly Work[] | Refused {
  const pieces = findPiecesOut(asked.tags, shop);
  if (isRefused(pieces)) return pieces;
  const unfit =
    (asked.anyway && checkText("reason", asked.anyway.reason)) ??
    (asked.colour === null ? null : checkName("colour", asked.colour));
  if (unfit) return unfit;
  const moment = contextAt(context, at);
  const all: Work[] = [];
  for (const piece of pieces) {
    const early = checkTime(at, [{ piece, concern: "nothing" }], shop);
    if (isRefused(early)) return early;
    const named = findStep(piece, asked.step, asked.colour, moment);
    if (isRefused(named)) return named;
    // What a step was before its last act is not known any more: a time before that says nothing of its state.
    const late = checkTime(at, [{ piece, concern: { step: named.step.name } }], shop);
    if (isRefused(late)) return late;
    const found = openForAnother(named, asked.colour, moment);
    const allowed = judgeState(found, asked.anyway, act);
    if (isRefused(allowed)) return allowed;
    const work = describeWork(found, allowed, asked.colour);
    if (isRefused(work)) return work;
    all.push(work);
  }
  return all;
}

function describeWork(
  { piece, step, state }: FoundStep,
  allowed: Pick<Work, "part" | "overrides">,
  colour: string | null,
): Work | Refused {
  if (colour !== null && step.passes === "one") {
    const expected = `a step painted by the scheme; ${step.name} is not`;
    return refuse({ code: "unfit value", what: "colour", value: colour, expected });
  }
  const begun = state.is === "in hand" || state.is === "left";
  const pass = passToWork(piece, step, colour);
  const ofPart = allowed.part === "step" ? pass : { pass: pass.pass, colour: null, another: false };
  return { piece, step, begun, ...allowed, ...ofPart };
}
