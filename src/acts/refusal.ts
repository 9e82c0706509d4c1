import type { ActId, Tag } from "../journal/event.ts";
import type { Preparation } from "../process/coat.ts";
import type { Hold } from "../safety/hold.ts";
import type { StepState } from "../shop/states.ts";
import type { Instant } from "../time/instant.ts";

/**
 * A foreseeable "no", as facts; words/ makes the one sentence of it. `exit` 2: the words name something that
 * is not there. 3: refused for state or safety, `until` says when it will be allowed where the clock decides.
 */
export type Refusal = { readonly exit: 2 | 3; readonly until: Instant | null } & (
  | { readonly code: "no such tag"; readonly tag: Tag; readonly known: readonly Tag[] }
  | {
      readonly code: "no such step";
      readonly tag: Tag;
      readonly step: string;
      readonly nearest: string | null;
      readonly steps: readonly string[];
    }
  | { readonly code: "no such station"; readonly station: string; readonly stations: readonly string[] }
  | {
      readonly code: "no such set-up";
      readonly station: string;
      readonly what: string;
      readonly setUps: readonly string[];
    }
  | { readonly code: "no such answer"; readonly step: string; readonly answers: readonly string[] }
  | { readonly code: "no such act"; readonly act: ActId }
  | { readonly code: "several steps fit"; readonly tag: Tag; readonly steps: readonly string[] }
  | {
      readonly code: "nothing to do";
      readonly tag: Tag;
      readonly states: readonly { readonly step: string; readonly state: StepState }[];
    }
  | { readonly code: "blocked"; readonly tag: Tag; readonly step: string; readonly by: readonly string[] }
  | {
      readonly code: "too early";
      readonly tag: Tag;
      readonly step: string;
      readonly state: Extract<StepState, { is: "drying" }>;
    }
  | {
      readonly code: "too late";
      readonly tag: Tag;
      readonly step: string;
      readonly since: Instant;
      readonly preparation: Preparation | null;
      readonly mendFrom: string;
    }
  | { readonly code: "already in hand"; readonly tag: Tag; readonly step: string; readonly since: Instant }
  | { readonly code: "not in hand"; readonly tag: Tag }
  | { readonly code: "already done"; readonly tag: Tag; readonly step: string; readonly at: Instant }
  | { readonly code: "ended"; readonly tag: Tag; readonly how: string; readonly at: Instant }
  | {
      readonly code: "other in hand";
      readonly tag: Tag;
      readonly tags: readonly Tag[];
      readonly step: string;
      readonly since: Instant;
    }
  | { readonly code: "coat half laid"; readonly tag: Tag; readonly step: string }
  | { readonly code: "no coat"; readonly tag: Tag }
  | {
      readonly code: "held";
      readonly tags: readonly Tag[];
      readonly step: string;
      readonly holds: readonly Hold[];
    }
  | {
      readonly code: "read the caution";
      readonly cautions: readonly string[];
      readonly step: string;
      readonly tags: readonly Tag[];
    }
  | {
      readonly code: "before it was tagged";
      readonly tag: Tag;
      readonly taggedAt: Instant;
      readonly at: Instant;
    }
  | {
      readonly code: "before the last";
      /** Null: of a station; `what` names it. */
      readonly tag: Tag | null;
      readonly lastAt: Instant;
      readonly what: string;
      readonly at: Instant;
    }
  | {
      /** An amended time would come after what followed. */
      readonly code: "after the next";
      readonly tag: Tag | null;
      readonly nextAt: Instant;
      readonly what: string;
      readonly at: Instant;
    }
  | { readonly code: "in the future"; readonly at: Instant; readonly now: Instant }
  | { readonly code: "nothing to undo" }
  | {
      readonly code: "leaned on";
      readonly act: ActId;
      readonly byAct: ActId;
      readonly what: string;
      readonly byWhat: string;
    }
  | { readonly code: "nothing stands"; readonly station: string }
  | { readonly code: "unfit value"; readonly what: string; readonly value: string; readonly expected: string }
  | { readonly code: "nothing changes"; readonly what: string }
);

export type RefusalCode = Refusal["code"];
