import type { Choice } from "./find-conflict.ts";
import type { Placing } from "./placing.ts";
import type { Relaxation } from "./relaxation.ts";

/** A wait that is broken because it is open over how many turns it goes; the one with the fewest left comes first. */
export function findTurnConflict(
  relaxation: Relaxation,
  { minutes, turns }: Placing,
): readonly Choice[] | null {
  const { circle } = relaxation;
  let fewest = Number.POSITIVE_INFINITY;
  let choices: readonly Choice[] | null = null;
  for (const { from, to, least, most } of circle.lags) {
    const low = relaxation.turns.least(from, to);
    const open = -relaxation.turns.least(to, from) - low;
    if (open === 0 || open >= fewest) continue;
    const between =
      (minutes[to] as number) -
      (minutes[from] as number) +
      circle.period * ((turns[to] as number) - (turns[from] as number));
    if (between >= least && (most === null || between <= most)) continue;
    fewest = open;
    choices = [(into) => into.raiseTurn(to, from, -low), (into) => into.raiseTurn(from, to, low + 1)];
  }
  return choices;
}
