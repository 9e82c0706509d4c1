import { after, type Instant, MINUTE } from "../../time/instant.ts";
import { at } from "../at.ts";
import { completions } from "../completions.ts";
import type { PieceForecast } from "../plan-answer.ts";
import { lateWhy } from "./late-why.ts";
import { noTimeFor } from "./no-time.ts";
import { momentOf, type PlannedShop } from "./planned-shop.ts";

/**
 * When each piece is finished, what is late and why. Pieces the aim asks for are told only where the plan begins them
 * before `until`: nobody waits for those it does not.
 *
 * @param asked how many of those not tagged yet were asked for by name, and so are always told; they come first
 */
export function pieceForecasts(shop: PlannedShop, asked: number, until: Instant): PieceForecast[] {
  const firstNew = shop.pieces.findIndex(({ tag }) => tag === null);
  const told = shop.pieces.flatMap((piece, number) => {
    const wanted = piece.tag !== null || number < firstNew + asked;
    return wanted || isBegunBefore(shop, number, until) ? [number] : [];
  });
  return told
    .toSorted((a, b) => (shop.pieces[a]?.nth ?? 0) - (shop.pieces[b]?.nth ?? 0) || a - b)
    .map((number) => forecast(shop, number));
}

function isBegunBefore(shop: PlannedShop, number: number, until: Instant): boolean {
  const first = visitsOf(shop, number)[0];
  return first !== undefined && momentOf(shop, first.start - first.setUp) < until;
}

function forecast(shop: PlannedShop, number: number): PieceForecast {
  const { problem } = shop.made;
  const finish = shop.plan.finish[number] ?? null;
  const lastHandsOn = finish === null ? null : momentOf(shop, finish - at(problem.pieces, number).cure);
  const due = dueOf(shop, number);
  const late = due !== null && (lastHandsOn === null || lastHandsOn > due);
  const minutes = due === null || lastHandsOn === null ? null : Math.ceil((lastHandsOn - due) / MINUTE);
  return {
    piece: at(shop.pieces, number),
    lastHandsOn,
    dryThrough: finish === null ? null : dryThrough(shop, number),
    due,
    late: late ? { minutes, why: lateWhy(shop, number) } : null,
    noTime: finish === null ? noTimeFor(shop, number) : null,
  };
}

/** "This one first" without a date makes it dear to be slow, but promises nothing. */
function dueOf({ facts, made }: PlannedShop, number: number): Instant | null {
  const tagged = facts.pieces[number];
  const minutes = at(made.problem.pieces, number).due;
  return minutes === null || tagged?.piece.due === null ? null : after(facts.context.now, minutes);
}

/** From the coat laid last: as planned, else the one that hangs now. */
function dryThrough(shop: PlannedShop, number: number): Instant | null {
  let newest = Number.NEGATIVE_INFINITY;
  let dry: Instant | null = shop.facts.pieces[number]?.coat?.reaches["dry-through"] ?? null;
  for (const { task, coat, dryThrough } of at(shop.made.pieces, number).tasks) {
    const laid = coat === null ? [] : completions(shop.made.problem, shop.plan.visits, task);
    const last = Math.max(...laid);
    if (last <= newest) continue;
    newest = last;
    dry = dryThrough === null ? null : momentOf(shop, last + dryThrough);
  }
  return dry;
}

function visitsOf(shop: PlannedShop, number: number) {
  const { tasks } = shop.made.problem;
  return shop.plan.visits.filter(({ task }) => tasks[task]?.piece === number);
}
