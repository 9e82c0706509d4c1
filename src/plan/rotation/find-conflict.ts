import { findHoldConflict } from "./hold-conflict.ts";
import { openSetUp } from "./open-set-up.ts";
import { findOrderConflict } from "./order-conflict.ts";
import type { Placing } from "./placing.ts";
import type { Relaxation } from "./relaxation.ts";
import { findSessionConflict } from "./session-conflict.ts";
import { findTurnConflict } from "./turn-conflict.ts";

/** One way to go on; false: it contradicts what is known. */
export type Choice = (relaxation: Relaxation) => boolean;

/** Which is settled first: over how many turns a wait goes, or which of two tasks stands first on the circle. */
export type Branching = "turns first" | "orders first";

/**
 * The choices, one of which every solution of `relaxation` makes, that settle something the placing breaks.
 *
 * @param placed what the placing keeps to: the relaxation, or the same held to more
 * @returns null: it breaks nothing
 */
export function findConflict(
  relaxation: Relaxation,
  placed: Relaxation,
  placing: Placing,
  branching: Branching,
): readonly Choice[] | null {
  const [first, then] =
    branching === "turns first"
      ? [findTurnConflict, findOrderConflict]
      : [findOrderConflict, findTurnConflict];
  return (
    openSetUp(relaxation, branching) ??
    first(placed, placing) ??
    findHoldConflict(relaxation, placing) ??
    then(placed, placing) ??
    findSessionConflict(relaxation, placing)
  );
}
