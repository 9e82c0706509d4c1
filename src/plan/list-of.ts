/**
 * A list with one record for each entry of another. As `map` gives it, but always of one kind to the engine: what `map`
 * gives is of another kind once its caller has been compiled, and then all that reads such lists is compiled anew.
 */
export function listOf<From, To extends object | null>(
  entries: readonly From[],
  make: (entry: From, index: number) => To,
): To[] {
  const list: To[] = [];
  for (let index = 0; index < entries.length; index++) list.push(make(entries[index] as From, index));
  return list;
}
