import { NO_PLACE } from "../cure/hanging-air.ts";
import { coldAhead } from "../shop/cold-ahead.ts";
import { OWN_ROOM, type Shop } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";
import { isoMoment } from "../words/iso-moment.ts";
import { readAirWords } from "../words/read-air.ts";
import { readPlaceOfAir } from "../words/read-place.ts";
import { sayAir, sayColdAhead, sayKnownAir } from "../words/say-air.ts";
import { sayColdPast } from "../words/say-how-sure.ts";
import { sayReading } from "../words/say-units.ts";
import type { Speech } from "../words/speech.ts";
import type { Opened } from "./bench.ts";
import { type Answer, type Command, WHEN } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { findPlace } from "./find-place.ts";
import { coldJson } from "./now-json.ts";
import { perform } from "./perform.ts";
import { readStatedAir } from "./read-stated-air.ts";

/** The air: shown, read by hand, taken from a pipe, or stated for places where nobody reads it. */
export const air: Command = {
  usage: [
    "air",
    "air READING [--in PLACE]",
    "air - [--in PLACE] [--from NAME]",
    "air --low 8C --high 22C [--humidity 60%] [--in PLACE]",
  ],
  says: "temperature and humidity: what coats really dry in",
  options: {
    ...WHEN,
    in: { value: "PLACE", says: "the air of this place: the warm box; else of the shop" },
    from: { value: "NAME", says: "which sensor the pipe comes from" },
    unit: { value: "C|F", says: "of temperatures in the pipe that name no unit" },
    zone: { value: "ZONE", says: "of times in the pipe that name no zone: Europe/Dublin" },
    low: { value: "TEMPERATURE", says: "the lowest of a day where nothing is read" },
    high: { value: "TEMPERATURE", says: "the highest of a day where nothing is read" },
    humidity: { value: "PERCENT", says: "the humidity where nothing is read; 50 % unless said" },
    unknown: { value: null, says: "take back what was stated: only what is read counts" },
  },
  examples: [
    ["air", "what the air is, and what it does to what hangs"],
    ["air 62F 58%", "a reading by hand, of now"],
    ["air 16.5C 58% --ago 2h", "of two hours ago"],
    ['air 27C 40% --in "warm box"', "another place has its own air"],
    ["air - < logger.csv", "readings line by line: JSON, CSV with a heading, or bare words"],
    ["air --low 8C --high 22C --humidity 65%", "no sensor: a day like this is taken"],
  ],
  async run(words, bench) {
    const opened = await bench.open();
    const place = await findPlace(words.option("in"), words, opened, readPlaceOfAir);
    if (words.ahead()[0] === "-") {
      words.word();
      words.nothingMore();
      if (words.problems.length > 0) return { problems: words.problems };
      const { takeReadings } = await import("./air-pipe.ts");
      return takeReadings(words, bench, place);
    }
    const stated = readStatedAir(words, place);
    if (stated !== null)
      return perform(words, bench, { act: "settle", at: opened.speech.now, setting: stated });
    const said = words.rest();
    if (words.problems.length > 0) return { problems: words.problems };
    return said === null
      ? show(words.moment("at", opened.speech) ?? opened.speech.now, opened)
      : read(said, words, opened, place);
  },
};

/** A reading by hand: what cannot be right is not kept. */
async function read(
  said: string,
  words: CommandWords,
  opened: Opened,
  place: string | null,
): Promise<Answer> {
  const { workshop, speech } = opened;
  const when = words.when(speech);
  const unit = workshop.taste.units === "us" ? "F" : "C";
  const reading = readAirWords(said, { now: when, zone: speech.zone, unit });
  if ("problem" in reading) return { problems: [...words.problems, reading.problem] };
  if (reading.doubt !== null) return { problems: [...words.problems, reading.doubt] };
  if (when > speech.now) return { problems: [...words.problems, "a reading is of now or of earlier"] };
  if (words.problems.length > 0) return { problems: words.problems };
  await workshop.recordAir([{ ...reading, at: when, place }], null);
  const shop = await workshop.shop();
  const heading = `Air of ${place ?? OWN_ROOM}: ${sayAir(reading, speech)}`;
  return {
    text: [heading, ...sayColdPast(shop, speech), ...sayColdAhead(coldAhead(shop, speech.now), speech)],
    json: {
      kept: 1,
      place,
      celsius: reading.celsius,
      humidityPercent: reading.humidityPercent,
      at: isoMoment(when, speech.zone),
    },
  };
}

/** The air of every place that is known, and what is ahead of it for the coats that hang. */
async function show(at: Instant, { workshop, speech }: Opened): Promise<Answer> {
  const shop = await workshop.shop(undefined, at === speech.now ? undefined : at);
  const known = [...shop.air.lines.keys()].flatMap((place) => {
    const air = shop.air.at(place, at);
    return air === null ? [] : [{ place: place === NO_PLACE ? OWN_ROOM : place, air }];
  });
  if (known.length === 0) {
    return {
      text: [
        "The air is not known: coats are taken to dry as their sheets say.",
        '"dryline help air" shows how to tell it.',
      ],
      json: { places: [], cold: [] },
    };
  }
  return {
    text: [
      ...known.map(({ place, air }) => `${place}: ${sayKnownAir(air, speech)}`),
      ...sayDay(shop, at, speech),
      ...sayColdPast(shop, { ...speech, now: at }),
      ...sayColdAhead(coldAhead(shop, at), speech),
    ],
    json: {
      places: known.map(({ place, air: { celsius, humidityPercent, rests, readAt } }) => ({
        place,
        celsius,
        humidityPercent,
        rests,
        readAt: readAt === undefined ? null : isoMoment(readAt, speech.zone),
      })),
      cold: coldAhead(shop, at).map((cold) => coldJson(cold, speech)),
    },
  };
}

/** Lowest and highest that are expected of the shop in the next day. */
function sayDay(shop: Shop, at: Instant, speech: Speech): readonly string[] {
  const hours = Array.from({ length: 25 }, (_, hour) => shop.air.at(NO_PLACE, at + hour * 3_600_000));
  const celsius = hours.flatMap((air) => (air === null ? [] : [air.celsius]));
  if (celsius.length < hours.length) return [];
  const span = new Set([Math.min(...celsius), Math.max(...celsius)].map((each) => sayReading(each, speech)));
  return [`next 24 h: ${[...span].join(" to ")} expected`];
}
