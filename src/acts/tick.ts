import type { NewEvent } from "../journal/event.ts";
import type { SafetyRules } from "../safety/rules.ts";
import type { Shop } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";
import type { DecideContext } from "./context.ts";
import { type Decision, decided } from "./decision.ts";
import { matchName } from "./match-name.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/**
 * Says that a caution was read now.
 *
 * A word of the name is enough: "lead" is `molten lead`.
 */
export function decideTick(request: ActOf<"tick">, shop: Shop, context: DecideContext): Decision {
  const names = matchCautions([request.caution], shop, context.rules);
  return isRefused(names) ? names : decided(tickedEvents(names, request.at), shop);
}

/** The names of cautions said in a hurry; one that is neither in the rules nor on any piece's steps refuses. */
export function matchCautions(
  said: readonly string[],
  shop: Shop,
  rules: SafetyRules,
): readonly string[] | Refused {
  const known = knownCautions(shop, rules);
  const names = new Set<string>();
  for (const name of said) {
    const match = matchName(name, known);
    if (!("found" in match)) {
      const fitting = "several" in match ? match.several : known;
      const expected = fitting.length > 0 ? fitting.join(", ") : "none is known";
      return refuse({ code: "unfit value", what: "caution", value: name, expected });
    }
    names.add(match.found);
  }
  return [...names];
}

export function tickedEvents(cautions: readonly string[], at: Instant): NewEvent[] {
  return cautions.map((caution) => ({ kind: "ticked", at, tag: null, station: null, caution }));
}

/** Those with a text, and those that only a process or coat file names. */
function knownCautions(shop: Shop, rules: SafetyRules): readonly string[] {
  const named = [...shop.pieces.values()].flatMap(({ route, coats }) => [
    ...route.flatMap(({ cautions, setUp }) => [...cautions, ...(setUp?.cautions ?? [])]),
    ...Object.values(coats).flatMap(({ cautions, windows }) => [
      ...cautions,
      ...windows.flatMap(({ first }) => first?.cautions ?? []),
    ]),
  ]);
  return [...new Set([...Object.keys(rules.cautions), ...named])].sort();
}
