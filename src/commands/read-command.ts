import { type ParseArgsConfig, parseArgs } from "node:util";
import { nearestWord } from "../process/nearest.ts";
import { sayList } from "../words/say-list.ts";
import type { Command, Options } from "./command.ts";
import { CommandWords } from "./command-words.ts";

/** Options every command takes. */
export const COMMON: Options = {
  json: { value: null, says: "answer one JSON object" },
  help: { value: null, says: "how to say it, with examples" },
};

/** What was typed, taken apart. */
export interface CommandLine {
  readonly word: string;
  readonly command: Command;
  readonly words: CommandWords;
}

/**
 * Takes apart what was typed after `dryline`. No word, or options alone, mean `now`.
 *
 * @returns the command with its words, or what is wrong with them
 */
export async function readCommand(
  argv: readonly string[],
): Promise<CommandLine | { readonly problems: readonly string[] }> {
  const [first = "now", ...others] = argv;
  if (first === "--help" || first === "-h") return readCommand(["help", ...others]);
  const [word, rest] = first.startsWith("-") ? ["now", argv] : [first, others];
  const command = await loadCommand(word);
  if (typeof command === "string") return { problems: [command] };
  const read = readOptions(rest, { ...command.options, ...COMMON });
  return "problems" in read ? read : { word, command, words: new CommandWords(read.words, read.options) };
}

/** The command of that word, or what is wrong with it. The program for `now` alone does not hold the table of all. */
async function loadCommand(word: string): Promise<Command | string> {
  if (word === "now") return (await import("./now.ts")).now;
  const { COMMAND_WORDS, COMMANDS } = await import("./command-table.ts");
  const entry = Object.hasOwn(COMMANDS, word) ? COMMANDS[word] : undefined;
  return entry === undefined ? sayUnknown(word, COMMAND_WORDS) : entry.load();
}

function sayUnknown(word: string, known: readonly string[]): string {
  const near = nearestWord(word, known);
  return near === null
    ? `there is no command "${word}": "dryline help" lists them`
    : `there is no command "${word}": perhaps "${near}"`;
}

interface ReadOptions {
  readonly words: readonly string[];
  readonly options: ReadonlyMap<string, readonly string[]>;
}

/** Splits words from options; every unknown option, missing and superfluous value is told. */
function readOptions(
  argv: readonly string[],
  known: Options,
): ReadOptions | { readonly problems: readonly string[] } {
  // Most lines have none, and Node's own reader of them is slow the first time.
  if (!argv.some((word) => word.startsWith("-"))) return { words: argv, options: new Map() };
  const config: NonNullable<ParseArgsConfig["options"]> = {};
  for (const [name, { value }] of Object.entries(known)) {
    config[name] = {
      type: value === null ? "boolean" : "string",
      ...(name === "help" ? { short: "h" } : {}),
    };
  }
  // After a bare `--` all is words, whatever it looks like.
  const ended = argv.includes("--") ? argv.indexOf("--") : argv.length;
  const { tokens } = parseArgs({
    args: argv.map((word, index) => (index < ended ? wholeOption(withMinusSign(word), known) : word)),
    options: config,
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const words: string[] = [];
  const options = new Map<string, string[]>();
  const problems: string[] = [];
  for (const token of tokens) {
    if (token.kind === "positional") words.push(token.value.replace(MINUS_SIGN, "-"));
    if (token.kind !== "option") continue;
    const problem = checkOption(token.name, token.value, known, options.has(token.name));
    if (problem !== null) problems.push(problem);
    options.set(token.name, [...(options.get(token.name) ?? []), token.value ?? ""]);
  }
  return problems.length > 0 ? { problems } : { words, options };
}

const MINUS_SIGN = "\u2212";

/** A figure below nothing is no option: it is passed through with the sign that printers use. */
function withMinusSign(word: string): string {
  return /^-\d/.test(word) ? word.replace("-", MINUS_SIGN) : word;
}

/** An option in short, as `--flash` for `--flash-off`, made whole where only one begins so; others stay as they are. */
function wholeOption(word: string, known: Options): string {
  const [, name = "", value = ""] = /^--([a-z-]{3,})(=.*)?$/s.exec(word) ?? [];
  if (name === "" || Object.hasOwn(known, name)) return word;
  const [only, ...others] = Object.keys(known).filter((each) => each.startsWith(name));
  return only === undefined || others.length > 0 ? word : `--${only}${value}`;
}

/** What is wrong with one option as it was given; null: nothing. `before`: it was given already. */
function checkOption(
  name: string,
  value: string | undefined,
  known: Options,
  before: boolean,
): string | null {
  const option = Object.hasOwn(known, name) ? known[name] : undefined;
  if (option === undefined) {
    const near = nearestWord(name, Object.keys(known));
    const names = Object.keys(known).map((each) => `--${each}`);
    return `there is no option --${name}: ${near === null ? `there are ${sayList(names)}` : `perhaps --${near}`}`;
  }
  if (option.value === null) return value === undefined ? null : `--${name} takes no value`;
  if (value === undefined || value.trim() === "" || value.startsWith("--")) {
    return `--${name} wants a value: --${name} ${option.value}`;
  }
  return before && option.many !== true ? `--${name} is said twice` : null;
}
