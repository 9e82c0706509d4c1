import type { Tag } from "../journal/event.ts";
import type { Instant } from "../time/instant.ts";
import type { Figure } from "./week-review.ts";

/** From a moment to before another. */
export interface Span {
  readonly from: Instant;
  readonly to: Instant;
}

export function isWithin(span: Span, at: Instant): boolean {
  return span.from <= at && at < span.to;
}

/** Counts records, each of one piece, and names the pieces once. */
export function count(records: readonly { readonly tag: Tag }[]): Figure {
  return { count: records.length, tags: tagsOf(records) };
}

/** The tags of records, rising, each once. */
export function tagsOf(records: readonly { readonly tag: Tag }[]): readonly Tag[] {
  return [...new Set(records.map(({ tag }) => tag))].sort((a, b) => a - b);
}
