import type { ActId, Tag } from "../journal/event.ts";
import type { InThisAir } from "../plan/rotation/rotation-answer.ts";
import type { Preparation } from "../process/coat.ts";
import type { Hold } from "../safety/hold.ts";
import type { StepState } from "../shop/states.ts";
import type { Instant } from "../time/instant.ts";

/**
 * A foreseeable "no", as facts; words/ makes the one sentence of it. `exit` 2: the words name something that
 * is not there. 3: refused for state or safety, `until` says when it will be allowed where the clock decides.
 */
export type Refusal = {
  readonly exit: 2 | 3;
  readonly until: Instant | null;
} /** No piece of the reading has this tag. `known`: those it has, by number. */ & (
  | { readonly code: "no such tag"; readonly tag: Tag; readonly known: readonly Tag[] }
  /**
   * The piece's route has no step or preparation of that name. `nearest`: what was probably meant; null:
   * nothing is near.
   */
  | {
      readonly code: "no such step";
      readonly tag: Tag;
      readonly step: string;
      readonly nearest: string | null;
      readonly steps: readonly string[];
    }
  /** No route works there and nothing ever stood there. */
  | { readonly code: "no such station"; readonly station: string; readonly stations: readonly string[] }
  /** The station has no such set-up; or none was named and several could be used equally soon. */
  | {
      readonly code: "no such set-up";
      readonly station: string;
      readonly what: string;
      readonly setUps: readonly string[];
    }
  /** A step with a result wants one of these answers; none listed: the step takes no answer. */
  | { readonly code: "no such answer"; readonly step: string; readonly answers: readonly string[] }
  /** No act of that number stands: never written, undone already, an undo itself, or somebody else's. */
  | { readonly code: "no such act"; readonly act: ActId }
  /** More than one step could be meant, or pieces taken together would each do another. */
  | { readonly code: "several steps fit"; readonly tag: Tag; readonly steps: readonly string[] }
  /** No step of the piece can be worked, not even later by the clock; `states` says how each stands. */
  | {
      readonly code: "nothing to do";
      readonly tag: Tag;
      readonly states: readonly { readonly step: string; readonly state: StepState }[];
    }
  /** Steps before it are not done. No reason goes over this. */
  | { readonly code: "blocked"; readonly tag: Tag; readonly step: string; readonly by: readonly string[] }
  /** Its coat or wait is not over; `until` is null where only a touch can say. */
  | {
      readonly code: "too early";
      readonly tag: Tag;
      readonly step: string;
      readonly state: Extract<StepState, { is: "drying" }>;
    }
  /**
   * The window shut at `since`. `preparation`: what must come first; null: only a mend from step `mendFrom`
   * helps.
   */
  | {
      readonly code: "too late";
      readonly tag: Tag;
      readonly step: string;
      readonly since: Instant;
      readonly preparation: Preparation | null;
      readonly mendFrom: string;
    }
  /** The piece is in hand at that step: taking is no news, touching and moving must wait. */
  | { readonly code: "already in hand"; readonly tag: Tag; readonly step: string; readonly since: Instant }
  /** Only what is in hand can be left, or hung as usual. */
  | { readonly code: "not in hand"; readonly tag: Tag }
  /** The step is done; only a mend opens it again. Of a route: it is begun and stays. */
  | { readonly code: "already done"; readonly tag: Tag; readonly step: string; readonly at: Instant }
  /** The piece is finished, scrapped or gone. */
  | { readonly code: "ended"; readonly tag: Tag; readonly how: string; readonly at: Instant }
  /**
   * `tags` must be hung first: a coat half laid, or work forgotten since an earlier session ("hung as
   * usual?").
   */
  | {
      readonly code: "other in hand";
      readonly tag: Tag;
      readonly tags: readonly Tag[];
      readonly step: string;
      readonly since: Instant;
    }
  /** A coat begun cannot be left: it would dry as it lies. */
  | { readonly code: "coat half laid"; readonly tag: Tag; readonly step: string }
  /** Nothing lies on the piece yet that could be touched. */
  | { readonly code: "no coat"; readonly tag: Tag }
  /** No step of the piece is done yet, so that it hangs nowhere. */
  | { readonly code: "not begun"; readonly tag: Tag }
  /**
   * Fit by the clock, but not safe or not possible now; `until` is the end of the last hold, null if one has
   * none.
   */
  | {
      readonly code: "held";
      readonly tags: readonly Tag[];
      readonly step: string;
      readonly holds: readonly Hold[];
    }
  /** A repeating timetable would lay a coat in air that is never fit for it in bench hours, or that it never dries in. */
  | { readonly code: "no rotation in this air"; readonly process: string; readonly why: InThisAir }
  /** These are to be read whole first, and ticked with the act. No reason goes over this. */
  | {
      readonly code: "read the caution";
      readonly cautions: readonly string[];
      readonly step: string;
      readonly tags: readonly Tag[];
    }
  /** The time said lies before the piece had its tag. */
  | {
      readonly code: "before it was tagged";
      readonly tag: Tag;
      readonly taggedAt: Instant;
      readonly at: Instant;
    }
  /** The time said lies before what must have come first. */
  | {
      readonly code: "before the last";
      /** Null: of a station; `what` names it. */
      readonly tag: Tag | null;
      readonly lastAt: Instant;
      readonly what: string;
      readonly at: Instant;
    }
  /** An amended time would come after what followed. */
  | {
      readonly code: "after the next";
      readonly tag: Tag | null;
      readonly nextAt: Instant;
      readonly what: string;
      readonly at: Instant;
    }
  /** The time said has not come. */
  | { readonly code: "in the future"; readonly at: Instant; readonly now: Instant }
  /** No act of this maker's stands. */
  | { readonly code: "nothing to undo" }
  /** A later act shares a tag, a station or a setting with it: that one would have to be undone first. */
  | {
      readonly code: "leaned on";
      readonly act: ActId;
      readonly byAct: ActId;
      readonly what: string;
      readonly byWhat: string;
    }
  /** There is nothing at the station to put away, or was not at that time. */
  | { readonly code: "nothing stands"; readonly station: string }
  /** A value is not one the journal can hold; `what` and `expected` are words for the sentence. */
  | { readonly code: "unfit value"; readonly what: string; readonly value: string; readonly expected: string }
  /** What is asked is so already. */
  | { readonly code: "nothing changes"; readonly what: string }
);

export type RefusalCode = Refusal["code"];
