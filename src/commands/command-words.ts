import type { Tag } from "../journal/event.ts";
import { parseDuration } from "../time/duration.ts";
import type { Instant, Minutes } from "../time/instant.ts";
import { after } from "../time/instant.ts";
import type { Direction } from "../time/read-date.ts";
import { readMoment } from "../time/read-moment.ts";
import { readTags } from "../words/read-tags.ts";
import { readMoney } from "../words/say-money.ts";
import type { Speech } from "../words/speech.ts";

/**
 * The words after a command, read one by one. What cannot be read is added to `problems`, so that all of them are
 * told at once; the value then given back only lets reading go on, and nothing may be done with it.
 */
export class CommandWords {
  readonly problems: string[] = [];
  readonly #words: string[];
  readonly #options: ReadonlyMap<string, readonly string[]>;

  /**
   * @param words those that are no options
   * @param options their values by name; an option without a value has one empty text
   */
  constructor(words: readonly string[], options: ReadonlyMap<string, readonly string[]>) {
    this.#words = [...words];
    this.#options = options;
  }

  /** The tags that stand first: `12-14 16`. None is no problem. */
  tags(): readonly Tag[] {
    const tags: Tag[] = [];
    for (let read = readTags(this.#words[0] ?? ""); read !== null; read = readTags(this.#words[0] ?? "")) {
      tags.push(...read);
      this.#words.shift();
    }
    return [...new Set(tags)];
  }

  /** The same where there must be some. */
  needTags(): readonly Tag[] {
    const tags = this.tags();
    if (tags.length === 0)
      this.problems.push(
        `say which tags${this.#words[0] === undefined ? "" : `, not "${this.#words[0]}"`}: 14, 12-14 16`,
      );
    return tags;
  }

  /** The next word; null: none is left. */
  word(): string | null {
    return this.#words.shift() ?? null;
  }

  /** All words that are left, without taking them. */
  ahead(): readonly string[] {
    return this.#words;
  }

  /** All words that are left as one text; null: none. */
  rest(): string | null {
    const rest = this.#words.splice(0).join(" ").trim();
    return rest === "" ? null : rest;
  }

  /** The same where there must be some. `what` is "say what was noted: ..." */
  needRest(what: string): string {
    const rest = this.rest();
    if (rest === null) this.problems.push(what);
    return rest ?? "";
  }

  has(option: string): boolean {
    return this.#options.has(option);
  }

  /** The value of an option; null: not given. */
  option(name: string): string | null {
    return this.#options.get(name)?.at(-1) ?? null;
  }

  /** All values of an option that may be given several times. */
  options(name: string): readonly string[] {
    return this.#options.get(name) ?? [];
  }

  /** The same where it must be given. `what` is "say how long it took: --minutes 10" */
  needOption(name: string, what: string): string {
    const value = this.option(name);
    if (value === null) this.problems.push(what);
    return value ?? "";
  }

  /** Minutes of an option: a bare number, or a duration. */
  minutes(name: string): Minutes | null {
    const said = this.option(name);
    if (said === null) return null;
    const minutes = /^\d+$/.test(said) ? parseDuration(`${said} min`) : parseDuration(said);
    if (minutes === null)
      this.problems.push(`--${name} "${said}" is no length of time: write 10 or "1 h 30"`);
    return minutes;
  }

  /** A whole number of an option, at least 1. */
  count(name: string): number | null {
    const said = this.option(name);
    if (said === null) return null;
    const fits = /^\d{1,6}$/.test(said) && Number(said) > 0;
    if (!fits) this.problems.push(`--${name} "${said}" is no count: write a whole number from 1`);
    return fits ? Number(said) : null;
  }

  /** Money of an option, in the smallest unit. */
  money(name: string): number | null {
    const said = this.option(name);
    if (said === null) return null;
    const money = readMoney(said);
    if (money === null) this.problems.push(`--${name} "${said}" is no amount: write 28 or 28.50`);
    return money;
  }

  /** A moment of an option: the last that was, or the next to come. */
  moment(name: string, speech: Speech, prefer: Direction = "past"): Instant | null {
    const said = this.option(name);
    if (said === null) return null;
    return this.#readMoment(said, { ...speech, prefer });
  }

  /** When it was: `--at`, `--ago`, else now. */
  when(speech: Speech): Instant {
    const ago = this.option("ago");
    if (ago === null) return this.moment("at", speech) ?? speech.now;
    if (this.has("at")) this.problems.push("say --at or --ago, not both");
    const minutes = parseDuration(/^\d+$/.test(ago) ? `${ago} min` : ago);
    if (minutes === null) this.problems.push(`--ago "${ago}" is no length of time: write 20m or "1 h 30"`);
    return after(speech.now, -(minutes ?? 0));
  }

  /** A moment said among the words. */
  readMomentOf(said: string, speech: Speech): Instant {
    return this.#readMoment(said, speech);
  }

  /** A word or option was given that nothing has read: a problem. */
  nothingMore(): void {
    const rest = this.rest();
    if (rest !== null) this.problems.push(`"${rest}" is more than this takes`);
  }

  #readMoment(said: string, speech: Speech & { readonly prefer?: Direction }): Instant {
    const read = readMoment(said, speech);
    if ("instant" in read) return read.instant;
    this.problems.push(withoutStop(read.problem));
    return speech.now;
  }
}

/** Sentences of the rooms below end with a full stop, ours get theirs when they are printed. */
export function withoutStop(sentence: string): string {
  return sentence.replace(/\.$/, "");
}
