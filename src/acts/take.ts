import type { NewEvent } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import { askToStart } from "./ask-to-start.ts";
import { checkTime } from "./check-time.ts";
import { chooseWork, type Work } from "./choose-work.ts";
import type { DecideContext } from "./context.ts";
import { type Decision, decided } from "./decision.ts";
import { freeHands } from "./free-hands.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";
import { setUpsFor } from "./set-ups-for.ts";

/**
 * Takes pieces in hand: the step that fits, or its preparation where the window asks for one. What else was in hand is
 * left; a set-up that did not stand ready is now; cautions are read before.
 *
 * @returns in this order what is left, readied, ticked and taken; or the first "no" of: state, time, hands,
 * set-up, safety
 */
export function decideTake(request: ActOf<"take">, shop: Shop, context: DecideContext): Decision {
  const works = chooseWork(request, "take", request.at, shop, context);
  if (isRefused(works)) return works;
  const uneven = refuseUneven(works);
  if (uneven) return uneven;
  const time = checkTime(
    request.at,
    works.map(({ piece, step }) => ({ piece, concern: { step: step.name } })),
    shop,
  );
  if (isRefused(time)) return time;
  const left = freeHands(works, time.at, shop, context);
  if (isRefused(left)) return left;
  const setUps = setUpsFor(works, shop, time.at);
  if (isRefused(setUps)) return setUps;
  const start = askToStart(
    { ...request, at: time.at },
    works,
    left.flatMap(({ tag }) => tag ?? []),
    shop,
    context,
  );
  if (isRefused(start)) return start;
  const taken = works.map((work): NewEvent => {
    const { piece, step, pass, part, colour, another } = work;
    const overrides = [...work.overrides, ...start.overrides];
    return {
      kind: "taken",
      at: time.at,
      tag: piece.tag,
      station: step.station,
      step: step.name,
      pass,
      part,
      colour,
      another,
      overrides,
    };
  });
  return decided([...left, ...setUps.readied, ...start.ticked, ...taken], shop, setUps.stations);
}

/** Pieces taken in one act are worked together: one step, and for all of them the step itself or its preparation. */
function refuseUneven(works: readonly Work[]): Refused | null {
  const [first] = works;
  const other = works.find(({ step, part }) => step.name !== first?.step.name || part !== first.part);
  if (!first || !other) return null;
  const steps = [first, other].map(({ step, part }) =>
    part === "step" ? step.name : `preparation for ${step.name}`,
  );
  return refuse({ code: "several steps fit", tag: other.piece.tag, steps });
}
