import type { Step } from "../process/step.ts";
import type { Piece } from "../shop/shop.ts";
import { matchName } from "./match-name.ts";
import { type Refused, refuse } from "./refuse.ts";

/** The step of a piece's route that a name said in a hurry means, whatever its state. */
export function matchStep(piece: Piece, said: string): Step | Refused {
  return matchStepAmong(piece.tag, piece.route, said);
}

/** The same among any steps. `tag` is only for the refusal's sentence. */
export function matchStepAmong(tag: number, among: readonly Step[], said: string): Step | Refused {
  const steps = among.map(({ name }) => name);
  const match = matchName(said, steps);
  if ("several" in match) return refuse({ code: "several steps fit", tag, steps: match.several });
  const found = "found" in match ? among.find(({ name }) => name === match.found) : undefined;
  if (found) return found;
  const nearest = "nearest" in match ? match.nearest : null;
  return refuse({ code: "no such step", tag, step: said, nearest, steps });
}
