import type { NewAir } from "../journal/air.ts";
import { type AirLineRead, AirLines, gapsBetween, isOldAsByZone } from "../words/air-lines.ts";
import { plainText } from "../words/plain-text.ts";
import type { AirWords } from "../words/read-air.ts";
import { sayColdPast } from "../words/say-how-sure.ts";
import { sayCount } from "../words/say-list.ts";
import { sayClock } from "../words/say-time.ts";
import type { Bench } from "./bench.ts";
import type { Answer } from "./command.ts";
import type { CommandWords } from "./command-words.ts";

/** Lines that could not be read, or readings in doubt, told one by one up to so many. */
const MOST_TOLD = 20;

/**
 * Takes readings from standard input until it ends, and keeps each as it comes: a pipe that breaks off has lost
 * nothing, and one that sends again adds nothing.
 */
export async function takeReadings(words: CommandWords, bench: Bench, place: string | null): Promise<Answer> {
  const { workshop, speech } = await bench.open();
  const as = await readAs(words, bench);
  if (as === null) return { problems: words.problems };
  const lines = new AirLines(() => ({ ...as, now: workshop.now() }));
  const tally = { kept: 0, known: 0, doubted: 0, unread: 0, moments: [] as number[] };
  let told = 0;
  const tell = (sentence: string): void => {
    // A line of the pipe stands in it as it came.
    if (told++ < MOST_TOLD) bench.context.err(`${plainText(sentence)}.\n`);
  };
  const keep = async (read: readonly AirLineRead[]): Promise<void> => {
    const readings: NewAir[] = [];
    for (const one of read) {
      if ("problem" in one) {
        tally.unread++;
        tell(`Line ${one.line}: ${one.problem}`);
        continue;
      }
      if (one.doubt === null) tally.moments.push(one.at);
      else {
        tally.doubted++;
        tell(`Line ${one.line} is kept but does not count: ${one.doubt}`);
      }
      const { at, celsius, humidityPercent, doubt } = one;
      readings.push({ at, place: one.place ?? place, celsius, humidityPercent, doubt });
    }
    if (readings.length === 0) return;
    const kept = await workshop.recordAir(readings, words.option("from") ?? "pipe");
    tally.kept += kept;
    tally.known += readings.length - kept;
  };
  for await (const text of bench.context.input()) await keep(lines.take(text));
  await keep(lines.end());
  if (told > MOST_TOLD) bench.context.err(`And ${sayCount(told - MOST_TOLD, "more line")} like these.\n`);
  const gaps = gapsBetween(tally.moments).map(
    ({ from, to }) =>
      `no reading from ${sayClock(from, speech)} to ${sayClock(to, speech)}: the air between is drawn straight`,
  );
  const newest = tally.moments.reduce((latest, at) => Math.max(latest, at), Number.NEGATIVE_INFINITY);
  const zone =
    words.option("zone") === null && isOldAsByZone(newest, workshop.now())
      ? [
          `the newest reading is of ${sayClock(newest, speech)}: if the sensor sent it just now, its clock is in another zone, and --zone tells which`,
        ]
      : [];
  const { kept, known, doubted, unread } = tally;
  if (kept + known === 0 && unread > 0) return { problems: ["none of the lines is a reading of the air"] };
  const parts = [
    `${sayCount(kept, "reading")} kept`,
    ...(known > 0 ? [`${known} known already`] : []),
    ...(doubted > 0 ? [`${doubted} in doubt`] : []),
    ...(unread > 0 ? [`${sayCount(unread, "line")} not understood`] : []),
  ];
  const past = kept === 0 ? [] : sayColdPast(await workshop.shop(), speech);
  return {
    text: [parts.join(", "), ...gaps, ...zone, ...past],
    json: { kept, known, doubted, unread, gaps: gaps.length },
  };
}

/** The unit and zone that bare figures and times are in; null: they could not be read, and the problem told. */
async function readAs(words: CommandWords, bench: Bench): Promise<Omit<AirWords, "now"> | null> {
  const { workshop, speech } = await bench.open();
  const unit = (words.option("unit") ?? (workshop.taste.units === "us" ? "F" : "C")).toUpperCase();
  if (unit !== "C" && unit !== "F") words.problems.push(`--unit "${unit}" is neither C nor F`);
  const named = words.option("zone");
  const { readZone } = await import("../time/read-zone.ts");
  const zone = named === null ? speech.zone : readZone(named);
  if (zone === null) words.problems.push(`there is no time zone "${named}": say one as Europe/Dublin`);
  if (words.problems.length > 0 || zone === null) return null;
  return { zone, unit: unit === "F" ? "F" : "C" };
}
