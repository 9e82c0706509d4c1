import type { NewEvent } from "../journal/event.ts";
import { stepsAfter } from "../process/order.ts";
import type { Step } from "../process/step.ts";
import type { Shop } from "../shop/shop.ts";
import { checkDetails } from "./check-details.ts";
import { checkName, checkThat, checkWhole, firstRefusal } from "./check-value.ts";
import type { Decision } from "./decision.ts";
import { matchStepAmong } from "./match-step.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/** More at a time is a slip of the keys. */
const MOST_AT_ONCE = 99;

/**
 * Tags new pieces with the next numbers: not begun, or already hanging from a step since a time.
 *
 * All pieces of one act have the same name and scheme; a name not said is that of the process.
 *
 * @returns a decision that expects the next number to be free still
 */
export function decideTag(request: ActOf<"tag">, shop: Shop): Decision {
  const { definition, hash } = request.process;
  const { scheme, due, price } = request;
  const name = request.name?.trim() ?? definition.name;
  const unfit = firstRefusal([
    checkWhole("count", request.count, 1, MOST_AT_ONCE),
    checkName("name", name),
    ...checkDetails({ scheme, due, price, for: request.for }),
  ]);
  if (unfit) return unfit;
  const hung = request.hung === null ? null : hangsFrom(request.hung, request, shop);
  if (hung && isRefused(hung)) return hung;
  const events = Array.from({ length: request.count }, (_, index): NewEvent => {
    const tag = shop.nextTag + index;
    const { at, for: buyer } = request;
    return {
      kind: "tagged",
      at,
      tag,
      station: null,
      process: hash,
      name,
      scheme,
      due,
      price,
      for: buyer,
      hung,
    };
  });
  return {
    events,
    expects: { tags: {}, stations: {}, nextTag: shop.nextTag },
    processes: [{ hash, definition }],
  };
}

/** Where pieces hung before they were tagged, checked against the process and the time of tagging. */
function hangsFrom(
  { step: said, since }: NonNullable<ActOf<"tag">["hung"]>,
  request: ActOf<"tag">,
  shop: Shop,
): NonNullable<ActOf<"tag">["hung"]> | Refused {
  const { steps } = request.process.definition;
  const step = matchStepAmong(shop.nextTag, steps, said);
  if (isRefused(step)) return step;
  if (since > request.at) return refuse({ code: "in the future", at: since, now: request.at });
  const unfit = checkThat(isWorkLeft(steps, step), "step", step.name, "one with work still to come");
  return unfit ?? { step: step.name, since };
}

/** Whether any step remains when this one and all it waits for are done. */
function isWorkLeft(steps: readonly Step[], last: Step): boolean {
  return steps.some(({ name }) => name !== last.name && !stepsAfter(steps, name).includes(last.name));
}
