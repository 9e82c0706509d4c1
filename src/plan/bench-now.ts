import { minutesBetween } from "../time/instant.ts";
import { sessionNow } from "./bench-time.ts";
import type { BenchNow, PreparedRow } from "./now-answer.ts";
import type { ShopFacts } from "./plan-shop.ts";

/** What stands at the stations, by station. */
export function preparedRows({ standing }: ShopFacts): PreparedRow[] {
  return standing
    .map(({ station, setUp, state }) => ({
      station,
      setUp: setUp.what,
      state: state.is,
      ready: setUp.ready,
      until: state.is === "getting ready" ? null : state.until,
      ...(setUp.keptByFile === undefined ? {} : { keptByFile: setUp.keptByFile }),
      putAwayMinutes: setUp.putAwayMinutes,
    }))
    .sort((a, b) => (a.station < b.station ? -1 : 1));
}

/** The bench hours as they stand now, with what is still to be put away. */
export function benchNow(facts: ShopFacts): BenchNow {
  const session = sessionNow(facts);
  return {
    closes: session?.closes ?? null,
    minutesLeft: session === null ? 0 : minutesBetween(facts.context.now, session.closes),
    opensNext: facts.sessions[session === null ? 0 : 1]?.opens ?? null,
    putAway: facts.standing.reduce((sum, { setUp }) => sum + setUp.putAwayMinutes, 0),
    assumedHours: facts.assumedHours,
  };
}
