import type { Tag } from "../journal/event.ts";
import { median } from "../learned/median.ts";
import type { Piece } from "../shop/shop.ts";
import type { Minutes } from "../time/instant.ts";
import { tagsOf } from "./span.ts";
import type { StepAgainstEstimate } from "./week-review.ts";
import type { WorkDone } from "./work-done.ts";

interface Timed {
  readonly tag: Tag;
  readonly minutes: Minutes;
  readonly estimate: Minutes;
}

/**
 * Minutes of each step as worked against the process file's likely ones, by process and then in its own order of work.
 * Guesses, preparations and mends are left out, and steps no longer in the piece's route.
 */
export function stepsAgainstEstimate(
  work: readonly WorkDone[],
  pieces: ReadonlyMap<Tag, Piece>,
): readonly StepAgainstEstimate[] {
  const groups = new Map<string, { process: string; step: string; place: number; timed: Timed[] }>();
  for (const { tag, step, minutes, guessed, what } of work) {
    const piece = pieces.get(tag);
    const place = piece?.route.findIndex(({ name }) => name === step) ?? -1;
    const found = piece?.route[place];
    if (piece === undefined || found === undefined || minutes === null || guessed || what !== "step")
      continue;
    const process = piece.definition.name;
    const key = JSON.stringify([process, step]);
    const group = groups.get(key) ?? { process, step, place, timed: [] };
    group.timed.push({ tag, minutes, estimate: found.handsOn.likely });
    groups.set(key, group);
  }
  return [...groups.values()]
    .sort((a, b) => a.process.localeCompare(b.process, "en") || a.place - b.place)
    .map(({ process, step, timed }) => ({
      process,
      step,
      times: timed.length,
      minutes: middle(timed.map(({ minutes }) => minutes)),
      estimate: middle(timed.map(({ estimate }) => estimate)),
      total: Math.round(timed.reduce((sum, { minutes }) => sum + minutes, 0)),
      estimated: timed.reduce((sum, { estimate }) => sum + estimate, 0),
      tags: tagsOf(timed),
    }));
}

/** To the whole minute; a half goes up. */
function middle(values: readonly Minutes[]): Minutes {
  return Math.round(median(values));
}
