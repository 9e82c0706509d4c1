import type { Choice } from "./find-conflict.ts";
import type { Placing } from "./placing.ts";
import type { Relaxation } from "./relaxation.ts";

/**
 * Two tasks that hinder each other and lie too near: of all such pairs the one with the least freedom ("fail first").
 *
 * @param placing null: any two tasks whose order is open
 */
export function findOrderConflict(relaxation: Relaxation, placing: Placing | null): readonly Choice[] | null {
  const { size } = relaxation;
  let least = Number.POSITIVE_INFINITY;
  let choices: readonly Choice[] | null = null;
  for (let one = 0; one < size; one++) {
    for (let other = one + 1; other < size; other++) {
      const there = relaxation.apart(one, other);
      const back = relaxation.apart(other, one);
      if (there === null || back === null) continue;
      if (relaxation.isBefore(one, other) || relaxation.isBefore(other, one)) continue;
      if (placing !== null && fits(placing, one, other, there, back, relaxation.circle.period)) continue;
      const oneFirst = -relaxation.minutes.least(other, one) - there;
      const otherFirst = -relaxation.minutes.least(one, other) - back;
      const freedom = Math.min(oneFirst, otherFirst);
      if (freedom >= least) continue;
      least = freedom;
      const before: Choice = (into) => into.setBefore(one, other);
      const behind: Choice = (into) => into.setBefore(other, one);
      choices = oneFirst >= otherFirst ? [before, behind] : [behind, before];
    }
  }
  return choices;
}

/** Whether two tasks are placed far enough apart, both ways round the circle. */
function fits(
  { minutes }: Placing,
  one: number,
  other: number,
  there: number,
  back: number,
  period: number,
): boolean {
  const between = (minutes[other] as number) - (minutes[one] as number);
  return between >= 0
    ? between >= there && between <= period - back
    : between <= -back && between >= there - period;
}
