import type { NewAir } from "../journal/air.ts";
import type { Instant } from "../time/instant.ts";
import { type AirLineRead, AirLines, gapsBetween, isOldAsByZone } from "../words/air-lines.ts";
import { plainText } from "../words/plain-text.ts";
import type { AirWords } from "../words/read-air.ts";
import { readPlaceOfAir } from "../words/read-place.ts";
import { sayColdPast } from "../words/say-how-sure.ts";
import { sayCount } from "../words/say-list.ts";
import { sayClock } from "../words/say-time.ts";
import type { Speech } from "../words/speech.ts";
import type { Workshop } from "../workshop/workshop.ts";
import type { Bench } from "./bench.ts";
import type { Answer } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { readZoneNamed } from "./read-zone-named.ts";

/** Lines that could not be read, or readings in doubt, told one by one up to so many. */
const MOST_TOLD = 20;

/** What has come through a pipe so far. */
interface Tally {
  kept: number;
  known: number;
  doubted: number;
  unread: number;
  /** Of the readings that count, as they came. */
  readonly moments: Instant[];
}

/**
 * Takes readings from standard input until it ends, and keeps each as it comes: a pipe that breaks off has lost
 * nothing, and one that sends again adds nothing.
 */
export async function takeReadings(words: CommandWords, bench: Bench, place: string | null): Promise<Answer> {
  const { workshop, speech } = await bench.open();
  const as = await readAs(words, bench);
  if (as === null) return { problems: words.problems };
  const lines = new AirLines(() => ({ ...as, now: workshop.now() }));
  const tally: Tally = { kept: 0, known: 0, doubted: 0, unread: 0, moments: [] };
  const tell = tellerOf(bench);
  const keep = async (read: readonly AirLineRead[]): Promise<void> => {
    const placed = await placeLines(read, place, workshop);
    const readings = placed.flatMap((one) => countLine(one, tally, tell));
    if (readings.length === 0) return;
    const kept = await workshop.recordAir(readings, words.option("from") ?? "pipe");
    tally.kept += kept;
    tally.known += readings.length - kept;
  };
  for await (const text of bench.context.input()) await keep(lines.take(text));
  await keep(lines.end());
  tell(null);
  const { kept, known, doubted, unread, moments } = tally;
  if (kept + known === 0 && unread > 0) return { problems: ["none of the lines is a reading of the air"] };
  const gaps = gapsBetween(moments);
  const mayBeOfOtherZone = words.option("zone") === null ? sayOtherZone(moments, workshop.now(), speech) : [];
  const past = kept === 0 ? [] : sayColdPast(await workshop.shop(), speech);
  return {
    text: [sayTally(tally), ...gaps.map((gap) => sayGap(gap, speech)), ...mayBeOfOtherZone, ...past],
    json: { kept, known, doubted, unread, gaps: gaps.length },
  };
}

/**
 * Lines with the places they name found among those there are, as typed ones are; of a place that there is not the
 * reading is in doubt. One that names none is of the usual place.
 */
async function placeLines(
  read: readonly AirLineRead[],
  usualPlace: string | null,
  workshop: Workshop,
): Promise<readonly AirLineRead[]> {
  const unnamed = (one: AirLineRead) => ("place" in one ? { ...one, place: usualPlace } : one);
  if (!read.some((one) => "place" in one && one.place !== null)) return read.map(unnamed);
  // A pipe may stay open for days, in which places are made.
  const [{ processes }, shop] = await Promise.all([workshop.readLibrary(), workshop.shop()]);
  const found = new Map<string, ReturnType<typeof readPlaceOfAir>>();
  return read.map((one) => {
    if ("problem" in one || one.place === null) return unnamed(one);
    const known = found.get(one.place) ?? readPlaceOfAir(one.place, processes, shop);
    found.set(one.place, known);
    if ("problem" in known) return { ...one, doubt: one.doubt ?? known.problem };
    return { ...one, place: known.found };
  });
}

/** Tells sentences on stderr, the first of many; null when no more come: then how many more there were. */
function tellerOf({ context }: Bench): (sentence: string | null) => void {
  let told = 0;
  return (sentence) => {
    // A line of the pipe stands in it as it came.
    if (sentence !== null && told++ < MOST_TOLD) context.err(`${plainText(sentence)}.\n`);
    if (sentence === null && told > MOST_TOLD)
      context.err(`And ${sayCount(told - MOST_TOLD, "more line")} like these.\n`);
  };
}

/** Counts a line and tells what is wrong with it. @returns its reading, if it is one */
function countLine(read: AirLineRead, tally: Tally, tell: (sentence: string) => void): NewAir[] {
  if ("problem" in read) {
    tally.unread++;
    tell(`Line ${read.line}: ${read.problem}`);
    return [];
  }
  const { at, place, celsius, humidityPercent, doubt } = read;
  if (doubt === null) tally.moments.push(at);
  else {
    tally.doubted++;
    tell(`Line ${read.line} is kept but does not count: ${doubt}`);
  }
  return [{ at, place, celsius, humidityPercent, doubt }];
}

/** `4 readings kept, 2 in doubt, 1 line not understood` */
function sayTally({ kept, known, doubted, unread }: Tally): string {
  return [
    `${sayCount(kept, "reading")} kept`,
    ...(known > 0 ? [`${known} known already`] : []),
    ...(doubted > 0 ? [`${doubted} in doubt`] : []),
    ...(unread > 0 ? [`${sayCount(unread, "line")} not understood`] : []),
  ].join(", ");
}

function sayGap({ from, to }: { readonly from: Instant; readonly to: Instant }, speech: Speech): string {
  return `no reading from ${sayClock(from, speech)} to ${sayClock(to, speech)}: the air between is drawn straight`;
}

/** That the newest reading is as old as if the sensor's clock were in another zone; nothing where it is not. */
function sayOtherZone(moments: readonly Instant[], now: Instant, speech: Speech): readonly string[] {
  const newest = moments.reduce((latest, at) => Math.max(latest, at), Number.NEGATIVE_INFINITY);
  if (!isOldAsByZone(newest, now)) return [];
  return [
    `the newest reading is of ${sayClock(newest, speech)}: if the sensor sent it just now, its clock is in another zone, and --zone tells which`,
  ];
}

/** The unit and zone that bare figures and times are in; null: they could not be read, and the problem told. */
async function readAs(words: CommandWords, bench: Bench): Promise<Omit<AirWords, "now"> | null> {
  const { workshop, speech } = await bench.open();
  const unit = (words.option("unit") ?? (workshop.taste.units === "us" ? "F" : "C")).toUpperCase();
  if (unit !== "C" && unit !== "F") words.problems.push(`--unit "${unit}" is neither C nor F`);
  const named = words.option("zone");
  const zone = named === null ? speech.zone : await readZoneNamed(named, words);
  if (words.problems.length > 0 || zone === null) return null;
  return { zone, unit: unit === "F" ? "F" : "C" };
}
