import type { PlanAnswer } from "../plan/plan-answer.ts";
import { localTime } from "../time/civil.ts";
import type { CivilDate } from "../time/instant.ts";
import { readDate } from "../time/read-date.ts";
import { sayDayCard, sessionsOn } from "../words/say-day-card.ts";
import { sayNoTime } from "../words/say-forecast.ts";
import { sayPlan } from "../words/say-plan.ts";
import { sayFullDay } from "../words/say-time.ts";
import type { Speech } from "../words/speech.ts";
import { planDays, planDaysIf } from "../workshop/plan-days.ts";
import { type Answer, AS_OF, type Command } from "./command.ts";
import { type CommandWords, withoutStop } from "./command-words.ts";
import { planJson } from "./plan-json.ts";
import { readWhatIf } from "./read-what-if.ts";

/** Days shown unless said. */
const USUAL_DAYS = 7;
/** Further ahead no plan means anything. */
const MOST_DAYS = 60;

/** The coming days as a timetable to follow, what-ifs, and a card for one day. What-ifs never touch the journal. */
export const plan: Command = {
  usage: ["plan", "plan --without DAY", "plan --add N [PROCESS]", "plan --card [DAY]"],
  says: "the coming days: what to work when, and when each piece is finished",
  options: {
    days: { value: "N", says: "how many days, today with them; 7 unless said" },
    without: { value: "DAY", says: "what if the bench stays shut then: Sat, tomorrow, 3 May", many: true },
    hours: { value: "HOURS", says: 'what if these were the hours: "Thu 18-22", "3 May 9-12"', many: true },
    add: {
      value: "N",
      says: "what if so many more were tagged now, of the process said after it",
      many: true,
    },
    due: { value: "DATE", says: "when those added must be finished", many: true },
    card: { value: null, says: "one day to print, 80 columns wide, with boxes to tick" },
    ...AS_OF,
  },
  examples: [
    ["plan", "the coming week, and when each piece is finished"],
    ["plan --without Sat", "what it changes if the bench stays shut on Saturday"],
    ['plan --hours "Thu 18-22"', "what an hour more on Thursday gives"],
    ['plan --add 6 "carved walker" --due "1 May"', "whether six more can be promised, and whom they delay"],
    ["plan --card Fri", "Friday's work to print and tick"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const asked = words.moment("at", speech, "near");
    const then = { ...speech, now: asked ?? speech.now };
    const date = words.has("card") && !words.has("add") ? readDay(words, then) : null;
    const days = readDays(words);
    const whatIf = await readWhatIf(words, workshop, then, days);
    words.nothingMore();
    if (words.problems.length > 0) return { problems: words.problems };
    const asking = { at: asked, rounds: bench.context.planRounds ?? Number.POSITIVE_INFINITY };
    const answer =
      whatIf === null
        ? await planDays(workshop, days, asking)
        : await planDaysIf(workshop, days, whatIf, asking);
    if ("fitsNoSession" in answer)
      return { problems: [`${answer.fitsNoSession.process}: ${sayNoTime(answer.fitsNoSession)}`] };
    const json = planJson(answer, then);
    if (!words.has("card")) return { text: sayPlan(answer, then, bench.context.columns), json };
    return cardOf(answer, date, then, json);
  },
};

function readDays(words: CommandWords): number {
  const days = words.count("days") ?? USUAL_DAYS;
  if (days > MOST_DAYS) words.problems.push(`--days ${days} is too far ahead: write 1 to ${MOST_DAYS}`);
  return days;
}

/** The day of a card; null: none was said. */
function readDay(words: CommandWords, speech: Speech): CivilDate | null {
  const said = words.rest();
  if (said === null) return null;
  const read = readDate(said, { ...speech, prefer: "future" });
  if ("date" in read) return read.date;
  words.problems.push(withoutStop(read.problem));
  return null;
}

/** The card of the day said, else of the first with work. */
function cardOf(answer: PlanAnswer, date: CivilDate | null, speech: Speech, json: object): Answer {
  const open = answer.sessions.filter(({ outsideHours }) => !outsideHours);
  const first = open.find(({ rows }) => rows.length > 0) ?? open[0];
  const day = date ?? (first === undefined ? null : localTime(speech.zone, first.opens).date);
  if (day === null)
    return { problems: [`no bench is open in ${answer.days} days: there is no day for a card`] };
  if (sessionsOn(answer, day, speech).length > 0) return { text: sayDayCard(answer, day, speech), json };
  return { problems: [`the bench is not open on ${sayFullDay(day)} in the ${answer.days} days looked at`] };
}
