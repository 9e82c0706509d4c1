/**
 * The thread that searches for plans, a bundle of its own: nothing it takes holds up a key. It works on the newest job
 * alone, and looks at the clock and for a newer job only between two steps of the work.
 */
import { getPriority, setPriority } from "node:os";
import { platform } from "node:process";
import { type MessagePort, parentPort } from "node:worker_threads";
import { type PlanJob, PlanWork } from "../plan/plan-work.ts";

/** Better plans are told at most so often, in milliseconds: four times a second. */
const TELL_EVERY = 250;

/** Steps are taken for so long, in milliseconds, before a newer job is looked for. */
const LOOK_EVERY = 10;

/** How far the thread stands back behind the one that draws, on a machine with less to give than is asked: as `nice` counts. */
const STAND_BACK = 5;

/** Works on the newest of the jobs that come through a port, until the thread is ended. */
function workFor(port: MessagePort): void {
  let work: PlanWork | null = null;
  let told = Number.NEGATIVE_INFINITY;
  const goOn = (): void => {
    for (const begun = performance.now(); work !== null && performance.now() - begun < LOOK_EVERY; ) {
      const news = work.step(performance.now() - told >= TELL_EVERY);
      if (work.ended) work = null;
      if (news === null) continue;
      if (news.plan !== null) told = performance.now();
      port.postMessage(news);
    }
    if (work !== null) setImmediate(goOn);
  };
  port.on("message", (job: PlanJob) => {
    const idle = work === null;
    work = new PlanWork(job);
    if (idle) setImmediate(goOn);
  });
}

if (parentPort === null) throw new Error("plan-worker.ts is run as a thread");
// Elsewhere than on Linux this would hold back the whole program. One that was started standing further back may not come
// forward.
if (platform === "linux") setPriority(Math.max(STAND_BACK, getPriority()));
workFor(parentPort);
