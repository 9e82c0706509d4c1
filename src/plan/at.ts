/**
 * The entry of a list that must be there: problems name their things by number.
 *
 * @throws RangeError when it is not: the problem is not sound
 */
export function at<T>(list: readonly T[], index: number): T {
  const entry = list[index];
  if (entry === undefined) throw new RangeError(`no entry ${index} among ${list.length}`);
  return entry;
}
