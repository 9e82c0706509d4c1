import type { Tag } from "../journal/event.ts";
import type { Instant } from "../time/instant.ts";
import type { Unfit } from "./unfit-air.ts";

/** Something that stands in the way of starting a step now: a keep-apart, the air, a full place, a missing measurement. */
export interface Hold {
  readonly code: "keep apart" | "unfit air" | "no hook" | "measure first" | "measured too high";
  /** What it gives way to, as words for a sentence: `solvent vapour of 1 and 2`, `wet coat of 11`. */
  readonly because: string;
  /** When it ends by the clock; null: not by the clock (a measurement, a pot to put away, a full rack). */
  readonly until: Instant | null;
  readonly tags: readonly Tag[];
  /** What the maker can do about it, `put the lead pot away`; null: only wait. */
  readonly remedy: string | null;
  /** What makes the air unfit, with its figures, where it is that. */
  readonly air?: Unfit;
}
