import type { Minutes } from "../time/instant.ts";

/** How a room changes its air. */
export interface Ventilation {
  readonly airChangesPerHour: number;
  /**
   * How many times longer a real room takes than one whose air mixes perfectly (1). Lists disagree; rough (D. J.
   * Burton, A Primer on Mixing Factors, AIHA Synergist, March 2021). Some texts use its inverse, an efficiency.
   */
  readonly mixingFactor: number;
}

/** What is taken where nobody knows: hardly an air change an hour, poorly mixed. Our own cautious choice, no source. */
export const UNKNOWN_VENTILATION: Ventilation = { airChangesPerHour: 1, mixingFactor: 3 };

/**
 * Minutes (not rounded) until a share of what hangs in the air of a room has gone, once nothing more is given off:
 * CDC/HICPAC, Guidelines for Environmental Infection Control in Health-Care Facilities (2003), Table B.1, with the time
 * multiplied by the mixing factor. It says how far a room has cleared, never that its air is safe to breathe.
 *
 * @param removed share that has gone, above 0 and below 1
 * @example clearingTime({ airChangesPerHour: 6, mixingFactor: 1 }, 0.99) // 46.05
 */
export function clearingTime({ airChangesPerHour, mixingFactor }: Ventilation, removed: number): Minutes {
  return (-Math.log(1 - removed) / airChangesPerHour) * 60 * mixingFactor;
}

/** Air changes an hour of a fan that moves so many cubic metres an hour out of a room. */
export function airChangesOf(fanCubicMetresPerHour: number, roomCubicMetres: number): number {
  return fanCubicMetresPerHour / roomCubicMetres;
}
