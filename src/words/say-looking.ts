import type { Looking } from "../plan/rotation/rotation-answer.ts";
import { plainText } from "./plain-text.ts";
import { sayPace } from "./say-pace.ts";

/** What a search for rotations is at, in one short line. `carved walker: looking for 4 a week ...` */
export function sayLooking(process: string, { at, pace }: Looking): string {
  const what = at === "pace" ? "looking for" : "what one change would give at";
  return plainText(`${process}: ${what} ${sayPace(pace)} ...`);
}
