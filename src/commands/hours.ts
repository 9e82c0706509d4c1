import type { Setting } from "../journal/event.ts";
import { addDays, instantOf, localTime } from "../time/civil.ts";
import { formatWeeklyHours } from "../time/format-hours.ts";
import { readHoursWords } from "../time/read-hours-words.ts";
import { hoursOn, weeklyOn } from "../time/sessions.ts";
import { isoMoment } from "../words/iso-moment.ts";
import { layOut } from "../words/lay-out.ts";
import { sayAway } from "../words/say-away.ts";
import { sayDayHours } from "../words/say-setting.ts";
import { sayFullDay } from "../words/say-time.ts";
import { sayBench } from "../words/say-waiting.ts";
import { sayWho, sayWorkRow } from "../words/say-work.ts";
import type { Bench, Opened } from "./bench.ts";
import type { Answer, Command } from "./command.ts";
import { AS_OF } from "./command.ts";
import { withoutStop } from "./command-words.ts";
import { perform } from "./perform.ts";

/**
 * Bench hours: shown for seven days, or settled in forgiving words (time/read-hours-words.ts). What they bring is told at
 * once: what fits tonight, or what shuts while the maker is away.
 */
export const hours: Command = {
  usage: ["hours", "hours WORDS"],
  says: "when you work: every week, tonight, days away",
  options: AS_OF,
  examples: [
    ["hours", "this week's hours"],
    ['hours "weekdays 18-21, Sat 9-16"', "every week from today on"],
    ["hours till 22:15", "tonight longer, and what now fits"],
    ["hours not tonight", "the bench stays shut tonight"],
    ["hours on Friday 18-22", "one day otherwise"],
    ["hours away 3 May..17 May", "days away, and which windows will shut meanwhile"],
    ["hours back", "back from today"],
  ],
  async run(words, bench) {
    const opened = await bench.open();
    const said = words.rest();
    if (said === null) return show(words.moment("at", opened.speech), words.problems, bench);
    const read = readHoursWords(said, { ...opened.speech, hours: await opened.workshop.hours() });
    if ("problem" in read) return { problems: [...words.problems, withoutStop(read.problem)] };
    const { setting } = read;
    return perform(words, bench, { act: "settle", at: opened.speech.now, setting }, () =>
      sayEffect(setting, opened),
    );
  },
};

/** What the new hours bring: what fits tonight, or what shuts while the maker is away. */
async function sayEffect(setting: Setting, { workshop, speech }: Opened): Promise<readonly string[]> {
  const answer = await workshop.whatNow();
  if (setting.of === "away") return sayAway(answer, setting, { ...speech, hours: await workshop.hours() });
  if (answer.bench.closes === null) return [];
  const rows = answer.work.map((row) => {
    const said = sayWorkRow(row, speech);
    return [sayWho(row), said.what, said.effort, said.by];
  });
  const fits = rows.length === 0 ? ["Nothing can be worked now."] : ["Work now", ...layOut(rows, null)];
  return [`${sayBench(answer.bench, speech)}.`.replace(/^b/, "B"), ...fits];
}

/** The seven days from the one asked about, with the weekly pattern in force. */
async function show(asked: number | null, problems: readonly string[], bench: Bench): Promise<Answer> {
  if (problems.length > 0) return { problems };
  const { workshop, speech } = await bench.open();
  const hoursNow = await workshop.hours();
  const settled = (await workshop.shop()).settings.hours !== null;
  const from = localTime(speech.zone, asked ?? speech.now).date;
  const weekly = formatWeeklyHours(weeklyOn(hoursNow, from));
  const days = Array.from({ length: 7 }, (_, index) => addDays(from, index));
  return {
    text: [
      settled
        ? `Every week: ${weekly}`
        : `Assumed until you say yours, as dryline hours "weekdays 18-21, Sat 9-16": ${weekly}`,
      ...layOut(
        days.map((date) => [sayFullDay(date), sayDayHours(hoursOn(hoursNow, date), speech)]),
        bench.context.columns,
      ),
    ],
    json: {
      at: isoMoment(asked ?? speech.now, speech.zone),
      settled,
      weekly,
      days: days.map((date) => ({
        date,
        sessions: hoursOn(hoursNow, date).map(({ opens, closes }) => ({
          opens: isoMoment(instantOf(speech.zone, date, opens), speech.zone),
          closes: isoMoment(instantOf(speech.zone, date, closes), speech.zone),
        })),
      })),
    },
  };
}
