import { setUpState } from "../shop/set-up-state.ts";
import type { Shop } from "../shop/shop.ts";
import { after } from "../time/instant.ts";
import { askToSetUp } from "./ask-to-start.ts";
import { checkText } from "./check-value.ts";
import type { DecideContext } from "./context.ts";
import { type Decision, decided } from "./decision.ts";
import { findSetUp } from "./find-set-up.ts";
import { matchStation } from "./match-station.ts";
import { isRefused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";
import { findStanding, readied } from "./stand-ready.ts";

/**
 * Readies a set-up: a pot is lit and will be hot after its usual minutes, or something stands ready now. A fresh cup or
 * load takes the place of what stood there.
 *
 * Lit 19:50 with `beginning`: begun 19:50, ready 20:10 where melting takes 20 min. Said to be ready at 20:05 after that,
 * it is the same melt, ready five minutes sooner.
 */
export function decideReady(request: ActOf<"ready">, shop: Shop, context: DecideContext): Decision {
  const station = matchStation(request.station, shop);
  if (isRefused(station)) return station;
  const needed = findSetUp(station, request.what, request.at, shop, context);
  if (isRefused(needed)) return needed;
  const { at, begun, beginning, anyway } = request;
  const unfit = anyway && checkText("reason", anyway.reason);
  if (unfit) return unfit;
  if (begun !== null && begun > at) return refuse({ code: "in the future", at: begun, now: at });
  const standing = findStanding(needed, shop, at);
  const isReady = standing !== null && setUpState(standing, at).is === "ready";
  const renews = needed.setUp.keeps.way === "mix" && !beginning;
  if (standing && (isReady ? !renews : beginning)) {
    return refuse({ code: "nothing changes", what: `${needed.what} at the ${station}` });
  }
  const lit = beginning ? at : (begun ?? (isReady ? null : (standing?.begun ?? null)));
  const ready = beginning ? after(at, needed.setUp.takes) : at;
  const event = readied(needed, { at, begun: lit, ready });
  const start = askToSetUp(request, needed.step, needed.coats, shop, context);
  if (isRefused(start)) return start;
  return decided([{ ...event, overrides: start.overrides }, ...start.ticked], shop);
}
