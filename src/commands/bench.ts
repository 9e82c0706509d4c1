import { breakLine } from "../words/lay-out.ts";
import { plainText } from "../words/plain-text.ts";
import type { Speech } from "../words/speech.ts";
import type { Workshop } from "../workshop/workshop.ts";

/** The world of one command, handed in: tests run commands in the same process with streams of their own. */
export interface CommandContext {
  readonly openWorkshop: () => Promise<Workshop>;
  readonly version: string;
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** Both stdin and stdout are a terminal: a question can be asked. */
  readonly isTerminal: boolean;
  /** Shows one line on stderr while a command thinks, null takes it away; left out: stderr is no terminal. */
  readonly thinking?: ((line: string | null) => void) | undefined;
  /** Width of the terminal; null: stdout is none, and nothing is cut. */
  readonly columns: number | null;
  /** Shows a shop on the dashboard until the maker quits; only where there is a terminal. */
  readonly openDashboard: (workshop: Workshop) => Promise<number>;
  /** A plan is searched for so many rounds at most; not said, time alone counts. */
  readonly planRounds?: number;
  /** What comes by standard input, as it comes. */
  readonly input: () => AsyncIterable<string>;
  /** Puts a question to the maker; only where there is a terminal. */
  readonly ask: (question: string) => Promise<string>;
}

/** The open workshop and how things are said in it now. */
export interface Opened {
  readonly workshop: Workshop;
  readonly speech: Speech;
}

/** Where a command works: the workshop, opened when first asked for, and the maker to be asked. */
export class Bench {
  readonly context: CommandContext;
  readonly json: boolean;
  #opened: Promise<Opened> | null = null;

  constructor(context: CommandContext, json: boolean) {
    this.context = context;
    this.json = json;
  }

  /** The open workshop; opened once, however often it is asked for. */
  open(): Promise<Opened> {
    this.#opened ??= this.#open();
    return this.#opened;
  }

  /** Whether questions can be asked: a terminal, and no program that reads the answer. */
  get mayAsk(): boolean {
    return this.context.isTerminal && !this.json;
  }

  /** Shows lines at once, before a question. */
  tell(lines: readonly string[]): void {
    for (const line of lines) this.context.out(`${breakLine(plainText(line), this.context.columns)}\n`);
  }

  /** Puts a question that is answered by yes or no; anything but a yes is a no. */
  async agrees(question: string): Promise<boolean> {
    return /^y(es)?$/i.test((await this.context.ask(`${plainText(question)} `)).trim());
  }

  /** Says on stderr, once, that the clock cannot be trusted and what can be done; nothing where nothing was opened. */
  async doubtClock(): Promise<void> {
    if (this.#opened === null || this.json) return;
    const { workshop } = await this.#opened;
    const doubt = await workshop.newClockDoubt();
    if (doubt === null) return;
    const { sayClockDoubt } = await import("../words/say-clock-doubt.ts");
    const amend = `dryline amend clock ${Math.abs(doubt.minutes)}m`;
    this.#warn(`${sayClockDoubt(doubt)}: if the clock is right now, ${amend} sets that back.`);
  }

  /** Says on stderr that the taste kept cannot be read, and that nothing can be recorded where the journal can only be read. */
  async tellFileTroubles(): Promise<void> {
    if (this.#opened === null || this.json) return;
    const { workshop } = await this.#opened;
    if (workshop.tasteTrouble !== null) this.#warn(workshop.tasteTrouble);
    if (workshop.journal.canWrite) return;
    const { sayReadOnly } = await import("../words/say-read-only.ts");
    this.#warn(sayReadOnly(workshop.journal, workshop.places.data));
  }

  async close(): Promise<void> {
    if (this.#opened === null) return;
    const opened = await this.#opened.catch(() => null);
    opened?.workshop.close();
  }

  #warn(sentence: string): void {
    this.context.err(`${breakLine(plainText(sentence), this.context.columns)}\n`);
  }

  async #open(): Promise<Opened> {
    const workshop = await this.context.openWorkshop();
    const zone = await workshop.zone();
    return {
      workshop,
      speech: {
        zone,
        now: workshop.now(),
        clock24: workshop.taste.clock === "24 h",
        units: workshop.taste.units,
      },
    };
  }
}
