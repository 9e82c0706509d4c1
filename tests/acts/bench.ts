import { decide } from "../../src/acts/decide.ts";
import type { Decision } from "../../src/acts/decision.ts";
import type { Refusal } from "../../src/acts/refusal.ts";
import type { ActRequest } from "../../src/acts/request.ts";
import type { By, JournalEvent, Tag } from "../../src/journal/event.ts";
import type { Reading } from "../../src/journal/journal.ts";
import type { ProcessDefinition } from "../../src/process/definition.ts";
import type { Step } from "../../src/process/step.ts";
import type { SafetyRules } from "../../src/safety/rules.ts";
import { foldShop } from "../../src/shop/fold.ts";
import type { Piece, Shop } from "../../src/shop/shop.ts";
import type { StepState } from "../../src/shop/states.ts";
import { stepState } from "../../src/shop/step-state.ts";
import type { BenchHours } from "../../src/time/bench-hours.ts";
import type { Instant } from "../../src/time/instant.ts";
import { walker, walkerRules } from "../fixtures/walker.ts";
import { at, dublin, eveningHours } from "../fixtures/week-time.ts";

type Request<Act extends ActRequest["act"]> = Extract<ActRequest, { act: Act }>;
type Some<Act extends ActRequest["act"]> = Partial<Omit<Request<Act>, "act" | "tags">>;
type Tags = Tag | readonly Tag[];

/** What a refused act is known by in tests, beside its facts. */
export type Answer = { readonly events: readonly JournalEvent[] } | { readonly refusal: Refusal };

const asList = (tags: Tags): readonly Tag[] => (typeof tags === "number" ? [tags] : tags);

/**
 * A maker at a bench whose journal is a list: asks `decide`, and writes down what it allows as the journal would. Its
 * clock stands until `clock` is moved; what is asked is dated now unless said.
 */
export class Bench {
  readonly events: JournalEvent[] = [];
  clock: Instant;
  by: By = "maker";
  hours: BenchHours = eveningHours;
  rules: SafetyRules = walkerRules;
  /** Every caution is ticked with the work, so that a test of something else need not read. */
  reads = true;
  private readonly definition: ProcessDefinition;
  private readonly definitions: Record<string, ProcessDefinition> = {};

  constructor(now: string | Instant, definition: ProcessDefinition = walker) {
    this.clock = typeof now === "string" ? at(now) : now;
    this.definition = definition;
  }

  get context() {
    const usualMinutes = (_: string, step: Step) => step.handsOn.likely;
    const { clock: now, hours, rules, by } = this;
    return { now, zone: dublin, hours, rules, by, usualMinutes };
  }

  ask(request: ActRequest): Answer {
    const decision = decide(request, this.shop, this.context);
    if ("refusal" in decision) return decision;
    const act = this.events.length + 1;
    for (const { hash, definition } of decision.processes) this.definitions[hash] = definition;
    const written = decision.events.map((event, index): JournalEvent => {
      const together = decision.events.filter(({ kind, tag }) => kind === event.kind && tag !== null).length;
      return { ...event, seq: act + index, act, v: 1, recorded: this.clock, by: this.by, together };
    });
    this.events.push(...written);
    return { events: written };
  }

  /** What is decided of a request, not written down. */
  decision(request: ActRequest): Extract<Decision, { events: unknown }> {
    const decision = decide(request, this.shop, this.context);
    if ("refusal" in decision) throw new Error(decision.refusal.code);
    return decision;
  }

  /** Moves the clock to a time of the week. */
  at(when: string): this {
    this.clock = at(when);
    return this;
  }

  tag(count = 1, more: Some<"tag"> = {}): Answer {
    const process = { hash: "hash", definition: this.definition };
    const plain = { name: null, scheme: [], due: null, price: null, for: null, hung: null };
    return this.ask({ act: "tag", at: this.clock, process, count, ...plain, ...more });
  }

  take(tags: Tags, more: Some<"take"> = {}): Answer {
    const plain = { step: null, colour: null, anyway: null, ticked: this.ticked };
    return this.ask({ act: "take", at: this.clock, tags: asList(tags), ...plain, ...more });
  }

  hang(tags: Tags, more: Some<"hang"> = {}): Answer {
    const plain = { step: null, colour: null, flashOff: null, place: null, result: null, asUsual: false };
    return this.ask({
      act: "hang",
      at: this.clock,
      tags: asList(tags),
      ...plain,
      anyway: null,
      ticked: [],
      ...more,
    });
  }

  leave(tags: Tags, more: Some<"leave"> = {}): Answer {
    return this.ask({ act: "leave", at: this.clock, tags: asList(tags), ...more });
  }

  touch(tags: Tags, found: Request<"touch">["found"], more: Some<"touch"> = {}): Answer {
    return this.ask({ act: "touch", at: this.clock, tags: asList(tags), found, ...more });
  }

  move(tags: Tags, place: string, more: Some<"move"> = {}): Answer {
    return this.ask({ act: "move", at: this.clock, tags: asList(tags), place, ...more });
  }

