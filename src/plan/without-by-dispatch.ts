import { after } from "../time/instant.ts";
import type { WithoutIt } from "./cost-of-leaving.ts";
import { firstFinish } from "./dispatch.ts";
import { isLeftAnyway, type LeftWork } from "./left-work.ts";
import type { Plan } from "./plan.ts";
import type { Prepared } from "./prepare-dispatch.ts";

/**
 * When the first of its pieces is finished if work is left, by dispatching again without it: quick, and no more than a
 * guess at the cost. Leaving may finish a piece sooner, for a priority rule is no search and more freedom can make its
 * answer worse (R. L. Graham, Bounds on multiprocessing timing anomalies, SIAM J. Appl. Math. 17, 1969). Then that is
 * what is told; what it does to the others would be told by accident, so it is not.
 */
export function withoutByDispatch(
  { tasks, pieces, until }: LeftWork,
  prepared: Prepared,
  plan: Plan,
): WithoutIt {
  const { origin, horizon } = prepared.problem;
  const now = Math.min(...pieces.map((piece) => plan.finish[piece] ?? horizon));
  if (pieces.length === 0 || now >= horizon) return { finishNow: null, finishLeft: null, others: null };
  const finishNow = after(origin, now);
  if (isLeftAnyway({ tasks, until }, plan)) return { finishNow, finishLeft: finishNow, others: null };
  const left = firstFinish(prepared, { tasks, until }, pieces);
  return { finishNow, finishLeft: left === null ? null : after(origin, left), others: null };
}
