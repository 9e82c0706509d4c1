import type { Journal } from "../journal/journal.ts";
import { RECORDS_USED, usualMinutes } from "../learned/usual-minutes.ts";
import type { PlanContext } from "../plan/what-now.ts";
import type { Shop } from "../shop/shop.ts";
import type { Library } from "./library.ts";

/** Usual minutes of every step of the pieces out, asked of the journal in one go. */
export async function readUsual(journal: Journal, shop: Shop): Promise<PlanContext["usualMinutes"]> {
  const wanted = new Map<string, readonly [string, string]>();
  for (const { definition, route, end } of shop.pieces.values()) {
    if (end !== null) continue;
    for (const { name } of route) wanted.set(`${definition.name}\n${name}`, [definition.name, name]);
  }
  const records = new Map(
    await Promise.all(
      [...wanted].map(async ([key, [process, step]]) => {
        return [key, await journal.stepTimes(process, step, RECORDS_USED)] as const;
      }),
    ),
  );
  return (process, step) => usualMinutes(step, records.get(`${process}\n${step.name}`) ?? []);
}

/** The process a new piece would be of: the settled default, else that of the piece tagged last. */
export function newPieceOf(shop: Shop, library: Library): PlanContext["newPiece"] {
  const newest = [...shop.pieces.values()].at(-1);
  const wanted = shop.settings.defaultProcess ?? newest?.definition.name;
  return library.processes.find(({ name }) => name === wanted) ?? null;
}
