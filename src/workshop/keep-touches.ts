import type { Tag } from "../journal/event.ts";
import type { Journal } from "../journal/journal.ts";
import { cureTestsOf } from "../shop/cure-tests.ts";
import type { Shop } from "../shop/shop.ts";

/**
 * Keeps what the touch tests of some pieces say of their coats, for all pieces to learn from.
 *
 * @returns whether anything may now be known otherwise
 */
export async function keepTouches(journal: Journal, shop: Shop, tags: readonly Tag[]): Promise<boolean> {
  const pieces = tags.flatMap((tag) => shop.pieces.get(tag) ?? []);
  const tests = pieces.flatMap(cureTestsOf);
  const known = await journal.cureTests(0);
  const before = known.filter(({ tag }) => tags.includes(tag));
  if (tests.length === 0 && before.length === 0) return false;
  await journal.keepCureTests(tags, tests);
  return true;
}
