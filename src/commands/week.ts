import { weekNeeds, weekReview } from "../pace/week.ts";
import type { WeekReview } from "../pace/week-review.ts";
import { addDays, localTime } from "../time/civil.ts";
import type { CivilDate } from "../time/instant.ts";
import { readDate } from "../time/read-date.ts";
import { weekOf } from "../time/weeks.ts";
import { isoMoment } from "../words/iso-moment.ts";
import { sayWeek } from "../words/say-week.ts";
import type { Speech } from "../words/speech.ts";
import { AS_OF, type Command } from "./command.ts";
import { type CommandWords, withoutStop } from "./command-words.ts";

/** The review of a week. It reads the pieces of that week and rows of eight, never the whole journal. */
export const week: Command = {
  usage: ["week", "week last", "week WHEN"],
  says: "what the week gave: finished, hours, windows kept and missed, steps against their estimates",
  options: AS_OF,
  examples: [
    ["week", "this week so far"],
    ["week last", "last week"],
    ["week 2026-W13", "that week, by its ISO 8601 name"],
    ['week "3 May"', "the week of that day"],
    ["week --json", "with the pieces behind every figure"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const asked = words.moment("at", speech);
    const then: Speech = { ...speech, now: asked ?? speech.now };
    const firstWeekday = workshop.taste.firstDayOfWeek;
    const date = readWeek(words, then);
    words.nothingMore();
    if (words.problems.length > 0) return { problems: words.problems };
    const week = { date, zone: speech.zone, now: then.now, firstWeekday };
    const needs = weekNeeds(week);
    const shop = await workshop.shop({ of: "span", ...needs.span }, asked ?? undefined);
    const rows = await workshop.journal.pieces(needs.rows.from, needs.rows.to);
    const review = weekReview({ ...week, shop, rows });
    return {
      text: sayWeek(review, then),
      get json() {
        return weekJson(review, then);
      },
    };
  },
};

/** Some day of the week meant: none said, this week; `last`; `2026-W13`; any date. */
function readWeek(words: CommandWords, speech: Speech): CivilDate {
  const today = localTime(speech.zone, speech.now).date;
  const said = words.rest();
  if (said === null || /^this( week)?$/i.test(said)) return today;
  if (/^last( week)?$/i.test(said)) return addDays(today, -7);
  const [, year, number] = /^(\d{4})-?W(\d{1,2})$/i.exec(said) ?? [];
  if (year !== undefined && number !== undefined) {
    // 4 January is always in week 1 of ISO 8601.
    const date = addDays(`${year}-01-04`, 7 * (Number(number) - 1));
    const name = `${year}-W${number.padStart(2, "0")}`;
    if (weekOf(date).name !== name) words.problems.push(`there is no week ${said}: a year has 52 or 53`);
    return date;
  }
  const read = readDate(said, { ...speech, prefer: "past" });
  if ("date" in read) return read.date;
  words.problems.push(withoutStop(read.problem));
  return today;
}

/** Keys of a review that hold instants. */
const MOMENTS = new Set(["at", "shut", "taken"]);

/** The review as it is, its instants as ISO 8601 with the shop's offset. */
function weekJson(review: WeekReview, speech: Speech): object {
  return JSON.parse(
    JSON.stringify(review, (key, value: unknown) =>
      MOMENTS.has(key) && typeof value === "number" ? isoMoment(value, speech.zone) : value,
    ),
  );
}
