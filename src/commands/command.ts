import type { Refusal } from "../acts/refusal.ts";
import type { Bench } from "./bench.ts";
import type { CommandWords } from "./command-words.ts";

/** One option of a command: what its value is called in help (null: it takes none), and what it says. */
interface Option {
  readonly value: string | null;
  readonly says: string;
  /** May be given several times. */
  readonly many?: true;
}

/** Options by name, without their dashes. */
export type Options = Readonly<Record<string, Option>>;

/** Where a command stands in the overview. */
export type Group = "what now" | "at the bench" | "the shop" | "the trade" | "beside";

/** One word of the command line. */
export interface Command {
  /** The ways to say it, without `dryline` and the options. */
  readonly usage: readonly string[];
  /** What it does, in one line. */
  readonly says: string;
  readonly options: Options;
  /** Whole command lines without `dryline`, each with what it does. */
  readonly examples: readonly (readonly [line: string, says: string])[];
  readonly run: (words: CommandWords, bench: Bench) => Promise<Answer>;
}

/** What came of a command; how it is printed and which exit code it has is settled in one place. */
export type Answer =
  /** Exit 0. `json` is the object of `--json`. */
  | { readonly text: readonly string[]; readonly json: object }
  /** Exit 2: the words or a file are wrong, a sentence for each. */
  | { readonly problems: readonly string[] }
  /** Exit 2 or 3; `help` says how to do it in this command's words. */
  | { readonly refusal: Refusal; readonly help?: string };

/** Options of commands that say what was done: when it was. */
export const WHEN: Options = {
  at: { value: "TIME", says: 'when it was: 20:15, "yesterday 20:00", "Tue 18:40"' },
  ago: { value: "TIME", says: "how long ago it was: 20m" },
};

/** The option of commands that only tell. */
export const AS_OF: Options = {
  at: { value: "TIME", says: "as it is at that time, by what is known now" },
};

/** The option by which a refusal that advises waiting is overridden. */
export const ANYWAY: Options = {
  anyway: { value: "REASON", says: "go on although dryline advises to wait; the reason is kept" },
};

/** Options of commands that may want a caution read. */
export const TICKED: Options = {
  ticked: { value: "CAUTION", says: "this caution was read now", many: true },
};
