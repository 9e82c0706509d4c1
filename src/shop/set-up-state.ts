import { after, type Instant } from "../time/instant.ts";
import type { StandingSetUp } from "./shop.ts";

/** Whether what stands at a station can be used. */
export interface SetUpState {
  readonly is: "getting ready" | "ready" | "kept too long" | "all served";
  /**
   * Getting ready: when it will be. Ready: how long it keeps, null until another load. Kept too long: since when.
   * All served: when the last was.
   */
  readonly until: Instant | null;
}

/**
 * What stands at a station, at a moment. A pot keeps from its last use, a cup from mixing and for so many pieces, a
 * load until another.
 *
 * A pot that keeps 45 min, last used 20:18: ready until 21:03, then kept too long.
 */
export function setUpState(standing: StandingSetUp, now: Instant): SetUpState {
  const { keeps, ready, lastUsed, served } = standing;
  if (now < ready) return { is: "getting ready", until: ready };
  if (keeps.way === "load") return { is: "ready", until: null };
  if (keeps.way === "mix" && served >= keeps.serves) return { is: "all served", until: lastUsed };
  const from = keeps.way === "heat" ? Math.max(ready, lastUsed ?? ready) : ready;
  const until = after(from, keeps.minutes);
  return { is: now < until ? "ready" : "kept too long", until };
}
