import type { NewEvent } from "../journal/event.ts";
import type { Append } from "../journal/journal.ts";
import type { Refusal } from "./refusal.ts";

/** Events to append and what they lean on, or a named "no". Nothing else: acts have no effects. */
export type Decision =
  | {
      readonly events: readonly NewEvent[];
      readonly expects: Append["expects"];
      readonly processes: Append["processes"];
    }
  | { readonly refusal: Refusal };
