import { beginSearch } from "../../../src/plan/search/search.ts";
import { type Ask, type Family, FileTrouble } from "./family.ts";
import type { ShopFile } from "./shop-file.ts";
import { problemOfShop, solutionOf } from "./shop-problem.ts";

/** Rounds between two looks at whether the plan is proven: a moment each. */
const ROUNDS = 20;

/** Our own bench's planning problem, searched from the dispatch plan on. */
export const shop: Family = {
  format: "shop/1",
  reads: (_, text) => /^\s*\{\s*"format"\s*:\s*"shop\/1"/.test(text),
  solve(text, ask) {
    const file = parse(text);
    const found = search(file, ask);
    const solution = solutionOf(file, found.plan);
    if (solution === null) {
      return { status: "unknown", objective: null, bound: found.bound, rounds: found.rounds, starts: null };
    }
    return {
      status: found.proven ? "optimal" : "feasible",
      objective: found.score.total,
      bound: found.bound,
      rounds: found.rounds,
      ...solution,
    };
  },
};

function search(file: ShopFile, { ms, rounds, seed }: Ask) {
  const until = performance.now() + ms;
  const run = beginSearch(problemOfShop(file), { seed, warm: null });
  const isOver = (done: number): boolean => (rounds === null ? performance.now() >= until : done >= rounds);
  for (let done = 0; !isOver(done); done++) {
    if (done % ROUNDS === 0 && run.found.proven) break;
    run.go(1);
  }
  return run.found;
}

function parse(text: string): ShopFile {
  try {
    return JSON.parse(text) as ShopFile;
  } catch (trouble) {
    throw new FileTrouble(`is no JSON: ${trouble instanceof Error ? trouble.message : String(trouble)}.`);
  }
}
