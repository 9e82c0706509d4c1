import { chanceFrom, lognormal } from "../plan/chance.ts";

/** What goes otherwise than thought: hands-on of a task, of a preparation before it, or the wait after it. */
type Uncertain = "hands" | "preparation" | "wait";

/**
 * By how much: a factor, 1 is as thought. `turn` counts how often the task was worked before. A function of its
 * arguments alone, so that every way of working meets the same luck (common random numbers).
 */
export type WorkNoise = (what: Uncertain, piece: number, step: number, turn: number) => number;

/** All goes as thought. */
export const noNoise: WorkNoise = () => 1;

/** Coefficients of variation, 0.25 is 25 %. */
export interface Spread {
  readonly hands: number;
  readonly wait: number;
}

/** Factors of a lognormal distribution with mean 1. */
export function noiseFrom(seed: number, spread: Spread): WorkNoise {
  return (what, piece, step, turn) => {
    const chance = chanceFrom(mix(seed, what === "hands" ? 1 : what === "wait" ? 2 : 3, piece, step, turn));
    return lognormal(chance, what === "wait" ? spread.wait : spread.hands);
  };
}

/** One seed of several whole numbers: each is added and mixed in turn. */
function mix(...numbers: readonly number[]): number {
  let seed = 0;
  for (const number of numbers) {
    seed = Math.imul(seed ^ number, 0x9e3779b1);
    seed = Math.imul(seed ^ (seed >>> 15), 0x85ebca6b);
    seed ^= seed >>> 13;
  }
  return seed >>> 0;
}
