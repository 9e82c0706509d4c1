import { JournalTrouble } from "../journal/trouble.ts";
import { MINUTE } from "../time/instant.ts";
import { sayReadOnly } from "../words/say-read-only.ts";
import { saySetAside } from "../words/say-set-aside.ts";
import { saySince } from "../words/say-since.ts";
import type { Workshop } from "../workshop/workshop.ts";
import { askAboutClock } from "./ask-about-clock.ts";
import { doEffect } from "./do-effect.ts";
import { hasTurned } from "./has-turned.ts";
import type { ScreenSize } from "./presenter.ts";
import { readFacts } from "./read-facts.ts";
import type { Store } from "./screen.tsx";
import type { DashboardState, Effect, Facts, Happened, Key } from "./state.ts";
import { firstState } from "./state.ts";
import { update } from "./update.ts";

/** Countdowns tell minutes: a second is fine enough to turn them on time. */
const TICK = 1000;

/** What the planner found can wait while keys come faster than this, in milliseconds: reading a full shop takes longer. */
const HAND_TURNS = 400;

/** The loop: what happens makes the next state and effects, effects make things happen. State lives here, not in React. */
export class DashboardLoop implements Store {
  onSuspend: () => void = () => {};
  readonly #workshop: Workshop;
  readonly #listeners = new Set<() => void>();
  #state: DashboardState;
  #end: (code: number) => void = () => {};
  #fail: (trouble: Error) => void = () => {};
  /** Effects run one after another, so that two fast keys keep their order. */
  #busy: Promise<void> = Promise.resolve();
  #minuteShown = 0;
  /** The planner has found something that was not read yet. */
  #planFound = false;
  /** The kind of doubt that was told last and still holds. */
  #clockTold: string | null = null;

  constructor(workshop: Workshop, size: ScreenSize) {
    this.#workshop = workshop;
    this.#state = firstState(size, workshop.now());
  }

  readonly state = (): DashboardState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly press = (key: Key): void => this.happen({ is: "key", key, now: this.#workshop.now() });

  readonly control = (char: string): void => {
    if (char === "c") this.end(130);
    if (char === "z") this.onSuspend();
  };

  /** Runs until the maker quits (0) or something ends it. */
  async run(): Promise<number> {
    const ended = new Promise<number>((resolve, reject) => {
      this.#end = resolve;
      this.#fail = reject;
    });
    this.read();
    this.#queue(() => this.#greet());
    const stopNews = this.#workshop.onNews(() => this.read());
    const stopPlanning = this.#workshop.startPlanning(() => this.#hearPlan());
    const timer = setInterval(() => this.#tick(), TICK);
    try {
      return await ended;
    } finally {
      stopNews();
      stopPlanning();
      clearInterval(timer);
    }
  }

  /** Settles once there is something to show. */
  firstFacts(): Promise<void> {
    return new Promise((resolve) => {
      const stop = this.subscribe(() => {
        if (this.#state.facts === null) return;
        stop();
        resolve();
      });
    });
  }

  end(code: number): void {
    this.#end(code);
  }

  /** Ends `run` by throwing this trouble. */
  fail(trouble: unknown): void {
    this.#fail(trouble instanceof Error ? trouble : new Error(String(trouble)));
  }

  /** Reads the workshop again. */
  read(): void {
    this.#planFound = false;
    this.#queue(async () => this.happen({ is: "facts", facts: await readFacts(this.#workshop) }));
  }

  happen(happened: Happened): void {
    const { state, effects } = update(this.#state, happened);
    if (state !== this.#state) {
      this.#state = state;
      for (const listener of this.#listeners) listener();
    }
    for (const effect of effects) this.#do(effect);
  }

  #do(effect: Effect): void {
    if (effect.do === "quit") this.end(0);
    else if (effect.do === "read") this.read();
    else {
      this.#queue(async () => {
        const { facts } = this.#state;
        if (facts === null) return;
        const speech = { ...facts.speech, now: this.#workshop.now() };
        this.happen(await doEffect(effect, this.#workshop, speech).catch(unlessTold));
        // What was done is painted before anything is reckoned anew.
        await new Promise((resolve) => setImmediate(resolve));
        this.happen({ is: "facts", facts: await readFacts(this.#workshop) });
      });
    }
  }

  /** Facts are read again when the minute turns or a moment of theirs has come: until then nothing else changes. */
  #tick(): void {
    const now = this.#workshop.now();
    this.happen({ is: "tick", now });
    this.#queue(() => this.#doubtClock());
    this.#readPlan();
    const { facts } = this.#state;
    const minute = Math.floor(now / MINUTE);
    if (minute === this.#minuteShown && (facts === null || !hasTurned(facts.answer, now))) return;
    this.#minuteShown = minute;
    this.read();
  }

  #hearPlan(): void {
    this.#planFound = true;
    this.#readPlan();
  }

  #readPlan(): void {
    const sinceKey = this.#workshop.now() - this.#state.lastKeyAt;
    if (this.#planFound && (sinceKey < 0 || sinceKey >= HAND_TURNS)) this.read();
  }

  #queue(work: () => Promise<void>): void {
    this.#busy = this.#busy.then(work).catch((trouble: unknown) => this.fail(trouble));
  }

  /** What should be known as it opens: files that cannot be used or only be read, and what came about since. */
  async #greet(): Promise<void> {
    const { facts, message } = this.#state;
    if (facts === null) return;
    const { journal, places, tasteTrouble } = this.#workshop;
    const readOnly = sayReadOnly(journal, places.data);
    const aside = saySetAside((await this.#workshop.shop()).setAside);
    const warnings = [message?.text ?? "", readOnly, tasteTrouble ?? "", ...aside].filter(Boolean);
    const said = [...warnings, await this.#sinceYouWereHere(facts)].filter(Boolean);
    if (said.length === 0) return;
    const tone = warnings.length > 0 ? "refused" : "told";
    this.happen({ is: "told", message: { text: said.join(" "), tone } });
  }

  async #sinceYouWereHere(facts: Facts): Promise<string> {
    // Who typed a command was here too.
    const { acts } = await this.#workshop.shop();
    const own = acts.findLast(({ by }) => by === this.#workshop.by)?.events[0]?.recorded;
    const since = Math.max(this.#workshop.lastSeen() ?? 0, own ?? 0);
    if (since === 0) return "";
    const lines = saySince(facts.answer, since, facts.speech);
    return lines.length === 0 ? "" : `Since you were here: ${lines.join("; ")}.`;
  }

  /** A clock that was set, or runs behind the journal, is told once; nothing is decided before the maker answers. */
  async #doubtClock(): Promise<void> {
    const doubt = await this.#workshop.clockDoubt();
    const { facts } = this.#state;
    if (doubt === null || facts === null) this.#clockTold = null;
    else if (this.#clockTold !== doubt.kind) {
      this.#clockTold = doubt.kind;
      const speech = { ...facts.speech, now: this.#workshop.now() };
      this.happen({ is: "overlay", overlay: await askAboutClock(doubt, this.#workshop, speech) });
    }
  }
}

/** An act that could not be written down is told: the shop is still there to be seen. */
function unlessTold(trouble: unknown): Happened {
  if (!(trouble instanceof JournalTrouble)) throw trouble;
  return { is: "told", message: { text: trouble.message, tone: "refused" } };
}
