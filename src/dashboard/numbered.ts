import type { Choice, Effect } from "./state.ts";

/** Keys of a list to choose from, in its order: without those that answer or say no, and o for another. */
const CHOICE_KEYS = "123456789bcdefghijklmpqrstuvwxyz";

/** A list to choose from, each with a key of its own; what is beyond the keys is left out. */
export function numbered<Item>(
  items: readonly Item[],
  tell: (item: Item) => { readonly label: string; readonly effect: Effect },
): Choice[] {
  return [...CHOICE_KEYS].flatMap((key, index): Choice[] => {
    const item = items[index];
    if (item === undefined) return [];
    const { label, effect } = tell(item);
    return [{ key, label: `${key}  ${label}`, effects: [effect] }];
  });
}
