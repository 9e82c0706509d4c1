import { DEW_MARGIN, DEW_RULE } from "../cure/fit-air.ts";
import type { Setting } from "../journal/event.ts";
import { roomClears } from "../safety/rooms.ts";
import { aimAt, handsAt } from "../shop/settings-at.ts";
import type { Settings } from "../shop/shop.ts";
import { localTime } from "../time/civil.ts";
import { layOut } from "../words/lay-out.ts";
import { MIXING_ALONE, sayClearing } from "../words/say-room.ts";
import { sayAim } from "../words/say-setting.ts";
import { sayWeekday } from "../words/say-time.ts";
import { sayDegrees } from "../words/say-units.ts";
import type { Workshop } from "../workshop/workshop.ts";
import type { Bench, Opened } from "./bench.ts";
import type { Answer, Command } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { perform } from "./perform.ts";
import { readSubword } from "./read-subword.ts";
import { readZoneNamed } from "./read-zone-named.ts";

export const OF_THE_SHOP = [
  "zone",
  "hands",
  "place",
  "aim",
  "out",
  "process",
  "room",
  "in",
  "margin",
  "touches",
] as const;
export const OF_TASTE = ["units", "clock", "week", "colour"] as const;

type OfTheShop = (typeof OF_THE_SHOP)[number];
type OfTaste = (typeof OF_TASTE)[number];

/**
 * What the shop has (kept in the journal from a date on, so that past weeks stay true) and what the maker likes to see
 * (kept in a file, as it changes no answer).
 */
export const settings: Command = {
  usage: [
    "settings",
    "settings zone|hands|place|aim|out|process|room|in|margin|touches VALUE",
    "settings units|clock|week|colour VALUE",
  ],
  says: "what the shop has and aims at, and how you like things told",
  options: {},
  examples: [
    ["settings", "shows them all, and where the files are"],
    ["settings zone Europe/Dublin", "the shop's clock"],
    ["settings hands 2", "two of you work from today on"],
    ["settings place rack 8", "the rack has eight hooks"],
    ["settings aim 7", "seven finished a week"],
    ["settings out 6", "at most six out at once"],
    ['settings process "carved walker"', "what new pieces are, unless said"],
    ['settings room "paint room" 20 m3 fan 300', "its fan moves 300 m3 an hour: how long it takes to clear"],
    ['settings in "spray corner in paint room"', "a station or a place that is in it"],
    ["settings margin 2C", "how much warmer than the dew point a surface must be"],
    ["settings touches off", "touch tests no longer correct how long coats take"],
    ["settings clock 12", "7:34 pm instead of 19:34"],
    ["settings week Sun", "weeks begin on Sunday"],
  ],
  async run(words, bench) {
    if (words.ahead().length === 0) return show(bench);
    const of = readSubword(words, [...OF_THE_SHOP, ...OF_TASTE], "zone");
    if (words.problems.length > 0) return { problems: words.problems };
    if (isOfTaste(of)) {
      const { setTaste } = await import("./set-taste.ts");
      return setTaste(of, words, bench);
    }
    const opened = await bench.open();
    const setting = await readSetting(of, words, opened);
    if (setting === null) return { problems: words.problems };
    return perform(words, bench, { act: "settle", at: opened.speech.now, setting }, async ({ shop }) =>
      setting.of === "room" ? sayClearing(shop.settings, setting.name) : [],
    );
  },
};

function isOfTaste(of: OfTheShop | OfTaste): of is OfTaste {
  return OF_TASTE.some((each) => each === of);
}

/** The setting that was said; null: it was not understood, and the problem told. An aim keeps its other half. */
async function readSetting(
  of: OfTheShop,
  words: CommandWords,
  { workshop, speech }: Opened,
): Promise<Setting | null> {
  const from = localTime(speech.zone, speech.now).date;
  const said = words.rest();
  if (said === null) {
    words.problems.push(`say what it shall be: "dryline help settings" has examples`);
    return null;
  }
  const settled = (await workshop.shop()).settings;
  const aim = aimAt(settled, from);
  switch (of) {
    case "zone": {
      // Checked here and not by the act: it starts Intl, which no act may wait for.
      const zone = await readZoneNamed(said, words);
      return zone === null ? null : { of: "zone", name: zone.name };
    }
    case "hands":
      return { of: "hands", from, pairs: readNumber(said, words) ?? 1 };
    case "place": {
      const [, name = said, hooks] = /^(.*\S)\s+(\S+)$/.exec(said) ?? [];
      if (hooks === undefined)
        words.problems.push("say its hooks: settings place rack 8, or none if it is never full");
      return { of: "place", name, hooks: readNumber(hooks ?? "none", words) };
    }
    case "aim":
      return { of: "aim", from, finishedPerWeek: readNumber(said, words), out: aim?.out ?? null };
    case "out":
      return { of: "aim", from, finishedPerWeek: aim?.finishedPerWeek ?? null, out: readNumber(said, words) };
    case "room":
    case "in":
    case "margin":
    case "touches": {
      const { readAirSetting } = await import("./read-air-setting.ts");
      const setting = readAirSetting(of, said, words);
      return setting?.of === "in room" ? inKnownRoom(setting, settled, words, workshop) : setting;
    }
    case "process": {
      if (/^none$/i.test(said)) return { of: "default process", name: null };
      const { matchIn } = await import("../words/match-in.ts");
      const found = matchIn(
        "process",
        said,
        (await workshop.readLibrary()).processes,
        ({ definition }) => definition.name,
      );
      if ("found" in found) return { of: "default process", name: found.found.definition.name };
      words.problems.push(found.problem);
      return null;
    }
  }
}

