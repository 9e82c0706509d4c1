import { at } from "../at.ts";
import type { MadeTask } from "../make-tasks.ts";
import type { Visit } from "../plan.ts";
import type { PlannedPiece, PlannedRow } from "../plan-answer.ts";
import { beginBy } from "./begin-by.ts";
import { momentOf, type PlannedShop } from "./planned-shop.ts";

/** A row being put together. */
interface Draft {
  readonly key: string;
  readonly visits: Visit[];
}

/**
 * The work of one bench session as rows to follow, in order. Visits that come directly one after the other and are the
 * same work (of one set-up, coat and colour) are one row. A fresh set-up begins a row of its own, for its time stands
 * before it.
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

/** What is in hand, and a part of what is split between sessions, stands alone. */
function keyOf(shop: PlannedShop, { task: number, part, start, end }: Visit): string {
  const { step, station, preparation, setUp, coat, colour } = madeOf(shop, number);
  const task = at(shop.made.problem.tasks, number);
  const alone = task.running || (part === "step" && end - start < task.minutes) ? String(number) : "";
  return [step, station, part, preparation, setUp, coat, colour, alone].join("\n");
}

function rowOf(shop: PlannedShop, first: Visit, visits: readonly Visit[]): PlannedRow {
  const made = madeOf(shop, first.task);
  const task = at(shop.made.problem.tasks, first.task);
  const pieces = visits.map((visit) => pieceOf(shop, visit));
  const minutes = visits.reduce((sum, { start, end }) => sum + end - start, 0);
  const preparing = first.part === "preparation";
  const latest = beginBy(shop, visits);
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
    shuts: latest === null ? null : { by: latest.by === null ? null : momentOf(shop, latest.by) },
    minutes,
    ofMinutes: first.part === "step" && visits.length === 1 && minutes < task.minutes ? task.minutes : null,
    looks: preparing ? [] : task.looks,
    measures: [...new Set(visits.flatMap(({ task }) => madeOf(shop, task).measures))],
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
