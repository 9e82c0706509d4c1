/**
 * The middle value, or of an even count the mean of the two in the middle.
 *
 * @throws RangeError for no values at all: there is no middle
 *
 * `median([4, 1, 3]) === 3`, `median([4, 1, 3, 2]) === 2.5`
 */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.floor((sorted.length - 1) / 2)];
  if (lower === undefined || upper === undefined) throw new RangeError("no values to take the median of");
  return (lower + upper) / 2;
}