/** What is in which room, both as they are known: a slip of the keys would keep nothing apart. Null: one is not, and that told. */
async function inKnownRoom(
  setting: Extract<Setting, { of: "in room" }>,
  { rooms, places }: Settings,
  words: CommandWords,
  workshop: Workshop,
): Promise<Setting | null> {
  const steps = (await workshop.readLibrary()).processes.flatMap(({ definition }) => definition.steps);
  const known = steps.flatMap(({ station, place }) => (place === null ? [station] : [station, place]));
  const { matchIn } = await import("../words/match-in.ts");
  const what = matchIn("station or place", setting.what, [...new Set([...known, ...places.keys()])], String);
  const room =
    setting.room === null ? { found: null } : matchIn("room", setting.room, [...rooms.keys()], String);
  if ("found" in what && "found" in room) return { ...setting, what: what.found, room: room.found };
  if ("problem" in what) words.problems.push(what.problem);
  if ("problem" in room) words.problems.push(`${room.problem}; settings room "${setting.room}" makes it one`);
  return null;
}

/** A whole number; null for `none`. What is too much of a thing is for the act to say. */
function readNumber(said: string, words: CommandWords): number | null {
  if (/^(none|off|no)$/i.test(said)) return null;
  const fits = /^\d{1,6}$/.test(said);
  if (!fits) words.problems.push(`"${said}" is no whole number from 0 to 999999, nor "none"`);
  return fits ? Number(said) : null;
}

/** All settings, with the folders where the shop is kept: what to copy for a backup. */
async function show(bench: Bench): Promise<Answer> {
  const { workshop, speech } = await bench.open();
  const { taste, places } = workshop;
  const shop = (await workshop.shop()).settings;
  const today = localTime(speech.zone, speech.now).date;
  const aim = aimAt(shop, today);
  const hooks = [...shop.places].map(([name, place]) => ({ name, hooks: place.hooks }));
  const rows: string[][] = [
    ["zone", speech.zone.name],
    ["hands", String(handsAt(shop, today))],
    ...hooks.map((place) => ["place", `${place.name}, hooks: ${place.hooks}`]),
    ["aim", sayAim(aim?.finishedPerWeek ?? null, aim?.out ?? null)],
    ["process", shop.defaultProcess ?? "none: named with each tag"],
    ...[...shop.rooms.keys()].map((room) => ["room", sayClearing(shop, room)[0] ?? room]),
    ...[...shop.roomOf].map(([what, room]) => ["in", `${what} is in ${room}`]),
    ["margin", `${sayDegrees(shop.dewMargin ?? DEW_MARGIN, speech)} above the dew point (${DEW_RULE})`],
    ["touches", shop.touchesCount ? "count" : "do not count"],
    ["units", taste.units],
    ["clock", taste.clock],
    ["week", `begins ${sayWeekday(taste.firstDayOfWeek)}`],
    ["colour", taste.colour ? "on" : "off"],
    ["journal", places.data],
    ["taste", places.config],
  ];
  return {
    text: [...layOut(rows, null), ...(shop.rooms.size === 0 ? [] : ["", `  room: ${MIXING_ALONE}`])],
    json: {
      zone: speech.zone.name,
      hands: handsAt(shop, today),
      places: hooks,
      aim: { finishedPerWeek: aim?.finishedPerWeek ?? null, out: aim?.out ?? null },
      process: shop.defaultProcess,
      rooms: [...shop.rooms].map(([name, room]) => ({ name, ...room, clears: roomClears(shop, name) })),
      in: [...shop.roomOf].map(([what, room]) => ({ what, room })),
      margin: shop.dewMargin ?? DEW_MARGIN,
      touches: shop.touchesCount,
      taste,
      folders: places,
    },
  };
}
