/**
 * The known word nearest to one that is not known, if it is near enough to be what was meant: at most a third of its
 * letters differ. Case, spaces, hyphens and underscores do not count.
 * `nearestWord("hand_on", ["hands_on", "wait"]) === "hands_on"`
 */
export function nearestWord(word: string, known: readonly string[]): string | null {
  let best: string | null = null;
  let fewest = Math.max(1, Math.floor(bare(word).length / 3)) + 1;
  for (const candidate of known) {
    const changes = countChanges(bare(word), bare(candidate), fewest);
    if (changes < fewest) {
      best = candidate;
      fewest = changes;
    }
  }
  return best;
}

function bare(word: string): string {
  return word
    .toLowerCase()
    .replace(/[\s_-]/g, "")
    .slice(0, 60);
}

/**
 * Letters to add, drop, change or swap with their neighbour to make `b` of `a` (optimal string alignment distance);
 * `limit` or more is told as `limit`.
 */
function countChanges(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) >= limit) return limit;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let fewest = Math.min(changed, (last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) fewest = Math.min(fewest, (beforeLast[j - 2] ?? 0) + 1);
      row.push(fewest);
    }
    [beforeLast, last] = [last, row];
  }
  return Math.min(limit, last[b.length] ?? limit);
}
