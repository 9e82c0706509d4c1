import type { Air } from "../process/quantity-form.ts";
import type { Instant } from "../time/instant.ts";
import type { By, Seq } from "./event.ts";

/** A reading of the air as it is handed in. */
export interface NewAir extends Air {
  readonly at: Instant;
  /** Null: the shop's own air. */
  readonly place: string | null;
  /** Why it does not count, in words ("from the future"); null: it does. */
  readonly doubt: string | null;
}

/** A reading as it is kept. Readings have a sequence of their own. */
export interface AirRow extends NewAir {
  readonly seq: Seq;
  readonly by: By;
}

/** The mean air of an hour of the day, counted in UTC, at a place. */
export interface AirHour extends Air {
  readonly place: string | null;
  /** 0 to 23. */
  readonly hour: number;
  readonly readings: number;
}
