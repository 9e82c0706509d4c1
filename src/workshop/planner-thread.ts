import type { Worker } from "node:worker_threads";
import type { PlanJob, PlanNews } from "../plan/plan-work.ts";

/** What is told of the thread. */
export interface PlannerListener {
  readonly onNews: (news: PlanNews) => void;
  /** It ended by itself: nothing more will come. */
  readonly onDeath: () => void;
}

/** The other thread, as those who ask it see it. */
export interface PlannerThread {
  /** The newest job takes the place of the one before. It is made once whoever asks has painted what it has. */
  ask(makeJob: () => PlanJob): void;
  end(): void;
}

/**
 * The thread that searches for plans: it is started when it is first asked, and never keeps the program from ending.
 *
 * @param file its program: plan-worker.ts as built
 */
export function startPlannerThread(file: string, { onNews, onDeath }: PlannerListener): PlannerThread {
  let worker: Worker | null = null;
  let waiting: (() => PlanJob) | null = null;
  let alive = true;
  const die = (): void => {
    if (alive) onDeath();
    alive = false;
  };
  const begin = (started: Worker): Worker => {
    started.unref();
    started.on("message", (news: PlanNews) => {
      if (alive) onNews(news);
    });
    // An error is followed by the exit; without a listener it would end the whole program.
    started.on("error", die);
    started.on("exit", die);
    return started;
  };
  const put = async (): Promise<void> => {
    // Node takes milliseconds to load what threads need.
    const { Worker } = await import("node:worker_threads");
    const makeJob = waiting;
    waiting = null;
    if (!alive || makeJob === null) return;
    worker ??= begin(new Worker(file, { execArgv: [] }));
    worker.postMessage(makeJob());
  };
  return {
    ask(makeJob) {
      if (waiting === null) setImmediate(put);
      waiting = makeJob;
    },
    end() {
      alive = false;
      void worker?.terminate();
    },
  };
}
