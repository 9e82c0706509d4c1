import { appendFileSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { beginSearch } from "../../../src/plan/search/search.ts";
import { checkShop } from "./check-shop.ts";
import { FileTrouble } from "./family.ts";
import type { ShopFile } from "./shop-file.ts";
import { problemOfShop, solutionOf } from "./shop-problem.ts";

const bestKnown = join(import.meta.dirname, "../best-known.json");
/** Which runs the best known values rest on: "file,seed,rounds,seconds,objective"; seconds of the processor. */
const runs = join(import.meta.dirname, "../best-known-runs.csv");

/** Rounds between two looks at the time. */
const ROUNDS = 50;

/**
 * Searches shop files for a time of the processor with one seed after the other, and keeps what is better than the best
 * known. Every run is noted with its rounds, by which it can be had again; one already noted is not run again.
 */
export function keepBest(files: readonly string[], seeds: number, seconds: number): void {
  for (let seed = 1; seed <= seeds; seed++) {
    for (const file of files) {
      if (!isNoted(basename(file), seed)) keepRun(file, seed, seconds);
    }
  }
}

function isNoted(name: string, seed: number): boolean {
  return existsSync(runs) && readFileSync(runs, "utf8").includes(`\n${name},${seed},`);
}

function keepRun(path: string, seed: number, seconds: number): void {
  const file = JSON.parse(readFileSync(path, "utf8")) as ShopFile;
  const begun = secondsOfProcessor();
  const run = beginSearch(problemOfShop(file), { seed, warm: null });
  while (secondsOfProcessor() - begun < seconds && !run.found.proven) run.go(ROUNDS);
  const { plan, score, rounds } = run.found;
  const solution = solutionOf(file, plan);
  if (solution === null) return;
  const { wrong, objective } = checkShop(file, solution);
  if (wrong.length > 0 || objective !== score.total)
    throw new FileTrouble(`${path}: ${wrong[0] ?? objective}`);
  const name = basename(path);
  if (!existsSync(runs)) appendFileSync(runs, "file,seed,rounds,seconds,objective\n");
  appendFileSync(
    runs,
    `${name},${seed},${rounds},${Math.round(secondsOfProcessor() - begun)},${objective}\n`,
  );
  lower(name, objective);
}

/** Values may only fall. */
function lower(name: string, objective: number): void {
  const known = JSON.parse(readFileSync(bestKnown, "utf8")) as Record<string, number>;
  if (objective >= (known[name] ?? Number.POSITIVE_INFINITY)) return;
  const entries = Object.entries({ ...known, [name]: objective }).sort(([a], [b]) => (a < b ? -1 : 1));
  writeFileSync(bestKnown, `${JSON.stringify(Object.fromEntries(entries), null, 2)}\n`);
}

function secondsOfProcessor(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
}
