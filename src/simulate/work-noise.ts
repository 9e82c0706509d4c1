import { chanceFrom } from "../plan/chance.ts";

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

/**
 * Factors of a lognormal distribution with mean 1: never below 0, now and then far above 1, as work is.
 * The form is common practice, no source.
 */
export function noiseFrom(seed: number, spread: Spread): WorkNoise {
  const hands = logSpread(spread.hands);
  const wait = logSpread(spread.wait);
  return (what, piece, step, turn) => {
    const chance = chanceFrom(mix(seed, what === "hands" ? 1 : what === "wait" ? 2 : 3, piece, step, turn));
    const sigma = what === "wait" ? wait : hands;
    return Math.exp(sigma * normal(chance(), chance()) - (sigma * sigma) / 2);
  };
}

/** The spread of the logarithm that gives a lognormal with mean 1 this coefficient of variation. */
function logSpread(variation: number): number {
  return Math.sqrt(Math.log(1 + variation * variation));
}

/** A standard normal number from two even ones (G. E. P. Box and M. E. Muller, 1958). */
function normal(one: number, other: number): number {
  return Math.sqrt(-2 * Math.log(1 - one)) * Math.cos(2 * Math.PI * other);
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
