import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import { builtFolder } from "../../src/fresh.mjs";
import type { PlanJob, PlanNews } from "../../src/plan/plan-work.ts";
import { startPlannerThread } from "../../src/workshop/planner-thread.ts";
import { smallProblem, waitFor } from "../plan/small-problem.ts";

const built = join(builtFolder, "plan-worker.cjs");

/** Six pieces of two coats, the second to begin 60 to 400 min after the first. */
const job: PlanJob = {
  id: 1,
  seq: 1,
  problem: smallProblem(
    Array.from({ length: 12 }, (_, task) => ({
      piece: task >> 1,
      minutes: 20 + task,
      waits:
        task % 2 === 0
          ? []
          : [
              waitFor(task - 1, [
                [60, 400],
                [1380, null, 20],
              ]),
            ],
    })),
    Array.from({ length: 6 }, () => ({})),
  ),
  warm: null,
  kept: false,
  seed: 1,
  rounds: 100,
  leaves: [{ tasks: [0], until: 180 }],
};

/** A running thread, what it has told, and a promise of its end. */
function start(file: string) {
  const news: PlanNews[] = [];
  let heard = (): void => {};
  let died = (): void => {};
  const death = new Promise<void>((resolve) => {
    died = resolve;
  });
  const thread = startPlannerThread(file, {
    onNews: (told) => {
      news.push(told);
      heard();
    },
    onDeath: () => died(),
  });
  onTestFinished(() => thread.end());
  const until = async (isSo: (told: PlanNews) => boolean): Promise<PlanNews> => {
    for (;;) {
      const found = news.find(isSo);
      if (found !== undefined) return found;
      await new Promise<void>((resolve) => {
        heard = resolve;
      });
    }
  };
  return { thread, news, until, death };
}

/** A program for a thread, in a file of its own. */
function program(text: string): string {
  const folder = mkdtempSync(join(tmpdir(), "dryline-thread-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const file = join(folder, "thread.cjs");
  writeFileSync(file, text);
  return file;
}

describe("the built thread", () => {
  test("works for anyone whose program stands back further than it would itself", () => {
    // Root alone may come forward again, so root becomes nobody.
    const asked = `
      const [, built, job] = process.argv;
      const program = require("node:fs").readFileSync(built, "utf8");
      const { getPriority, setPriority } = require("node:os");
      setPriority(Math.max(12, getPriority()));
      if (process.getuid?.() === 0) process.setuid(65534);
      const thread = new (require("node:worker_threads").Worker)(program, { eval: true });
      thread.on("error", ({ message }) => console.log(message));
      thread.once("message", ({ id }) => { console.log("heard of", id); thread.terminate(); });
      thread.postMessage(JSON.parse(job));`;
    const { stdout, stderr } = spawnSync(process.execPath, ["-e", asked, built, JSON.stringify(job)], {
      encoding: "utf8",
    });
    expect({ stdout, stderr }).toEqual({ stdout: "heard of 1\n", stderr: "" });
  });

  test("answers a job with a plan, what leaving costs, and an end", async () => {
    const { thread, news, until } = start(built);
    thread.ask(() => job);
    await until(({ done }) => done);
    expect(news.some(({ plan }) => plan !== null)).toBe(true);
    expect(news.some(({ without }) => without?.length === 1)).toBe(true);
  });

  test("drops a job for a newer one", async () => {
    const { thread, news, until } = start(built);
    thread.ask(() => ({ ...job, rounds: 1_000_000 }));
    thread.ask(() => ({ ...job, id: 2, seq: 2 }));
    await until(({ done }) => done);
    expect(news.at(-1)).toMatchObject({ id: 2, seq: 2, done: true });
    const turned = news.findIndex(({ id }) => id === 2);
    expect(news.slice(turned).every(({ id }) => id === 2)).toBe(true);
  });

  test("is ended in the middle of a search without a word of death", async () => {
    const { thread, news, until, death } = start(built);
    thread.ask(() => ({ ...job, rounds: 1_000_000_000 }));
    await until(({ plan }) => plan !== null);
    thread.end();
    const said = news.length;
    const quiet = new Promise<string>((resolve) => setTimeout(() => resolve("quiet"), 100));
    expect(await Promise.race([death.then(() => "death"), quiet])).toBe("quiet");
    expect(news.length).toBe(said);
  });
});

describe("a thread that dies is told of once:", () => {
  test.each([
    [
      "it throws",
      'require("node:worker_threads").parentPort.on("message", () => { throw new Error("spoilt"); });',
    ],
    ["it exits", 'require("node:worker_threads").parentPort.on("message", () => process.exit(3));'],
  ])("%s", async (_, text) => {
    const { thread, news, death } = start(program(text));
    thread.ask(() => job);
    await death;
    expect(news).toEqual([]);
    // Asked once more, nothing happens, and nothing throws.
    thread.ask(() => job);
  });

  test("its file is not there", async () => {
    const { thread, death } = start(join(builtFolder, "no-such-worker.cjs"));
    thread.ask(() => job);
    await expect(death).resolves.toBeUndefined();
  });
});
