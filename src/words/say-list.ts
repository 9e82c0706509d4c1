import type { Tag } from "../journal/event.ts";

/**
 * Things in a row, as a sentence has them.
 *
 * @example sayList(["seal", "first clear", "eyes"]) // "seal, first clear and eyes"
 * @example sayList(["dry", "hard"], "or") // "dry or hard"
 */
export function sayList(things: readonly (string | number)[], joint = "and"): string {
  if (things.length < 2) return things.join("");
  return `${things.slice(0, -1).join(", ")} ${joint} ${things.at(-1)}`;
}

/**
 * Tags of a sentence, four and more in a row as a range.
 *
 * @example sayTags([1, 2]) // "1 and 2"
 * @example sayTags([12, 13, 14, 15, 18]) // "12-15 and 18"
 */
export function sayTags(tags: readonly Tag[]): string {
  return sayList(tagSpans(tags, 4));
}

/** Tags of a row on a screen, with spaces; three and more in a row as a range. `rowTags([16, 17, 18, 20]) === "16-18 20"` */
export function rowTags(tags: readonly Tag[]): string {
  return tagSpans(tags, 3).join(" ");
}

/** One or many, as English has it. `sayCount(1, "piece") === "1 piece"`, `sayCount(3, "piece") === "3 pieces"` */
export function sayCount(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? "" : "s"}`;
}

/** A sentence begins with a capital, also when it begins with a name. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Sorted tags, those in a row pulled together where there are at least `least` of them. */
function tagSpans(tags: readonly Tag[], least: number): string[] {
  const sorted = [...new Set(tags)].sort((a, b) => a - b);
  const runs: Tag[][] = [];
  for (const tag of sorted) {
    const run = runs.at(-1);
    if (run !== undefined && run.at(-1) === tag - 1) run.push(tag);
    else runs.push([tag]);
  }
  return runs.flatMap((run) => (run.length >= least ? [`${run[0]}-${run.at(-1)}`] : run.map(String)));
}
