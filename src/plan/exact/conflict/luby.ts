/**
 * The sequence 1 1 2 1 1 2 4 1 1 2 ..., by which restarts are as good as can be without knowing the search (Luby,
 * Sinclair and Zuckerman, Information Processing Letters 47, 1993).
 *
 * @param index from 1
 * @example [1, 2, 3, 7].map(luby) // → [1, 1, 2, 4]
 */
export function luby(index: number): number {
  let size = 1;
  while (size <= index) size *= 2;
  // Up to `index` the sequence is as long as 1, 3, 7, ...: its last entry is the largest.
  return size === index + 1 ? size / 2 : luby(index + 1 - size / 2);
}
