import type { Problem } from "../problem.ts";
import { SearchByConflict } from "./search-by-conflict.ts";
import { makeShopModel, type ShopModel } from "./shop-model.ts";

/** A proof in the making that a plan is the best, or a better one. */
export interface ShopProof {
  /** Searches on until it is told to stop, asked before each decision. */
  go(isOver: (nodes: number) => boolean): void;
  /** No plan costs less. */
  readonly bound: number;
  /** Starts by task (null: done) that cost less than all known before, as far as the model goes; null: none. */
  readonly starts: readonly (number | null)[] | null;
  /** What those starts cost in the model. */
  readonly cost: number | null;
  readonly isOver: boolean;
  readonly nodes: number;
}

export function beginProof(problem: Problem, known: number): ShopProof | null {
  const model = makeShopModel(problem, known - 1);
  if (model === null) return null;
  const search = new SearchByConflict(model);
  let isOver = !search.begin(0);
  let patience = 200;
  let low = true;
  let ambition = 8;
  return {
    go(stop) {
      while (!isOver) {
        const aim = low
          ? Math.min(search.most, search.bound + Math.floor((search.most - search.bound) / ambition))
          : search.most;
        const end = search.run(aim, patience, stop);
        if (process.env.LOG) console.log(low, aim, end, search.bound, search.most, search.nodes);
        if (end === "exhausted") isOver = true;
        if (end === "stopped") return;
        if (end === "tired") {
          if (!low) patience *= 1.3;
          else ambition *= 2;
          low = !low;
        }
        if (end === "refuted") {
          ambition = Math.max(2, ambition / 2);
        }
      }
    },
    get bound() {
      if (!isOver) return search.bound;
      return search.best === null ? search.most + 1 : (search.best[model.goal] as number);
    },
    get starts() {
      return search.best === null ? null : startsOf(model, search.best);
    },
    get cost() {
      return search.best === null ? null : (search.best[model.goal] as number);
    },
    get isOver() {
      return isOver;
    },
    get nodes() {
      return search.nodes;
    },
  };
}

function startsOf({ starts }: ShopModel, values: Int32Array): (number | null)[] {
  return starts.map((variable) => (variable === null ? null : (values[variable] as number)));
}
