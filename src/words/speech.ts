import type { Instant } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";
import type { Taste } from "../workshop/taste.ts";

/** How things are said: in whose clock, as seen from when. */
export interface Speech {
  readonly zone: Zone;
  readonly now: Instant;
  /** 24 hour clock; else "7:34 pm". */
  readonly clock24: boolean;
  /** Of temperatures and weights; metric unless said. */
  readonly units?: Taste["units"];
}
