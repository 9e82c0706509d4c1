import type { Tag } from "../journal/event.ts";
import type { Coat, Preparation } from "../process/coat.ts";
import type { Step } from "../process/step.ts";

/** Work about to be started, as safety looks at it. */
export interface Task {
  /** The pieces it is for; none: a new one still to be tagged. */
  readonly tags: readonly Tag[];
  readonly step: Step;
  /** The step itself (with its set-up), only the preparation before it, or only beginning its set-up. */
  readonly part: "step" | "preparation" | "set-up";
  /** The preparation, where that is the part. */
  readonly preparation: Preparation | null;
  /** Where the step's coat is found by name. */
  readonly coats: Readonly<Record<string, Coat>>;
  /** Pieces in hand that the same act puts down: what they give off only while worked has then ended. */
  readonly leaves: readonly Tag[];
}

/** What a coat gives off by itself, from the beginning of its hands-on work until it is dust-free. */
export const WET_COAT = "wet coat";

/** What a task puts into the room once it is started. */
export function taskGivesOff({ step, part, preparation, coats }: Task): ReadonlySet<string> {
  if (part === "preparation") return new Set(preparation?.givesOff.map(({ what }) => what));
  if (part === "set-up") {
    return new Set(step.givesOff.filter(({ lasts }) => lasts === "while set up").map(({ what }) => what));
  }
  const coat = step.coat === null ? undefined : coats[step.coat];
  const given = [...step.givesOff, ...(coat?.givesOff ?? [])].map(({ what }) => what);
  return new Set(coat === undefined ? given : [...given, WET_COAT]);
}
