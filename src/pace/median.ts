/**
 * The middle of the sorted values; of an even number of them the mean of the middle two (Hyndman and Fan 1996, on which
 * their types 2 and 5 to 9 agree). Null: no values.
 * `median([9, 1, 4, 2]) === 3`
 */
export function median(values: readonly number[]): number | null {
  const sorted = values.toSorted((a, b) => a - b);
  const half = Math.floor(sorted.length / 2);
  const upper = sorted[half];
  if (upper === undefined) return null;
  const lower = sorted.length % 2 === 1 ? upper : (sorted[half - 1] ?? upper);
  return (lower + upper) / 2;
}
