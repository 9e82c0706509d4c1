import type { Step } from "../process/step.ts";
import type { Moment } from "../shop/moment.ts";
import { coloursLeft } from "../shop/passes.ts";
import { setUpWords } from "../shop/set-up-words.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import type { StepState } from "../shop/states.ts";
import { stepState } from "../shop/step-state.ts";
import type { Instant } from "../time/instant.ts";
import { matchName } from "./match-name.ts";
import { type Refused, refuse } from "./refuse.ts";
import { type NeededSetUp, neededSetUp } from "./stand-ready.ts";

/** A set-up that some piece's route names, with that piece's coats. */
export interface FoundSetUp extends NeededSetUp {
  readonly coats: Piece["coats"];
}

interface Candidate {
  readonly needed: FoundSetUp;
  readonly state: StepState["is"];
  /** Its colour is the piece's next one. */
  readonly isNext: boolean;
}

/** States in the order in which their work can use a set-up. */
const SOONEST: readonly (readonly StepState["is"][])[] = [
  ["in hand"],
  ["open", "shut", "left"],
  ["drying"],
  ["blocked"],
  ["done", "ended"],
];

/**
 * The set-up meant at a station: by its words, by its colour alone ("ochre"), or the one that the pieces out can use
 * next. Any colour may be loaded where the words have a place for one.
 *
 * @returns the set-up with its words filled in, or the ones the station knows
 */
export function findSetUp(
  station: string,
  said: string | null,
  at: Instant,
  shop: Shop,
  moment: Moment,
): FoundSetUp | Refused {
  const all = candidatesAt(station, shop, { ...moment, now: at });
  const setUps = [...new Set(all.map(({ needed }) => needed.what))];
  const unknown = refuse({ code: "no such set-up", station, what: said ?? "", setUps });
  if (said === null) return nextOf(all) ?? unknown;
  const match = matchName(said, setUps);
  if ("found" in match) return all.find(({ needed }) => needed.what === match.found)?.needed ?? unknown;
  return "several" in match ? unknown : (inColour(said, all) ?? unknown);
}

/** Every set-up of the station that a step of a piece in this reading names, soonest to be used first. */
function candidatesAt(station: string, shop: Shop, moment: Moment): readonly Candidate[] {
  const all = [...shop.pieces.values()].flatMap((piece) =>
    piece.route
      .filter((step) => step.station === station && step.setUp !== null)
      .flatMap((step) => candidatesOf(piece, step, stepState(piece, step.name, moment).is)),
  );
  return SOONEST.flatMap((states) => all.filter(({ state }) => states.includes(state)));
}

function candidatesOf(piece: Piece, step: Step, state: StepState["is"]): readonly Candidate[] {
  const colours = coloursLeft(piece, step).map(({ colour }) => colour);
  const wanted: readonly (string | null)[] = colours.length > 0 ? colours : [null];
  return wanted.flatMap((colour, index) => {
    const needed = neededSetUp(step, colour, 1);
    return needed ? { needed: { ...needed, coats: piece.coats }, state, isNext: index === 0 } : [];
  });
}

/** The one used soonest; null: two different ones could be used equally soon, or none is known. */
function nextOf(all: readonly Candidate[]): FoundSetUp | null {
  const next = all.filter(({ isNext }) => isNext);
  const soonest = SOONEST.map((states) => next.filter(({ state }) => states.includes(state))).find(
    (some) => some.length > 0,
  );
  const [first, ...others] = soonest ?? [];
  return first && others.every(({ needed }) => needed.what === first.needed.what) ? first.needed : null;
}

/** A set-up with a place for a colour, in the colour said: "load white", or only "white". */
function inColour(said: string, all: readonly Candidate[]): FoundSetUp | null {
  for (const { needed } of all) {
    const [before, after] = needed.setUp.do.split("{colour}");
    if (before === undefined || after === undefined) continue;
    const words = said.trim();
    const isWhole = words.toLowerCase().startsWith(before.toLowerCase()) && words.endsWith(after);
    const colour = isWhole ? words.slice(before.length, words.length - after.length).trim() : words;
    if (colour !== "") return { ...needed, what: setUpWords(needed.setUp, colour) };
  }
  return null;
}
