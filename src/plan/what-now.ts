import { benchNow, preparedRows } from "./bench-now.ts";
import { type Candidate, findCandidates, newCandidate } from "./candidates.ts";
import type { WithoutIt } from "./cost-of-leaving.ts";
import { dispatch, dispatchSession, dispatchUntilBegun } from "./dispatch.ts";
import { handRows } from "./hand-rows.ts";
import { leftWork } from "./left-work.ts";
import { makeProblem } from "./make-problem.ts";
import { aimNeedsOne } from "./need-new-piece.ts";
import type { NowAnswer } from "./now-answer.ts";
import { type NowRows, nowRows } from "./now-rows.ts";
import { type NowContext, readShop, type ShopFacts } from "./plan-shop.ts";
import { prepareDispatch } from "./prepare-dispatch.ts";
import { waitingRows } from "./waiting-rows.ts";
import { withoutByDispatch } from "./without-by-dispatch.ts";
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
  return nowByDispatch(readShop(shop, context));
}

/** The same of facts read before. */
export function nowByDispatch(facts: ShopFacts): NowAnswer {
  const found = dispatchNow(facts);
  const { prepared, made, plan } = found;
  const without = (row: readonly Candidate[]) =>
    withoutByDispatch(leftWork(row, facts, made), prepared, plan);
  return answerNow(found, nowRows(found), without);
}

/** The plan that dispatch makes at once. */
export function dispatchNow(facts: ShopFacts): Found {
  const begun = beginNow(facts);
  return { ...begun, plan: dispatch(begun.prepared) };
}

/** The same plan as far as the order of the rows goes by it: no finish is known. */
export function dispatchRows(facts: ShopFacts): Found {
  const begun = beginNow(facts);
  const { made, prepared, wantsNew } = begun;
  const another = wantsNew ? newCandidate(facts, made) : null;
  const rows = [...findCandidates(facts, made), ...(another === null ? [] : [another])];
  return {
    ...begun,
    plan: dispatchUntilBegun(
      prepared,
      rows.flatMap(({ task }) => task ?? []),
    ),
  };
}

/** The same plan of its first bench session: what is begun later has no order yet. */
export function dispatchFirst(facts: ShopFacts): Found {
  const begun = beginNow(facts);
  return { ...begun, plan: dispatchSession(begun.prepared) };
}

function beginNow(facts: ShopFacts) {
  const wantsNew = aimNeedsOne(facts);
  const made = makeProblem(facts, wantsNew);
  return { facts, made, prepared: prepareDispatch(made.problem), basis: "dispatch", wantsNew } as const;
}

/**
 * Tells rows in words of the shop.
 *
 * @param without what planning without a row of work brings
 */
export function answerNow(
  found: Found,
  { work, held }: NowRows,
  without: (row: readonly Candidate[]) => WithoutIt,
): NowAnswer {
  const { facts, made, prepared, basis } = found;
  return {
    at: facts.context.now,
    basis,
    plan: { is: basis === "plan" ? "kept" : "none", gap: null },
    work: work.map((row, index) => workRow(row, work.slice(index + 1).flat(), found, () => without(row))),
    inHand: handRows(facts, made, prepared),
    waiting: waitingRows(facts),
    held: held.map((one) => heldRow(one, facts)),
    prepared: preparedRows(facts),
    bench: benchNow(facts),
    air: facts.airNow,
    cold: facts.cold,
  };
}
