import type { Change, RotationAnswer } from "../plan/rotation/rotation-answer.ts";
import { plainText } from "./plain-text.ts";
import { sayDays } from "./say-rotation.ts";
import { sayWait } from "./say-time.ts";

/** So many changes at most are told. */
const TOLD = 4;
/** Minutes a change must win to be worth a line where the number out stays. */
const WORTH = 60;

/** What limits a timetable, and what one change would give at the same pace; found, where it is not said to be proven. */
export function sayChanges({ changes, timetable, pace: { pieces } }: RotationAnswer): string[] {
  if (timetable.is !== "timetable") {
    return changes.length === 0
      ? []
      : [
          "It would be possible with one of these:",
          ...changes.slice(0, TOLD).map((one) => `  ${sayChange(one, pieces)}`),
        ];
  }
  const worth = changes.filter(
    ({ span, out }) => out < timetable.out || timetable.span - span >= WORTH * pieces,
  );
  const [first] = worth;
  if (first === undefined) {
    return [
      pieces === 1
        ? "What limits it: the waits themselves. No single change tried shortens it by an hour."
        : "What limits it: no single change tried was found to shorten it by an hour a piece; that proves nothing.",
    ];
  }
  const sure = worth.every(({ proven }) => proven) ? "" : " (as found by a short search, not proven)";
  return [
    `What limits it most: ${limitOf(first)}. One change at the same pace would give${sure}:`,
    ...worth.slice(0, TOLD).map((one) => `  ${sayChange(one, pieces)}`),
  ];
}

function sayChange({ what, span, out }: Change, pieces: number): string {
  return plainText(`${changeOf(what)}: ${out} out, ${sayDays(span / pieces)} a piece`);
}

function changeOf(what: Change["what"]): string {
  switch (what.kind) {
    case "hours":
      return `the bench open ${sayWait(what.minutes)} longer`;
    case "hook":
      return `one hook more at ${what.place}`;
    case "cure":
      return `the wait after ${what.step} ${sayDays(what.minutes)} shorter`;
    case "hands":
      return "one pair of hands more";
    case "windows":
      return "windows that stay open";
    case "keep apart":
      return "a second room for what is kept apart";
    case "air":
      return "air fit for every coat at any hour";
    case "station":
      return `another ${what.station}, so that nothing there need be changed over`;
  }
}

function limitOf({ what }: Change): string {
  switch (what.kind) {
    case "hours":
      return "the bench hours";
    case "hook":
      return plainText(`the hooks at ${what.place}`);
    case "cure":
      return plainText(`the wait after ${what.step}`);
    case "hands":
      return "the hands";
    case "windows":
      return "windows that shut";
    case "keep apart":
      return "what must be kept apart in one room";
    case "air":
      return "air that is unfit for coats at times";
    case "station":
      return plainText(`changing over at the ${what.station}`);
  }
}
