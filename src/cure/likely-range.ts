import type { Coat } from "../process/coat.ts";
import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { RESIN_ENERGY_RANGE, SOLVENT_ENERGY_RANGE } from "./cure-rate.ts";
import type { Drying } from "./drying.ts";
import type { FactorSpan } from "./touch-fit.ts";

/** A moment that is predicted, and between which it is likely. */
export interface LikelyMoment {
  readonly likely: Instant;
  readonly from: Instant;
  /** Infinity: it may never come in this air. */
  readonly to: Instant;
}

/** How far one laying of a can lies from another, as a share: a seventh either way. Our own, no source. */
const LAYING_FROM_LAYING = 0.15;

/** Ends of a range are told to five minutes, outward. */
const TOLD = 5 * MINUTE;

/**
 * When a coat has come so many minutes by its sheet, and between which moments that is likely. Three things make it
 * unsure: one laying is not the next (within what touches of this very coat leave open), how warmth speeds up a coat whose
 * sheet tells no energy (for resins the range published for epoxies, for solvents from ours to that of evaporation), and
 * what the weather does instead of what is expected. They are taken together as the root of the sum of their squares.
 *
 * @param felt how many times its sheet's minutes it needs, by its touches
 * @returns null where it never comes, as far as can be seen
 * @example in air that stays as its sheet's, 12 h from 18:00: likely 4:40 to 8:00 about 6:00
 */
export function likelyRange(
  coat: Coat,
  laidAt: Instant,
  minutes: Minutes,
  { air, factor }: Drying,
  felt: FactorSpan,
): LikelyMoment | null {
  const at = (by: Coat, times: number) => air.reach(by, laidAt, minutes * times);
  const likely = at(coat, factor);
  if (!Number.isFinite(likely)) return null;
  const quick = Math.min(factor, Math.max(felt.least, factor * (1 - LAYING_FROM_LAYING)));
  const slow = Math.max(factor, Math.min(felt.most, factor * (1 + LAYING_FROM_LAYING)));
  const others = [
    likely,
    ...energiesOf(coat).map((activationEnergy) => at({ ...coat, activationEnergy }, factor)),
  ];
  const weather = [likely, ...air.otherwise().map((other) => other.reach(coat, laidAt, minutes * factor))];
  const before = [at(coat, quick), Math.min(...others), Math.min(...weather)].map((soon) => likely - soon);
  const after = [at(coat, slow), Math.max(...others), Math.max(...weather)].map((late) => late - likely);
  return {
    likely,
    from: Math.floor((likely - Math.hypot(...before)) / TOLD) * TOLD,
    to: Math.ceil((likely + Math.hypot(...after)) / TOLD) * TOLD,
  };
}

function energiesOf({ curesBy, activationEnergy }: Coat): readonly number[] {
  if (activationEnergy != null) return [];
  return curesBy === "resin" ? RESIN_ENERGY_RANGE : curesBy === "solvent" ? SOLVENT_ENERGY_RANGE : [];
}
