import { capital } from "../words/say-list.ts";
import { sayWarning } from "../words/say-warning.ts";
import type { Opened } from "./bench.ts";
import type { Done } from "./perform.ts";

/** What should be known before the coats just taken are laid: a window that will pass while the bench is shut. */
export async function sayWarnings(
  { events }: Done,
  { workshop, speech }: Opened,
): Promise<readonly string[]> {
  const taken = new Set(events.flatMap(({ kind, tag }) => (kind === "taken" && tag !== null ? [tag] : [])));
  const { inHand } = await workshop.whatNow();
  const warnings = inHand.flatMap(({ tags, warning }) =>
    warning !== null && tags.some((tag) => taken.has(tag))
      ? [`${capital(sayWarning(warning, speech))}.`]
      : [],
  );
  return [...new Set(warnings)];
}
