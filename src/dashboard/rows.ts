import type { HandRow, HeldRow, NowAnswer, WorkRow } from "../plan/now-answer.ts";

/**
 * A row a key can act on. Its id stays the same from one reading to the next, also when its work is taken in hand:
 * the mark stays with it, and the next key hangs what the last one took.
 */
export type ActRow =
  | { readonly id: string; readonly is: "hand"; readonly row: HandRow }
  | { readonly id: string; readonly is: "work"; readonly row: WorkRow }
  | { readonly id: string; readonly is: "held"; readonly row: HeldRow };

/**
 * Every row of an answer, best first: what is in hand, what can be worked, what is held. Work that lies half-done is
 * among what can be worked or is held, and has its row there.
 */
export function rowsOf(answer: NowAnswer): ActRow[] {
  const others: ActRow[] = [
    ...answer.work.map((row) => ({ id: idOf(row), is: "work" as const, row })),
    ...answer.held.map((row) => ({ id: idOf(row), is: "held" as const, row })),
  ];
  const toGoOnWith = new Set(others.flatMap(({ row }) => row.tags.map((tag) => `${tag} ${row.step}`)));
  const inHand = answer.inHand.filter(
    ({ left, tags, step }) => !left || !tags.every((tag) => toGoOnWith.has(`${tag} ${step}`)),
  );
  return [...inHand.map((row) => ({ id: idOf(row), is: "hand" as const, row })), ...others];
}

/** The new rows in the order the old ones had, with newcomers at the end: nothing jumps under the hand. */
export function keepOrder(old: readonly ActRow[], rows: readonly ActRow[]): ActRow[] {
  const place = new Map(old.map(({ id }, index) => [id, index]));
  const placeOf = ({ id }: ActRow) => place.get(id) ?? old.length;
  return [...rows].sort((a, b) => placeOf(a) - placeOf(b));
}

function idOf({ tags, step }: { readonly tags: readonly number[]; readonly step: string }): string {
  return `${tags.join(",")} ${step}`;
}
