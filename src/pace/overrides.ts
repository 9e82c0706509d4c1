import type { JournalEvent } from "../journal/event.ts";
import type { ActRecord } from "../shop/shop.ts";
import { isWithin, type Span } from "./span.ts";
import type { OverrideRecord } from "./week-review.ts";

/** What was overridden in a week, one record an act and reason, in the order it was written. */
export function overridesIn(week: Span, acts: readonly ActRecord[]): readonly OverrideRecord[] {
  return acts.flatMap((act) => {
    const records = new Map<string, OverrideRecord>();
    for (const event of act.events) {
      const { what, overrides } = saidIn(event);
      if (!isWithin(week, event.at)) continue;
      for (const { over, reason } of overrides) {
        const key = JSON.stringify([what, over, reason]);
        const tags = [...(records.get(key)?.tags ?? []), ...(event.tag === null ? [] : [event.tag])];
        records.set(key, { at: event.at, tags, what, over, reason });
      }
    }
    return [...records.values()];
  });
}

function saidIn(
  event: JournalEvent,
): Pick<Extract<JournalEvent, { kind: "taken" }>, "overrides"> & { what: string } {
  if (event.kind === "taken" || event.kind === "hung")
    return { what: event.step, overrides: event.overrides };
  if (event.kind === "readied") return { what: event.setUp, overrides: event.overrides };
  return { what: "", overrides: [] };
}
