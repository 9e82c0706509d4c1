import type { WhatIf } from "../plan/ahead/what-if.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import type { DayHours } from "../time/bench-hours.ts";
import { addDays, localTime, weekdayOf } from "../time/civil.ts";
import type { CivilDate } from "../time/instant.ts";
import { readDate } from "../time/read-date.ts";
import { readNamedHours, readWeekdays } from "../time/read-hours.ts";
import { readHoursWords } from "../time/read-hours-words.ts";
import { matchIn } from "../words/match-in.ts";
import { sayFullDay } from "../words/say-time.ts";
import type { Speech } from "../words/speech.ts";
import type { Workshop } from "../workshop/workshop.ts";
import { type CommandWords, withoutStop } from "./command-words.ts";
import { readDue } from "./read-due.ts";

/** So many pieces at most are added: beyond it a search of a second means nothing. */
const MOST_ADDED = 100;

/**
 * The what-ifs among the words of `plan`: days without bench, other hours, pieces more. Null: there are none. Weekdays
 * mean each such day among those shown.
 */
export async function readWhatIf(
  words: CommandWords,
  workshop: Workshop,
  speech: Speech,
  days: number,
): Promise<WhatIf | null> {
  const today = localTime(speech.zone, speech.now).date;
  const shown = Array.from({ length: Math.min(days, 400) }, (_, ahead) => addDays(today, ahead));
  const hours = await workshop.hours();
  const changed = [
    ...words.options("without").flatMap((said) => readWithout(said, shown, speech, words)),
    ...words.options("hours").flatMap((said) => readOtherHours(said, shown, { ...speech, hours }, words)),
  ];
  const added = await readAdded(words, workshop, speech);
  if (!["without", "hours", "add"].some((option) => words.has(option))) return null;
  return { days: changed, added };
}

type OtherDay = WhatIf["days"][number];

/** `Sat`, `weekend`, `Mon Wed`, `tomorrow`, `3 May, 5 May` */
function readWithout(
  said: string,
  shown: readonly CivilDate[],
  speech: Speech,
  words: CommandWords,
): OtherDay[] {
  const weekdays = readWeekdays(said);
  if (weekdays !== null) return onWeekdays(said, new Map(weekdays.map((day) => [day, []])), shown, words);
  return said.split(",").flatMap((part): OtherDay[] => {
    const read = readDate(part, { ...speech, prefer: "future" });
    if ("date" in read) return among(read.date, [], shown, words);
    words.problems.push(`--without ${withoutStop(read.problem)}`);
    return [];
  });
}

/** `Thu 18-22`, `weekdays 18-22, Sat closed`, `3 May 9-12`, `tonight 19-23`, `till 22:15` */
function readOtherHours(
  said: string,
  shown: readonly CivilDate[],
  context: Parameters<typeof readHoursWords>[1],
  words: CommandWords,
): OtherDay[] {
  const named = readNamedHours(said);
  if ("days" in named) return onWeekdays(said, named.days, shown, words);
  const read = readHoursWords(said, context);
  if ("setting" in read && read.setting.of === "day" && read.setting.hours !== null)
    return among(read.setting.date, read.setting.hours, shown, words);
  words.problems.push(`--hours ${withoutStop(named.problem)}`);
  return [];
}

/** Each of the days shown that falls on a weekday named. */
function onWeekdays(
  said: string,
  hours: ReadonlyMap<number, readonly DayHours[]>,
  shown: readonly CivilDate[],
  words: CommandWords,
): OtherDay[] {
  const found = shown.flatMap((date): OtherDay[] => {
    const day = hours.get(weekdayOf(date));
    return day === undefined ? [] : [{ date, hours: day }];
  });
  if (found.length === 0) words.problems.push(`"${said}" names no day among those shown`);
  return found;
}

function among(
  date: CivilDate,
  hours: readonly DayHours[],
  shown: readonly CivilDate[],
  words: CommandWords,
): OtherDay[] {
  if (shown.includes(date)) return [{ date, hours }];
  words.problems.push(`${sayFullDay(date)} is not among the days shown: --days shows more`);
  return [];
}

/** `--add 6 "carved walker" --due "1 May"`, several times if wanted: the first number goes with the first process. */
async function readAdded(words: CommandWords, workshop: Workshop, speech: Speech): Promise<WhatIf["added"]> {
  const counts = words.options("add");
  const dues = words.options("due").map((said) => readDue(said, speech, words));
  if (counts.length === 0) {
    if (dues.length > 0) words.problems.push('say what is added: --add 6 "carved walker" --due "1 May"');
    return [];
  }
  if (dues.length > 1 && dues.length !== counts.length)
    words.problems.push("say --due once for all that is added, or once for each --add");
  // One process needs no quotes round its words.
  const names = counts.length === 1 ? [words.rest()] : counts.map(() => words.word());
  const added: WhatIf["added"][number][] = [];
  for (const [index, said] of counts.entries()) {
    const fits = /^\d{1,4}$/.test(said) && Number(said) >= 1 && Number(said) <= MOST_ADDED;
    if (!fits)
      words.problems.push(`--add "${said}" is no count: write a whole number from 1 to ${MOST_ADDED}`);
    const definition = await findProcess(names[index] ?? null, words, workshop);
    const due = dues[dues.length === 1 ? 0 : index] ?? null;
    if (fits && definition !== null) added.push({ count: Number(said), definition, due });
  }
  return added;
}

/** The process said, else the one a new piece would be of. */
async function findProcess(
  said: string | null,
  words: CommandWords,
  workshop: Workshop,
): Promise<ProcessDefinition | null> {
  const { processes } = await workshop.readLibrary();
  if (said === null) {
    const { newPiece } = await workshop.planContext(await workshop.shop());
    if (newPiece === null)
      words.problems.push('say which process: --add 6 "carved walker"; "dryline process" lists them');
    return newPiece?.definition ?? null;
  }
  const found = matchIn("process", said, processes, ({ definition }) => definition.name);
  if ("problem" in found) words.problems.push(found.problem);
  return "found" in found ? found.found.definition : null;
}
