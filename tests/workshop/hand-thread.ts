import type { PlanRow } from "../../src/journal/journal.ts";
import { type PlanJob, type PlanNews, PlanWork } from "../../src/plan/plan-work.ts";
import type { PlannerListener, PlannerThread } from "../../src/workshop/planner-thread.ts";

/** A planner's thread that a test moves on by hand: what it is asked is kept, and worked on when the test says. */
export class HandThread implements PlannerThread {
  readonly jobs: PlanJob[] = [];
  ended = false;
  #listener: PlannerListener | null = null;
  #work: PlanWork | null = null;

  readonly start = (listener: PlannerListener): PlannerThread => {
    this.#listener = listener;
    return this;
  };

  ask(makeJob: () => PlanJob): void {
    const job = makeJob();
    this.jobs.push(job);
    this.#work = new PlanWork(job);
  }

  end(): void {
    this.ended = true;
  }

  /** Works on the newest job to its end, and tells what it finds unless the test wants it held back. */
  async workOn(tell: (news: PlanNews) => void = (news) => this.tell(news)): Promise<void> {
    const work = this.#work;
    while (work !== null && !work.ended) {
      const news = work.step(true);
      if (news !== null) tell(news);
    }
    // What is kept is kept by promises.
    await new Promise((resolve) => setImmediate(resolve));
  }

  tell(news: PlanNews): void {
    this.#listener?.onNews(news);
  }

  die(): void {
    this.#listener?.onDeath();
  }
}

/** The row of a journal, in memory. */
export class HandJournal {
  row: PlanRow | null = null;
  newest: number;
  air = 0;
  /** It may not be written. */
  readOnly = false;

  constructor(newest: number) {
    this.newest = newest;
  }

  async newestAir(): Promise<number> {
    return this.air;
  }

  async plan(): Promise<PlanRow | null> {
    return this.row;
  }

  async keepPlan(row: PlanRow): Promise<boolean> {
    if (this.readOnly) throw new Error("read only");
    if (row.seq !== this.newest) return false;
    this.row = row;
    return true;
  }
}
