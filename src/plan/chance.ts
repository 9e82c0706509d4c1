/** A source of chance that a seed repeats: numbers from 0 to below 1. */
export type Chance = () => number;

/**
 * A small generator of 32 bits by counting and mixing (the finaliser of MurmurHash3, public domain): the same seed
 * gives the same numbers on every machine. For search, demos and simulations, not for secrets.
 */
export function chanceFrom(seed: number): Chance {
  let count = seed >>> 0;
  return () => {
    count = (count + 0x9e3779b9) >>> 0;
    let mixed = count;
    mixed = Math.imul(mixed ^ (mixed >>> 16), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    return ((mixed ^ (mixed >>> 16)) >>> 0) / 4_294_967_296;
  };
}

/**
 * A factor of a lognormal distribution with mean 1: never below 0, now and then far above 1, as work is. The form is
 * common practice, no source.
 *
 * @param variation its coefficient of variation, 0.25 is 25 %
 */
export function lognormal(chance: Chance, variation: number): number {
  const variance = Math.log(1 + variation * variation);
  return Math.exp(Math.sqrt(variance) * normal(chance(), chance()) - variance / 2);
}

/** A standard normal number from two even ones (G. E. P. Box and M. E. Muller, 1958). */
function normal(one: number, other: number): number {
  return Math.sqrt(-2 * Math.log(1 - one)) * Math.cos(2 * Math.PI * other);
}
