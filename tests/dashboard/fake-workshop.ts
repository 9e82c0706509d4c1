import type { ActRequest } from "../../src/acts/request.ts";
import type { Journal } from "../../src/journal/journal.ts";
import type { NowAnswer } from "../../src/plan/now-answer.ts";
import { foldShop } from "../../src/shop/fold.ts";
import type { BenchHours } from "../../src/time/bench-hours.ts";
import type { Instant } from "../../src/time/instant.ts";
import type { Zone } from "../../src/time/zone.ts";
import type { ClockDoubt } from "../../src/workshop/clock-watch.ts";
import { USUAL_TASTE } from "../../src/workshop/taste.ts";
import type { Outcome, Workshop } from "../../src/workshop/workshop.ts";
import { dublin, eveningHours } from "../fixtures/week-time.ts";
import { busyAnswer, evening } from "./made-answer.ts";

const empty = foldShop({
  newest: 0,
  newestRecorded: null,
  nextTag: 1,
  events: [],
  definitions: {},
  setAside: [],
});

function unasked(): never {
  throw new Error("the tests of the dashboard do not ask this");
}

/** A workshop whose answers a test lays down by hand, and which keeps what it was asked to do. */
export class FakeWorkshop implements Workshop {
  answer: NowAnswer = busyAnswer();
  at: Instant = evening;
  doubt: ClockDoubt | null = null;
  seen: Instant | null = null;
  outcome: (request: ActRequest) => Outcome = (request) => ({
    done: 1,
    events: [
      {
        seq: 1,
        act: 1,
        v: 1,
        at: request.at,
        recorded: request.at,
        by: "maker",
        tag: null,
        station: null,
        together: 1,
        kind: "noted",
        text: `did ${request.act}`,
      },
    ],
    shop: empty,
  });
  /** Thrown by the next reading. */
  trouble: Error | null = null;
  readonly performed: ActRequest[] = [];
  /** Who is told when a better plan was found. */
  readonly planners = new Set<() => void>();
  readonly by = "maker";
  readonly taste = USUAL_TASTE;
  readonly tasteTrouble = null;
  readonly places = { config: "", data: "", state: "", cache: "" };
  readonly journal: Journal = {
    canWrite: true,
    isFull: false,
    append: unasked,
    read: unasked,
    stepTimes: unasked,
    pieces: async () => [],
    plan: async () => null,
    keepPlan: unasked,
    cureTests: async () => [],
    keepCureTests: unasked,
    appendAir: unasked,
    air: async () => [],
    airByHour: async () => [],
    newestAir: async () => 0,
    rebuild: unasked,
    version: () => 1,
    close: unasked,
  };
  readonly #listeners = new Set<() => void>();

  now(): Instant {
    return this.at;
  }

  async zone(): Promise<Zone> {
    return dublin;
  }

  async hours(): Promise<BenchHours> {
    return eveningHours;
  }

  async readLibrary() {
    return { processes: [], coats: [], rules: { cautions: {}, keepApart: [] }, problems: [] };
  }

  async rules() {
    return (await this.readLibrary()).rules;
  }

  async shop() {
    return empty;
  }

  async whatNow(): Promise<NowAnswer> {
    if (this.trouble !== null) throw this.trouble;
    return { ...this.answer, at: this.at };
  }

  async recordAir(): Promise<never> {
    return unasked();
  }

  async compareFinishes(): Promise<never> {
    return unasked();
  }

  async planContext(): Promise<never> {
    return unasked();
  }

  async readPlan() {
    return null;
  }

  startPlanning(listener: () => void): () => void {
    this.planners.add(listener);
    return () => this.planners.delete(listener);
  }

  async perform(request: ActRequest): Promise<Outcome> {
    this.performed.push(request);
    return this.outcome(request);
  }

  async clockDoubt(): Promise<ClockDoubt | null> {
    return this.doubt;
  }

  newClockDoubt(): Promise<ClockDoubt | null> {
    return this.clockDoubt();
  }

  clockIsRight(): void {
    this.doubt = null;
  }

  onNews(listener: () => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Another terminal has written. */
  tellNews(): void {
    for (const listener of this.#listeners) listener();
  }

  lastSeen(): Instant | null {
    return this.seen;
  }

  markSeen(): void {
    this.seen = this.at;
  }

  close(): void {}
}
