import { stepsAfter } from "../process/order.ts";
import { feltBy, newestCoat } from "../shop/laid-coat.ts";
import type { Moment } from "../shop/moment.ts";
import { hoursOf } from "../shop/settings-at.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import type { StepState } from "../shop/states.ts";
import { stepStates } from "../shop/step-state.ts";
import type { Instant } from "../time/instant.ts";
import { capital } from "./say-list.ts";
import { sayDrying, sayShut, sayShuts, sayState } from "./say-state.ts";
import { sayClock } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/**
 * What comes next for a piece, as a sentence; nothing for a piece in hand or that is out of the shop.
 *
 * @param hung the step just hung: what comes right after it need not be named
 * @example sayNext(piece, "first clear", shop, speech) // "Opens 23:04, shuts Tue 19:04."
 */
export function sayNext(piece: Piece, hung: string | null, shop: Shop, speech: Speech): string {
  if (piece.end?.how === "finished") return `Finished ${sayClock(piece.end.at, speech)}.`;
  if (piece.end !== null) return "";
  const at: Moment = { now: speech.now, zone: speech.zone, hours: hoursOf(shop.settings) };
  const states = [...stepStates(piece, at)];
  if (states.some(([, state]) => state.is === "in hand")) return "";
  const coming = states.filter(
    ([, { is }]) => is === "drying" || is === "open" || is === "shut" || is === "left",
  );
  const tacky = sayTackyUnderneath(piece, coming, speech.now);
  const [first, ...others] = coming;
  if (first === undefined) return capital(tacky.map((said) => `${said}.`).join(""));
  const [step, state] = first;
  if (others.length + tacky.length > 0) {
    const clauses = [...tacky, ...coming.map(([name, next]) => sayState(name, next, speech))];
    return `${capital(clauses.join("; "))}.`;
  }
  const follows = hung === step || (hung !== null && stepsAfter(piece.route, hung).includes(step));
  return `${capital(sayOnly(step, state, follows ? hung : null, speech))}.`;
}

/** That the newest coat was tacky, where no step tells it yet: the one upon it waits for another branch as well. */
function sayTackyUnderneath(
  piece: Piece,
  coming: readonly (readonly [string, StepState])[],
  now: Instant,
): readonly string[] {
  const laid = newestCoat(piece);
  if (laid === null || !feltBy(laid.hang, now).tacky) return [];
  const isTold = coming.some(([, state]) => state.is === "drying" && state.because === "tacky");
  return isTold ? [] : [`${laid.step} waits until it is touched dry or hard`];
}

/**
 * The one step that can come next; right after a hang its name is left out where the clock alone decides. `hung`: the
 * step just hung, if this one follows it.
 */
function sayOnly(step: string, state: StepState, hung: string | null, speech: Speech): string {
  switch (state.is) {
    case "drying": {
      // A coat just hung was not felt yet: another was tacky.
      const name = hung === null || state.because === "tacky" ? `${step} ` : "";
      return `${name}${sayDrying(state, speech)}`;
    }
    case "shut":
      return `${step} ${sayShut(state, speech)}`;
    case "open":
      return `${hung === step ? "the next pass" : step} is open${sayShuts(state.shuts, speech)}`;
    default:
      return sayState(step, state, speech);
  }
}
