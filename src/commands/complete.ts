import type { Piece, Shop } from "../shop/shop.ts";
import { GLOSSARY } from "../words/glossary.ts";
import { readTags } from "../words/read-tags.ts";
import { sayWeekday } from "../words/say-time.ts";
import type { Library } from "../workshop/library.ts";
import { TASTE_WORDS } from "../workshop/taste.ts";
import type { Bench } from "./bench.ts";
import type { Command } from "./command.ts";
import { COMMAND_WORDS, COMMANDS } from "./command-table.ts";
import { COMMON } from "./read-command.ts";
import { KEYS } from "./set-taste.ts";
import { OF_TASTE, OF_THE_SHOP } from "./settings.ts";

/** A word that could stand next, and what it says. */
export interface Candidate {
  readonly word: string;
  readonly says: string;
}

/**
 * What could stand in place of the last word, so far as it is typed.
 *
 * @param typed the words after `dryline`; the last is the one being typed, perhaps empty
 */
export async function complete(typed: readonly string[], bench: Bench): Promise<readonly Candidate[]> {
  const [word = "", ...rest] = typed;
  const current = (typed.at(-1) ?? "").replace(/^["']/, "");
  if (rest.length === 0) return fitting(await commandCandidates(), current);
  const entry = Object.hasOwn(COMMANDS, word) ? COMMANDS[word] : undefined;
  if (entry === undefined) return [];
  const command = await entry.load();
  if (current.startsWith("--")) return fitting(optionCandidates(command), current);
  const before = rest.at(-2);
  const option = before?.startsWith("--") ? before.slice(2) : null;
  const { workshop } = await bench.open();
  const found = candidatesFor(
    word,
    option,
    rest.slice(0, -1),
    await workshop.shop(),
    await workshop.readLibrary(),
  );
  return fitting(found, current);
}

/** Those that begin with what is typed; spaces made single, since two of them part a word from what it says. */
function fitting(candidates: readonly Candidate[], current: string): readonly Candidate[] {
  return candidates
    .filter(({ word }) => word.toLowerCase().startsWith(current.toLowerCase()))
    .map(({ word, says }) => ({ word: word.replace(/\s+/g, " "), says }));
}

async function commandCandidates(): Promise<readonly Candidate[]> {
  return Promise.all(
    COMMAND_WORDS.map(async (word) => ({ word, says: (await COMMANDS[word]?.load())?.says ?? "" })),
  );
}

function optionCandidates(command: Command): readonly Candidate[] {
  return Object.entries({ ...command.options, ...COMMON }).map(([name, { says }]) => ({
    word: `--${name}`,
    says,
  }));
}

type Kind =
  | "processes"
  | "coats"
  | "cautions"
  | "stations"
  | "places"
  | "steps"
  | "tags"
  | "touches"
  | "subwords"
  | "weekdays"
  | "shells"
  | "settings"
  | "hours"
  | "help";

/** What the value of an option is one of. */
const OPTION_KINDS: ReadonlyMap<string, readonly Kind[]> = new Map([
  ["then", ["steps"]],
  ["after", ["steps"]],
  ["skip", ["steps"]],
  ["swap", ["steps"]],
  ["hung", ["steps"]],
  ["like", ["tags", "steps"]],
  ["ticked", ["cautions"]],
  ["place", ["places"]],
  ["in", ["places"]],
  ["coat", ["coats"]],
  ["from", ["processes", "coats", "tags"]],
  ["without", ["weekdays"]],
  ["add", []],
  ["pace", []],
  ["out", []],
]);

/** What the first word after a command is one of, then those after it. */
const WORD_KINDS: ReadonlyMap<string, readonly [first: readonly Kind[], later: readonly Kind[]]> = new Map([
  ["plan", [["processes"], ["processes"]]],
  ["rotation", [["processes"], ["processes"]]],
  ["tag", [["processes", "tags"], []]],
  ["take", [["tags"], ["tags", "steps"]]],
  ["hang", [["tags"], ["tags", "steps"]]],
  ["touch", [["tags"], ["touches"]]],
  ["move", [["tags"], ["places"]]],
  ["ready", [["stations"], []]],
  ["putaway", [["stations"], []]],
  ["coat", [["subwords"], ["coats"]]],
  ["process", [["subwords"], ["processes"]]],
  ["completion", [["shells"], []]],
  ["hours", [["hours"], []]],
  ["settings", [["settings"], []]],
  ["help", [["help"], []]],
  ...["leave", "mend", "measure", "note", "first", "route", "scrap", "amend"].map(
    (word): [string, [Kind[], Kind[]]] => [word, [["tags"], []]],
  ),
]);

/** What the value of a setting is, or begins with. */
const SETTING_KINDS: ReadonlyMap<string, readonly Kind[]> = new Map([
  ["place", ["places"]],
  ["process", ["processes"]],
  ["in", ["stations", "places"]],
]);

/** What an option's value or the next word can be. `said`: the words after the command, without the one being typed. */
function candidatesFor(
  word: string,
  option: string | null,
  said: readonly string[],
  shop: Shop,
  library: Library,
): readonly Candidate[] {
  const [first, later] = WORD_KINDS.get(word) ?? [[], []];
  const [setting, ...more] = said;
  if (word === "settings" && setting !== undefined) {
    return more.length > 0 ? [] : valuesOf(setting, shop, library);
  }
  const kinds =
    (option === null ? undefined : OPTION_KINDS.get(option)) ?? (said.length === 0 ? first : later);
  return kinds.flatMap((kind) => candidatesOf(kind, said, shop, library));
}

/** What a setting can be, where that is one of a few. */
function valuesOf(setting: string, shop: Shop, library: Library): readonly Candidate[] {
  const kinds = SETTING_KINDS.get(setting) ?? [];
  const taste = OF_TASTE.find((each) => each === setting);
  // "24 h" is the same as "24".
  if (taste !== undefined)
    return plain(Object.keys(TASTE_WORDS[KEYS[taste]]).filter((each) => !each.includes(" ")));
  if (setting === "touches") return plain(["on", "off"]);
  if (setting === "room") return plain([...shop.settings.rooms.keys()]);
  if (setting === "zone") return plain(Intl.supportedValuesOf("timeZone"));
  return kinds.flatMap((kind) => candidatesOf(kind, [], shop, library));
}

/** The words of one kind as the shop and its files have them now. */
function candidatesOf(
  kind: Kind,
  said: readonly string[],
  shop: Shop,
  library: Library,
): readonly Candidate[] {
  const pieces = [...shop.pieces.values()].filter(({ end }) => end === null);
  const { processes } = library;
  const steps = [
    ...pieces.flatMap(({ route }) => route),
    ...processes.flatMap(({ definition }) => definition.steps),
  ];
  switch (kind) {
    case "processes":
      return plain(processes.map(({ definition }) => definition.name));
    case "coats":
      return plain(library.coats.map(({ coat }) => coat.name));
    case "cautions":
      return plain(Object.keys(library.rules.cautions));
    case "stations":
      return plain(steps.map(({ station }) => station));
    case "places":
      return plain([...shop.settings.places.keys(), ...steps.flatMap(({ place }) => place ?? [])]);
    case "steps":
      return plain(stepsOf(said, pieces, library));
    case "tags":
      return pieces.map(({ tag, name }) => ({ word: String(tag), says: name }));
    case "touches":
      return plain(["tacky", "dry", "hard"]);
    case "subwords":
      return plain(["list", "show", "check", "new"]);
    case "weekdays":
      return plain([1, 2, 3, 4, 5, 6, 7].map(sayWeekday));
    case "shells":
      return plain(["bash", "zsh", "fish"]);
    case "settings":
      return plain([...OF_THE_SHOP, ...OF_TASTE]);
    case "hours":
      return plain(["till", "not tonight", "on", "weekdays", "daily", "away", "back"]);
    case "help":
      return plain([...COMMAND_WORDS, ...Object.keys(GLOSSARY), ...Object.keys(library.rules.cautions)]);
  }
}

function plain(words: readonly string[]): readonly Candidate[] {
  return [...new Set(words)].map((word) => ({ word, says: "" }));
}

/** Steps of the pieces already named; of all processes where none is. */
function stepsOf(
  said: readonly string[],
  pieces: readonly Piece[],
  { processes }: Library,
): readonly string[] {
  const tags = said.flatMap((word) => readTags(word) ?? []);
  const routes =
    tags.length === 0
      ? processes.map(({ definition }) => definition.steps)
      : pieces.filter(({ tag }) => tags.includes(tag)).map(({ route }) => route);
  return routes.flatMap((steps) => steps.map(({ name }) => name));
}
