import { type FactorSpan, fitFactor } from "../cure/touch-fit.ts";
import type { CureTest } from "../journal/journal.ts";

/** Tests older than this speak of another can: 400 days. */
export const TESTS_FROM = 400 * 24 * 3_600_000;

/** How many times its sheet's minutes a coat needs, and from how many tests that is known. */
export interface CureFactor {
  readonly factor: number;
  readonly tests: number;
}

/** The factor of each coat that was ever felt, by name. */
export function cureFactors(tests: readonly CureTest[]): ReadonlyMap<string, CureFactor> {
  const spans = new Map<string, FactorSpan[]>();
  for (const { coat, least, most } of tests) {
    spans.set(coat, [...(spans.get(coat) ?? []), { least, most: most ?? Number.POSITIVE_INFINITY }]);
  }
  return new Map([...spans].map(([coat, of]) => [coat, { factor: fitFactor(of), tests: of.length }]));
}
