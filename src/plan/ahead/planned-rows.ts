import { at } from "../at.ts";
import type { MadeTask } from "../make-tasks.ts";
import type { Visit } from "../plan.ts";
import type { PlannedPiece, PlannedRow } from "../plan-answer.ts";
import { momentOf, type PlannedShop } from "./planned-shop.ts";

/** A row being put together. */
interface Draft {
  readonly key: string;
  readonly visits: Visit[];
}

/**
 * The work of one bench session as rows to follow, in order. Visits that come directly one after the other and share a
 * step with its coat, colour or set-up are one row: all of them are made ready together and worked in turn. A fresh
 * set-up begins a row of its own, for its time stands before it.
 */
export function plannedRows(shop: PlannedShop, visits: readonly Visit[]): PlannedRow[] {
  const drafts: Draft[] = [];
  for (const visit of visits.toSorted((a, b) => a.start - a.setUp - (b.start - b.setUp) || a.task - b.task)) {
    const key = keyOf(shop, visit);
    const open = drafts.findLast((draft) => draft.visits.at(-1)?.end === visit.start - visit.setUp);
    if (open !== undefined && open.key === key && visit.setUp === 0) open.visits.push(visit);
    else drafts.push({ key, visits: [visit] });
  }
  return drafts.flatMap(({ visits }) => {
    const [first] = visits;
    return first === undefined ? [] : [rowOf(shop, first, visits)];
  });
}

/** Work that shares nothing is taken and hung piece by piece: its key is its own. */
function keyOf(shop: PlannedShop, { task, part }: Visit): string {
  const made = madeOf(shop, task);
  const shares = made.setUp !== null || made.coat !== null || made.colour !== null;
  const alone = shares && shop.made.problem.tasks[task]?.running === false ? "" : String(task);
  return [made.step, made.station, part, made.preparation, made.setUp, made.coat, made.colour, alone].join(
    "\n",
  );
}

function rowOf(shop: PlannedShop, first: Visit, visits: readonly Visit[]): PlannedRow {
  const made = madeOf(shop, first.task);
  const task = at(shop.made.problem.tasks, first.task);
  const pieces = visits.map((visit) => pieceOf(shop, visit));
  const minutes = visits.reduce((sum, { start, end }) => sum + end - start, 0);
  const preparing = first.part === "preparation";
  return {
    pieces: pieces.filter((piece, index) => pieces.indexOf(piece) === index),
    step: made.step,
    part: first.part,
    preparation: preparing ? made.preparation : null,
    colour: made.colour,
    coat: made.coat,
    station: made.station,
    setUp: made.setUp === null || preparing ? null : { what: made.setUp, minutes: first.setUp },
    from: momentOf(shop, first.start - first.setUp),
    until: momentOf(shop, Math.max(...visits.map(({ end }) => end))),
    minutes,
    looks: preparing ? [] : task.looks,
    cautions: [...new Set(visits.flatMap(({ task }) => madeOf(shop, task).cautions))],
    inHand: task.running,
    tagsNew: visits.some((visit) => isFirst(shop, visit)),
    finishes: visits.filter((visit) => isLast(shop, visit)).map((visit) => pieceOf(shop, visit)),
  };
}

/** The piece of a visit, the same object for the same piece. */
function pieceOf(shop: PlannedShop, { task }: Visit): PlannedPiece {
  return at(shop.pieces, at(shop.made.problem.tasks, task).piece);
}

/** It begins a piece that is not tagged yet. */
function isFirst(shop: PlannedShop, visit: Visit): boolean {
  const { piece } = at(shop.made.problem.tasks, visit.task);
  const first = shop.plan.visits.find((other) => shop.made.problem.tasks[other.task]?.piece === piece);
  return shop.pieces[piece]?.tag === null && first === visit;
}

function isLast(shop: PlannedShop, visit: Visit): boolean {
  const { piece } = at(shop.made.problem.tasks, visit.task);
  const last = shop.plan.visits.findLast((other) => shop.made.problem.tasks[other.task]?.piece === piece);
  return last === visit && (shop.plan.finish[piece] ?? null) !== null;
}

function madeOf(shop: PlannedShop, task: number): MadeTask {
  return at(shop.tasks, task);
}
