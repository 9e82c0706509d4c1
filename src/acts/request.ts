import type { ActId, RouteChange, SchemePass, Seq, Setting, Tag, Touch } from "../journal/event.ts";
import type { ProcessDefinition, ProcessHash } from "../process/definition.ts";
import type { CivilDate, Instant, Minutes } from "../time/instant.ts";

/** How an act goes on although something speaks against it; the reason is journalled. */
export interface Anyway {
  readonly reason: string;
}

/** What the maker asks for. Moments are already instants: words are read at the door. `at` is when it was so. */
export type ActRequest =
  /** New pieces, not begun; or one that was hanging before dryline came, from a step since a time. */
  | {
      readonly act: "tag";
      readonly at: Instant;
      readonly process: { readonly hash: ProcessHash; readonly definition: ProcessDefinition };
      /** How many pieces, all alike, each with a number of its own. */
      readonly count: number;
      readonly name: string | null;
      readonly scheme: readonly SchemePass[];
      readonly due: CivilDate | null;
      readonly price: number | null;
      readonly for: string | null;
      /** The step it was hung from last; all before it are done. Null: not begun. */
      readonly hung: { readonly step: string; readonly since: Instant } | null;
    }
  /** What is said of pieces beside their work; a detail left out stays as it is, null takes it away. */
  | {
      readonly act: "change";
      readonly at: Instant;
      readonly tags: readonly Tag[];
      readonly name?: string;
      readonly scheme?: readonly SchemePass[];
      readonly due?: CivilDate | null;
      readonly price?: number | null;
      readonly for?: string | null;
      /** 1 is usual; more is dearer to leave. */
      readonly weight?: number;
    }
  /** A step put in, skipped or swapped for these pieces alone. */
  | {
      readonly act: "route";
      readonly at: Instant;
      readonly tags: readonly Tag[];
      readonly change: RouteChange;
      readonly why: string | null;
    }
  /** Hands-on work begins. */
  | {
      readonly act: "take";
      readonly at: Instant;
      readonly tags: readonly Tag[];
      /** Null: the one step that fits. May name a preparation ("scuff"). */
      readonly step: string | null;
      /** A colour for a scheme step; one that the scheme has not makes another pass. */
      readonly colour: string | null;
      readonly anyway: Anyway | null;
      /** Cautions the maker says were read now. */
      readonly ticked: readonly string[];
    }
  /** Hands-on work is done: every wait counts from here. */
  | {
      readonly act: "hang";
      readonly at: Instant;
      readonly tags: readonly Tag[];
      readonly step: string | null;
      readonly colour: string | null;
      /** Minutes given to this pass before the next; null: the scheme's, else the coat's. */
      readonly flashOff: Minutes | null;
      /** Null: where the step hangs it. */
      readonly place: string | null;
      /** Answer of a step with a result. */
      readonly result: string | null;
      /** "as usual": at the usual minutes after it was taken; `at` is then ignored and nothing is learned. */
      readonly asUsual: boolean;
      readonly anyway: Anyway | null;
      readonly ticked: readonly string[];
    }
  /** Half-done work is put down, to go on with later. */
  | { readonly act: "leave"; readonly at: Instant; readonly tags: readonly Tag[] }
  /** A touch test of the newest coat. */
  | { readonly act: "touch"; readonly at: Instant; readonly tags: readonly Tag[]; readonly found: Touch }
  /** Hangs in another place from now on. */
  | { readonly act: "move"; readonly at: Instant; readonly tags: readonly Tag[]; readonly place: string }
  /** Work that a flaw needed, ending at `at`; `goOnFrom` and all that follows are open again. */
  | {
      readonly act: "mend";
      readonly at: Instant;
      readonly tags: readonly Tag[];
      readonly what: string;
      readonly minutes: Minutes;
      readonly goOnFrom: string;
    }
  /** Something measured on pieces. */
  | {
      readonly act: "measure";
      readonly at: Instant;
      readonly tags: readonly Tag[];
      readonly what: string;
      readonly value: number;
      readonly unit: string;
    }
  /** Pieces are given up. */
  | { readonly act: "scrap"; readonly at: Instant; readonly tags: readonly Tag[]; readonly why: string }
  /** A line kept with pieces. */
  | { readonly act: "note"; readonly at: Instant; readonly tags: readonly Tag[]; readonly text: string }
  /** A caution was read. */
  | { readonly act: "tick"; readonly at: Instant; readonly caution: string }
  /** A set-up is begun, or stands ready. */
  | {
      readonly act: "ready";
      readonly at: Instant;
      readonly station: string;
      /** The set-up's words; null: the one that the pieces out can use next. */
      readonly what: string | null;
      /** When it was begun (the pot lit); null: unknown, or beginning right now with `ready` still to come. */
      readonly begun: Instant | null;
      /** True: it begins now and is ready after its usual minutes; false: it is ready at `at`. */
      readonly beginning: boolean;
      readonly anyway: Anyway | null;
      readonly ticked: readonly string[];
    }
  /** What stands at a station is put away. */
  | { readonly act: "put away"; readonly at: Instant; readonly station: string }
  /** "That was 20:15": a better time for an act, or for the newest work on a tag. */
  | {
      readonly act: "amend";
      readonly at: Instant;
      readonly target: { readonly tag: Tag } | { readonly act: ActId };
      readonly time: Instant;
    }
  /** Null: the newest live act of the maker's. */
  | { readonly act: "undo"; readonly at: Instant; readonly target: ActId | null }
  /** Something of the shop, from a date on. */
  | { readonly act: "settle"; readonly at: Instant; readonly setting: Setting }
  /** "The clock was wrong by N": what it stamped so many minutes too late (negative: too early) is set right. */
  | {
      readonly act: "clock";
      readonly at: Instant;
      readonly minutes: Minutes;
      /** The first event it stamped; null: the first recorded ahead of now. */
      readonly since: Seq | null;
      /** The first event after it that a right clock stamped; null: none yet. */
      readonly until: Seq | null;
    };

/** The request of one act: `ActOf<"take">`. */
export type ActOf<Act extends ActRequest["act"]> = Extract<ActRequest, { readonly act: Act }>;
