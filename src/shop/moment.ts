import type { BenchHours } from "../time/bench-hours.ts";
import type { Instant } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";

/** A moment, and when the bench is open around it: what most questions to the shop are asked at. */
export interface Moment {
  readonly now: Instant;
  readonly zone: Zone;
  /** Those assumed, where the maker has said none. */
  readonly hours: BenchHours;
}
