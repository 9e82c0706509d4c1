import type { Refusal } from "../acts/refusal.ts";
import type { ActRequest } from "../acts/request.ts";
import type { ActId, By, JournalEvent } from "../journal/event.ts";
import type { Journal, Wanted } from "../journal/journal.ts";
import type { NowAnswer } from "../plan/now-answer.ts";
import type { SafetyRules } from "../safety/rules.ts";
import type { Shop } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";
import type { Taste } from "./taste.ts";

/** An act that was written, or why it was not. `before` and `after` let the rooms above say what changed. */
export type Outcome =
  | { readonly done: ActId; readonly events: readonly JournalEvent[]; readonly shop: Shop }
  | { readonly refusal: Refusal };

/** What is wrong with the clock; null: nothing. */
export interface ClockDoubt {
  /** `behind`: now is earlier than the newest recorded moment. `jumped`: wall and monotonic time parted while open. */
  readonly kind: "behind" | "jumped";
  readonly minutes: number;
}

/** The one object the rooms above hold: journal, taste, clock, files. All effects are behind it. */
export interface Workshop {
  readonly journal: Journal;
  readonly taste: Taste;
  readonly by: By;
  now(): Instant;
  /** The zone settled in the journal, else this machine's. */
  zone(): Zone;
  /** Keep-aparts and cautions in force (cached). */
  rules(): Promise<SafetyRules>;
  /** The shop as the journal has it now; folded again only when there is news. */
  shop(wanted?: Wanted): Promise<Shop>;
  /** Pieces, work, holds at `at` (now unless said). */
  whatNow(at?: Instant): Promise<NowAnswer>;
  /** Decides and appends, deciding again when another terminal was first. */
  perform(request: ActRequest): Promise<Outcome>;
  clockDoubt(): ClockDoubt | null;
  close(): void;
}
