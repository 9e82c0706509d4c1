import type { NewEvent } from "../journal/event.ts";
import type { SetUp, Step } from "../process/step.ts";
import { setUpState } from "../shop/set-up-state.ts";
import { setUpWords } from "../shop/set-up-words.ts";
import type { Shop, StandingSetUp } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";

/** Work at a station that uses a set-up: which, in its words, and for how many pieces. */
export interface NeededSetUp {
  readonly step: Step;
  readonly setUp: SetUp;
  readonly what: string;
  readonly pieces: number;
}

/** What a step's set-up is called for a pass of this colour; null: the step needs none. */
export function neededSetUp(step: Step, colour: string | null, pieces: number): NeededSetUp | null {
  const { setUp } = step;
  return setUp && { step, setUp, what: setUpWords(setUp, colour), pieces };
}

/** What stands at a station, if it is this set-up and fit for that many more pieces or still getting ready. */
export function findStanding(needed: NeededSetUp, shop: Shop, at: Instant): StandingSetUp | null {
  const standing = shop.stations.get(needed.step.station)?.setUp;
  if (!standing || standing.what !== needed.what) return null;
  const { is } = setUpState(standing, at);
  if (is !== "ready" && is !== "getting ready") return null;
  const { keeps, served } = standing;
  return keeps.way === "mix" && served + needed.pieces > keeps.serves ? null : standing;
}

/**
 * The `readied` that goes with work begun without one: that work began says the set-up was ready. None where it
 * stands ready already. One that was getting ready was ready sooner than thought, and is still the same melt.
 */
export function readiedWithWork(
  needed: NeededSetUp,
  shop: Shop,
  at: Instant,
): (NewEvent & { readonly kind: "readied" }) | null {
  const standing = findStanding(needed, shop, at);
  if (standing && standing.ready <= at) return null;
  return readied(needed, { begun: standing?.begun ?? null, ready: at, at });
}

/** The event that says a set-up is ready, or will be. */
export function readied(
  { step, setUp, what }: Pick<NeededSetUp, "step" | "setUp" | "what">,
  times: { readonly begun: Instant | null; readonly ready: Instant; readonly at: Instant },
): NewEvent & { readonly kind: "readied" } {
  return {
    kind: "readied",
    at: times.at,
    tag: null,
    station: step.station,
    setUp: what,
    begun: times.begun,
    ready: times.ready,
    keeps: setUp.keeps,
    putAwayMinutes: setUp.putAway,
    givesOff: step.givesOff.filter(({ lasts }) => lasts === "while set up").map(({ what }) => what),
    overrides: [],
  };
}
