import type { Tag } from "../journal/event.ts";

/** Tags as said in a sentence: `1`, `1 and 2`, `1, 2 and 5`. */
export function listTags(tags: readonly Tag[]): string {
  const last = tags.at(-1);
  return tags.length < 2 ? `${last ?? ""}` : `${tags.slice(0, -1).join(", ")} and ${last}`;
}
