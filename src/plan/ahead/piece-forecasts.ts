import { type Instant, MINUTE, type Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import { completions } from "../completions.ts";
import type { NoTime, PieceForecast } from "../plan-answer.ts";
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
  const { cure } = at(shop.made.problem.pieces, number);
  const finish = shop.plan.finish[number] ?? null;
  const due = dueOf(shop, number);
  const noTime = finish === null ? noTimeFor(shop, number) : null;
  const isLate = due !== null && (finish === null ? due <= 0 || !isUnknown(noTime) : finish > due);
  return {
    piece: at(shop.pieces, number),
    lastHandsOn: finish === null ? null : momentOf(shop, finish - cure),
    dryThrough: finish === null ? null : dryThrough(shop, number),
    due: due === null ? null : wholeMinute(momentOf(shop, due)),
    late: isLate ? { minutes: finish === null ? null : finish - due, why: lateWhy(shop, number) } : null,
    noTime,
  };
}

/** Nobody can say before something is felt or measured, so neither that a promise is late. */
function isUnknown(noTime: NoTime | null): boolean {
  return noTime?.because === "touch first" || noTime?.because === "measure first";
}

/** "This one first" without a date makes it dear to be slow, but promises nothing. */
function dueOf({ facts, made }: PlannedShop, number: number): Minutes | null {
  const tagged = facts.pieces[number];
  return tagged?.piece.due === null ? null : at(made.problem.pieces, number).due;
}

/** Problems round up to whole minutes from now: a day's end is the minute it lies in. */
function wholeMinute(moment: Instant): Instant {
  return Math.floor(moment / MINUTE) * MINUTE;
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
