import type { ActRecord } from "../shop/shop.ts";
import { isWithin, type Span } from "./span.ts";
import type { NoteRecord } from "./week-review.ts";

/** The notes of a week by when they are dated, one record an act; without tags it is of the whole shop. */
export function notesIn(week: Span, acts: readonly ActRecord[]): readonly NoteRecord[] {
  const notes = acts.flatMap(({ tags, events }) => {
    const noted = events.find(({ kind }) => kind === "noted");
    if (noted?.kind !== "noted" || !isWithin(week, noted.at)) return [];
    return [{ at: noted.at, tags: [...tags].sort((a, b) => a - b), text: noted.text }];
  });
  return notes.toSorted((a, b) => a.at - b.at);
}
