import type { Chance } from "../plan/chance.ts";

/** `minutes` as a hand really takes: from a tenth less to a third more, at least one minute, whole. */
export function aboutMinutes(minutes: number, chance: Chance): number {
  return Math.max(1, Math.round(minutes * (0.9 + chance() * 0.43)));
}

/** One of several things. */
export function oneOf<T>(things: readonly [T, ...T[]], chance: Chance): T {
  return things[Math.floor(chance() * things.length)] ?? things[0];
}
