import { localTime } from "../time/civil.ts";
import type { CivilDate, Instant } from "../time/instant.ts";
import { readDate } from "../time/read-date.ts";
import { sayDate } from "../words/say-time.ts";
import type { Speech } from "../words/speech.ts";
import { type CommandWords, withoutStop } from "./command-words.ts";

/** `--due Friday`: the next to come, never a day before that of `from`. Null, with the problem noted, where it is not one. */
export function readDue(
  said: string | null,
  speech: Speech,
  words: CommandWords,
  from: Instant = speech.now,
): CivilDate | null {
  if (said === null) return null;
  const read = readDate(said, { ...speech, prefer: "future" });
  if ("problem" in read) {
    words.problems.push(`--due: ${withoutStop(read.problem).replace(/^There/, "there")}`);
    return null;
  }
  if (read.date >= localTime(speech.zone, from).date) return read.date;
  words.problems.push(`--due ${sayDate(read.date, speech)} has passed: say a day from today on`);
  return null;
}
