import { Worker } from "node:worker_threads";
import type { PlanJob, PlanNews } from "../plan/plan-work.ts";

/** What is told of the thread. */
export interface PlannerListener {
  readonly onNews: (news: PlanNews) => void;
  /** It ended by itself: nothing more will come. */
  readonly onDeath: () => void;
}

/** The other thread, as those who ask it see it. */
export interface PlannerThread {
  /** The newest job takes the place of the one before. */
  ask(job: PlanJob): void;
  end(): void;
}

/**
 * Starts the thread that searches for plans, once whoever asks has painted what it has. It never keeps the program
 * from ending.
 *
 * @param file its program: plan-worker.ts as built
 */
export function startPlannerThread(file: string, { onNews, onDeath }: PlannerListener): PlannerThread {
  let worker: Worker | null = null;
  let waiting: PlanJob | null = null;
  let alive = true;
  const die = (): void => {
    if (alive) onDeath();
    alive = false;
  };
  const begin = (): void => {
    if (!alive) return;
    worker = new Worker(file, { execArgv: [] });
    worker.unref();
    worker.on("message", (news: PlanNews) => {
      if (alive) onNews(news);
    });
    // An error is followed by the exit; without a listener it would end the whole program.
    worker.on("error", die);
    worker.on("exit", die);
    if (waiting !== null) worker.postMessage(waiting);
  };
  setImmediate(begin);
  return {
    ask(job) {
      if (worker === null) waiting = job;
      else worker.postMessage(job);
    },
    end() {
      alive = false;
      void worker?.terminate();
    },
  };
}
