import type { Air } from "../process/quantity-form.ts";
import type { Instant } from "../time/instant.ts";

/** A reading of the air as it is handed in. */
export interface NewAir extends Air {
  readonly at: Instant;
  /** Null: the shop's own air. */
  readonly place: string | null;
  /** Why it does not count, in words ("from the future"); null: it does. */
  readonly doubt: string | null;
}

/** A reading that counts, as it is read back. */
export type AirRow = Omit<NewAir, "doubt">;

/** The mean air of an hour of the day, counted in UTC, at a place. */
export interface AirHour extends Air {
  readonly place: string | null;
  /** 0 to 23. */
  readonly hour: number;
  /** On how many days it was read. */
  readonly days: number;
  /** How far its readings lie from that mean: the mean of their squared distances. */
  readonly celsiusVariance: number;
  readonly humidityVariance: number;
}
