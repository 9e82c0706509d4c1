import type { Refusal } from "../acts/refusal.ts";
import type { ActRequest } from "../acts/request.ts";
import type { NewAir } from "../journal/air.ts";
import type { ActId, By, JournalEvent } from "../journal/event.ts";
import type { Journal, PlanRow, Wanted } from "../journal/journal.ts";
import type { Finishes } from "../plan/compare-finishes.ts";
import type { NowAnswer } from "../plan/now-answer.ts";
import type { PlanContext } from "../plan/what-now.ts";
import type { SafetyRules } from "../safety/rules.ts";
import type { Shop } from "../shop/shop.ts";
import type { BenchHours } from "../time/bench-hours.ts";
import type { Instant } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";
import type { ClockDoubt } from "./clock-watch.ts";
import type { Library } from "./library.ts";
import type { PlacesOnDisk } from "./places-on-disk.ts";
import type { Taste } from "./taste.ts";

/** An act that was written, with the shop after it, or why it was not. */
export type Outcome =
  | { readonly done: ActId; readonly events: readonly JournalEvent[]; readonly shop: Shop }
  | { readonly refusal: Refusal };

/** The one object the rooms above hold: journal, taste, clock, files. All effects are behind it. */
export interface Workshop {
  readonly journal: Journal;
  readonly places: PlacesOnDisk;
  readonly taste: Taste;
  /** Why the taste that is kept could not be read whole, as a sentence; null: it was. */
  readonly tasteTrouble: string | null;
  readonly by: By;
  now(): Instant;
  /** The zone settled in the journal, else this machine's. */
  zone(): Promise<Zone>;
  /** Bench hours in force, assumed ones where none were said. */
  hours(): Promise<BenchHours>;
  /** Process and coat files, and the safety data (cached until a file changes). */
  readLibrary(): Promise<Library>;
  rules(): Promise<SafetyRules>;
  /**
   * The shop as the journal has it now, folded again only when there is news. `until` leaves out facts dated
   * after it (the whole journal is read then).
   */
  shop(wanted?: Wanted, until?: Instant): Promise<Shop>;
  /** Pieces, work and holds at `at` (now unless said). */
  whatNow(at?: Instant): Promise<NowAnswer>;
  /**
   * Keeps readings of the air and says how many were new.
   *
   * @param sensor where they come from; null: the maker read them
   */
  recordAir(readings: readonly NewAir[], sensor: string | null): Promise<number>;
  /** When each piece out would be finished as the shop is, and as it would be if it were changed. */
  compareFinishes(shop: Shop, changed: Shop): Promise<Finishes>;
  /** What planning asks besides the shop, at a moment (now unless said). */
  planContext(shop: Shop, at?: Instant): Promise<PlanContext>;
  /** The plan kept, whatever its age: the seed of the next. `isCurrent` (plan/plan-row.ts) tells whether it still holds. */
  readPlan(): Promise<PlanRow | null>;
  /**
   * Has a worker search for a better plan after every act, until stopped. The listener is called when a plan or what
   * leaving work costs was found; `whatNow` then answers by it.
   */
  startPlanning(listener: () => void): () => void;
  /** Decides and appends, deciding again when another terminal was first. */
  perform(request: ActRequest): Promise<Outcome>;
  /** What is wrong with the clock; null: nothing, or the maker has answered. */
  clockDoubt(): Promise<ClockDoubt | null>;
  /** The same where it was not told yet, by this command or another; from then on it counts as told. */
  newClockDoubt(): Promise<ClockDoubt | null>;
  /** The maker says the clock is right as it is now. */
  clockIsRight(): void;
  /** Calls back within half a second of news from any terminal, this one included. Returns how to stop. */
  onNews(listener: () => void): () => void;
  lastSeen(): Instant | null;
  markSeen(): void;
  close(): void;
}
