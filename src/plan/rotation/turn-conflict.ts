import type { CircleLag } from "./circle.ts";
import type { Choice } from "./find-conflict.ts";
import type { Placing } from "./placing.ts";
import type { Relaxation } from "./relaxation.ts";

/**
 * A wait that is broken because it is open over how many turns it goes, or in which of its windows it ends; the one with
 * the fewest turns left comes first.
 */
export function findTurnConflict(relaxation: Relaxation, placing: Placing): readonly Choice[] | null {
  let fewest = Number.POSITIVE_INFINITY;
  let choices: readonly Choice[] | null = null;
  for (const lag of relaxation.circle.lags) {
    const { from, to, least, most } = lag;
    const low = relaxation.turns.least(from, to);
    const open = -relaxation.turns.least(to, from) - low;
    const waited = waitIn(relaxation, placing, lag);
    const broken = waited < least || (most !== null && waited > most);
    if (open > 0 && open < fewest && broken) {
      fewest = open;
      choices = [(into) => into.raiseTurn(to, from, -low), (into) => into.raiseTurn(from, to, low + 1)];
    }
  }
  return choices ?? findGapConflict(relaxation, placing);
}

function findGapConflict(relaxation: Relaxation, placing: Placing): readonly Choice[] | null {
  for (const lag of relaxation.circle.lags) {
    const waited = lag.gaps === undefined ? 0 : waitIn(relaxation, placing, lag);
    const gap = lag.gaps?.find(({ shuts, opens }) => waited > shuts && waited < opens);
    if (gap === undefined) continue;
    const { from, to } = lag;
    return [(into) => into.raiseStart(to, from, -gap.shuts), (into) => into.raiseStart(from, to, gap.opens)];
  }
  return null;
}

/** Start to start, as placed. */
function waitIn({ circle }: Relaxation, { minutes, turns }: Placing, { from, to }: CircleLag): number {
  const turned = (turns[to] as number) - (turns[from] as number);
  return (minutes[to] as number) - (minutes[from] as number) + circle.period * turned;
}
