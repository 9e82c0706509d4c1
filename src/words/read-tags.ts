import type { Tag } from "../journal/event.ts";

/** A range longer than this is a slip of the finger. */
const LONGEST_RANGE = 200;

/**
 * Tags as they are said in one word: a number, a range, several joined by commas, with or without `#`.
 * Null: not tags.
 *
 * @example readTags("12-14,16") // [12, 13, 14, 16]
 */
export function readTags(word: string): readonly Tag[] | null {
  const tags: Tag[] = [];
  for (const part of word.split(",")) {
    const [, first, last] = /^#?(\d{1,9})(?:(?:-|–|\.\.)#?(\d{1,9}))?$/.exec(part) ?? [];
    if (first === undefined) return null;
    const [from, to] = [Number(first), Number(last ?? first)].sort((a, b) => a - b);
    if (from === undefined || to === undefined || to - from >= LONGEST_RANGE) return null;
    for (let tag = from; tag <= to; tag++) tags.push(tag);
  }
  return tags;
}
