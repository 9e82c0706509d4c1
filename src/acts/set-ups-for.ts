import type { NewEvent } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";
import type { Work } from "./choose-work.ts";
import { type Refused, refuse } from "./refuse.ts";
import { type NeededSetUp, neededSetUp, readiedWithWork } from "./stand-ready.ts";

/** What work finds or brings at its stations. */
export interface SetUpsForWork {
  /** Set-ups that did not stand ready, and do now that work begins. */
  readonly readied: readonly (NewEvent & { readonly kind: "readied" })[];
  /** Stations whose set-up the work leans on. */
  readonly stations: readonly string[];
}

/**
 * The set-ups that works use, each made ready once however many pieces share it. One station holds one set-up: two
 * colours in one airbrush refuse.
 */
export function setUpsFor(works: readonly Work[], shop: Shop, at: Instant): SetUpsForWork | Refused {
  const byStation = new Map<string, NeededSetUp>();
  for (const { step, part, colour } of works) {
    const needed = part === "step" ? neededSetUp(step, colour, 1) : null;
    if (!needed) continue;
    const before = byStation.get(step.station);
    if (before && before.what !== needed.what) {
      const value = `${before.what}, ${needed.what}`;
      return refuse({
        code: "unfit value",
        what: "set-up",
        value,
        expected: `one at the ${step.station} at a time`,
      });
    }
    byStation.set(step.station, { ...needed, pieces: (before?.pieces ?? 0) + 1 });
  }
  const readied = [...byStation.values()].flatMap((needed) => readiedWithWork(needed, shop, at) ?? []);
  return { readied, stations: [...byStation.keys()] };
}
