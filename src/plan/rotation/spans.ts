import type { Minutes } from "../../time/instant.ts";
import type { CirclePiece } from "./circle.ts";
import type { Relaxation } from "./relaxation.ts";

/** From the first start of a piece to its end. */
export function spanOf({ begins, ends }: CirclePiece, starts: readonly Minutes[]): Minutes {
  const first = Math.min(...begins.map((task) => starts[task] as number));
  return Math.max(...ends.map(({ task, minutes }) => (starts[task] as number) + minutes)) - first;
}

/** The least span of each piece that the networks leave. */
export function leastSpans({ circle, starts }: Relaxation): number[] {
  return circle.pieces.map(({ begins, ends }) =>
    Math.max(
      ...begins.flatMap((begin) => ends.map(({ task, minutes }) => starts.least(begin, task) + minutes)),
    ),
  );
}

/** Holds a piece to a span. @returns whether that says anything new; null: no solution is left */
export function holdSpan(
  relaxation: Relaxation,
  { begins, ends }: CirclePiece,
  most: Minutes,
): boolean | null {
  let raised = false;
  for (const begin of begins) {
    for (const { task, minutes } of ends) {
      if (relaxation.starts.least(task, begin) >= minutes - most) continue;
      if (!relaxation.raiseStart(task, begin, minutes - most)) return null;
      raised = true;
    }
  }
  return raised;
}
