import type { HandRow, HeldRow, NowAnswer, WorkRow } from "../plan/now-answer.ts";

/** A row a key can act on. Its id stays the same from one reading to the next, so the mark stays with it. */
export type ActRow =
  | { readonly id: string; readonly is: "hand"; readonly row: HandRow }
  | { readonly id: string; readonly is: "work"; readonly row: WorkRow }
  | { readonly id: string; readonly is: "held"; readonly row: HeldRow };

/** Every row of an answer, best first: what is in hand, what can be worked, what is held. */
export function rowsOf(answer: NowAnswer): ActRow[] {
  return [
    ...answer.inHand.map((row) => ({ id: idOf("hand", row), is: "hand" as const, row })),
    ...answer.work.map((row) => ({ id: idOf("work", row), is: "work" as const, row })),
    ...answer.held.map((row) => ({ id: idOf("held", row), is: "held" as const, row })),
  ];
}

/** The new rows in the order the old ones had, with newcomers at the end: nothing jumps under the hand. */
export function keepOrder(old: readonly ActRow[], rows: readonly ActRow[]): ActRow[] {
  const place = new Map(old.map(({ id }, index) => [id, index]));
  const placeOf = ({ id }: ActRow) => place.get(id) ?? old.length;
  return [...rows].sort((a, b) => placeOf(a) - placeOf(b));
}

function idOf(
  is: string,
  { tags, step }: { readonly tags: readonly number[]; readonly step: string },
): string {
  return `${is} ${tags.join(",")} ${step}`;
}
