import type { Coat, Preparation } from "../process/coat.ts";
import type { Step } from "../process/step.ts";
import type { Moment } from "../shop/moment.ts";
import { setUpState } from "../shop/set-up-state.ts";
import type { Shop } from "../shop/shop.ts";
import { after, type Instant } from "../time/instant.ts";
import { sessionAt } from "../time/sessions.ts";
import type { SafetyRules } from "./rules.ts";
import type { Task } from "./task.ts";

/** A reading outside bench hours holds for this many minutes. */
const OUT_OF_HOURS = 12 * 60;

/**
 * The cautions that work asks for, by name, each once: of the step, its set-up and its coat; of a preparation only its
 * own. Beginning a set-up asks for all that the step will: the lead is read about before the pot is lit.
 */
export function cautionsFor(
  step: Step,
  definition: { readonly coats: Readonly<Record<string, Coat>> },
  part: Task["part"],
  preparation: Preparation | null = null,
): readonly string[] {
  if (part === "preparation") return [...new Set(preparation?.cautions)];
  const coat = step.coat === null ? undefined : definition.coats[step.coat];
  return [...new Set([...step.cautions, ...(step.setUp?.cautions ?? []), ...(coat?.cautions ?? [])])];
}

/**
 * Of these cautions the ones to be read whole now. Once read, one line is enough until the bench session ends; for a
 * caution told once per melt, until the pot it was read for is put away.
 *
 * @param station where the work is: whose pot it is
 */
export function unreadCautions(
  names: readonly string[],
  shop: Shop,
  rules: SafetyRules,
  at: Moment,
  station: string,
): readonly string[] {
  return names.filter((name) => {
    const perMelt = Object.hasOwn(rules.cautions, name) && rules.cautions[name]?.perMelt === true;
    const since = perMelt ? meltSince(shop, at, station) : sessionSince(at);
    return !shop.ticks.some((tick) => tick.caution === name && since <= tick.at && tick.at <= at.now);
  });
}

/** A reading counts from the opening of the session running now. */
function sessionSince({ now, zone, hours }: Moment): Instant {
  return sessionAt(hours, zone, now)?.opens ?? after(now, -OUT_OF_HOURS);
}

/** A reading counts for this melt: since the session began or the pot was lit, but never across the melt before it. */
function meltSince(shop: Shop, at: Moment, station: string): Instant {
  const state = shop.stations.get(station);
  const sinceSession = Math.max(sessionSince(at), state?.clearedAt ?? Number.NEGATIVE_INFINITY);
  if (state === undefined || state.setUp === null) return sinceSession;
  const { begun, ready } = state.setUp;
  const standing = setUpState(state.setUp, at.now);
  // A pot kept too long was that melt's end, even if nobody put it away.
  if (standing.is === "kept too long" && standing.until !== null)
    return Math.max(sinceSession, standing.until);
  return Math.min(sinceSession, begun ?? ready);
}