  mend(tags: Tags, goOnFrom: string, more: Some<"mend"> = {}): Answer {
    const plain = { what: "level the run", minutes: 10 };
    return this.ask({ act: "mend", at: this.clock, tags: asList(tags), goOnFrom, ...plain, ...more });
  }

  measure(tags: Tags, value: number, more: Some<"measure"> = {}): Answer {
    const plain = { what: "wood moisture", unit: "%" };
    return this.ask({ act: "measure", at: this.clock, tags: asList(tags), value, ...plain, ...more });
  }

  scrap(tags: Tags, why = "dropped", more: Some<"scrap"> = {}): Answer {
    return this.ask({ act: "scrap", at: this.clock, tags: asList(tags), why, ...more });
  }

  note(tags: Tags, text = "a knot near the eye", more: Some<"note"> = {}): Answer {
    return this.ask({ act: "note", at: this.clock, tags: asList(tags), text, ...more });
  }

  change(tags: Tags, more: Some<"change">): Answer {
    return this.ask({ act: "change", at: this.clock, tags: asList(tags), ...more });
  }

  route(tags: Tags, change: Request<"route">["change"], why: string | null = null): Answer {
    return this.ask({ act: "route", at: this.clock, tags: asList(tags), change, why });
  }

  ready(station: string, more: Some<"ready"> = {}): Answer {
    const plain = { what: null, begun: null, beginning: false, anyway: null, ticked: this.ticked };
    return this.ask({ act: "ready", at: this.clock, station, ...plain, ...more });
  }

  putAway(station: string, more: Some<"put away"> = {}): Answer {
    return this.ask({ act: "put away", at: this.clock, station, ...more });
  }

  tick(caution: string): Answer {
    return this.ask({ act: "tick", at: this.clock, caution });
  }

  amend(target: Request<"amend">["target"] | Tag, time: string | Instant): Answer {
    return this.ask({
      act: "amend",
      at: this.clock,
      target: typeof target === "number" ? { tag: target } : target,
      time: typeof time === "string" ? at(time) : time,
    });
  }

  undo(target: number | null = null): Answer {
    return this.ask({ act: "undo", at: this.clock, target });
  }

  settle(setting: Request<"settle">["setting"]): Answer {
    return this.ask({ act: "settle", at: this.clock, setting });
  }

  setClock(minutes: number, span: Partial<Pick<Request<"clock">, "since" | "until">> = {}): Answer {
    return this.ask({ act: "clock", at: this.clock, minutes, since: null, until: null, ...span });
  }

  /** Hangs every step before this one for a piece, a minute apart, the last as said: its coats' windows not heeded. */
  workUpTo(tag: Tag, step: string, last: string | Instant): void {
    const until = typeof last === "string" ? at(last) : last;
    const before = this.piece(tag).route.map(({ name }) => name);
    const done = before.slice(0, before.indexOf(step));
    const now = this.clock;
    done.forEach((name, index) => {
      this.clock = until - (done.length - 1 - index) * 60_000;
      const answer = this.hang(tag, { step: name, anyway: { reason: "long ago" } });
      if ("refusal" in answer) throw new Error(`${name} of ${tag}: ${answer.refusal.code}`);
    });
    this.clock = now;
  }

  reading(): Reading {
    const tags = this.events.map(({ tag }) => tag ?? 0);
    const recorded = this.events.map((event) => event.recorded);
    return {
      newest: this.events.length,
      newestRecorded: recorded.length === 0 ? null : Math.max(...recorded),
      nextTag: Math.max(0, ...tags) + 1,
      events: [...this.events],
      definitions: this.definitions,
      setAside: [],
    };
  }

  get shop(): Shop {
    return foldShop(this.reading());
  }

  piece(tag: Tag): Piece {
    const piece = this.shop.pieces.get(tag);
    if (piece === undefined) throw new Error(`no piece ${tag}`);
    return piece;
  }

  state(tag: Tag, step: string): StepState {
    return stepState(this.piece(tag), step, this.context);
  }

  private get ticked(): readonly string[] {
    return this.reads ? Object.keys(this.rules.cautions) : [];
  }
}

/** What was written, each event shortly: `taken 1 seal`, `readied lead pot`. A refusal gives its code. */
export function told(answer: Answer): readonly string[] {
  if ("refusal" in answer) return [`no: ${answer.refusal.code}`];
  return answer.events.map((event) => {
    const where = event.tag ?? event.station ?? "";
    const what =
      "step" in event
        ? `${event.step}${"part" in event && event.part === "preparation" ? " (preparation)" : ""}`
        : "caution" in event
          ? event.caution
          : "setUp" in event
            ? event.setUp
            : "";
    return [event.kind, where, what].filter((word) => word !== "").join(" ");
  });
}

/** The refusal of an answer, for its facts. */
export function refusalOf(answer: Answer): Refusal {
  if ("refusal" in answer) return answer.refusal;
  throw new Error(`allowed: ${told(answer).join(", ")}`);
}
