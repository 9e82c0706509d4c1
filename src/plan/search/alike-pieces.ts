import { isDeepStrictEqual } from "node:util";
import { at } from "../at.ts";
import type { Leave } from "../bench-run.ts";
import type { Plan } from "../plan.ts";
import type { Problem } from "../problem.ts";
import type { Bench, BenchPiece, BenchTask } from "./bench.ts";

/**
 * By piece: the number of the first piece that is just like it in all that the problem says of it and its tasks, so that the
 * two could change places in any plan.
 */
export function firstAlike({ pieces, tasks }: Problem): number[] {
  const told = pieces.map((piece, index) => {
    const own = [...tasks.keys()].filter((task) => at(tasks, task).piece === index);
    const work = own.map((task) => {
      const { piece: _, waits, ...rest } = at(tasks, task);
      return { ...rest, waits: waits.map((wait) => ({ ...wait, on: own.indexOf(wait.on) })) };
    });
    return { piece, work };
  });
  const first: number[] = [];
  for (const [index, one] of told.entries()) {
    const known = first.findIndex(
      (number, before) => number === before && isDeepStrictEqual(told[before], one),
    );
    first.push(known < 0 ? index : known);
  }
  return first;
}

/**
 * An order in which pieces with work that is left change places with others just like them, of which the plan begins that
 * work no sooner than it may be begun.
 *
 * @param order of the bench's tasks, as the plan begins them
 * @param alike by piece, as `firstAlike` tells
 * @returns null: there is no such piece
 */
export function spareLeft(
  { tasks }: Bench,
  order: readonly BenchTask[],
  { visits }: Plan,
  alike: readonly number[],
  { tasks: left, until }: Leave,
): BenchTask[] | null {
  const toSpare = new Set(left.map((index) => at(tasks, index).piece));
  const others = new Map<BenchPiece, BenchPiece>();
  for (const { task, start, setUp } of visits) {
    const { piece } = at(tasks, task);
    if (start - setUp < until || toSpare.has(piece) || others.has(piece)) continue;
    const number = piece.tasks.indexOf(at(tasks, task));
    for (const one of toSpare) {
      const isAlike = alike[one.index] === alike[piece.index];
      if (others.has(one) || !isAlike || !left.includes(one.tasks[number]?.index ?? -1)) continue;
      others.set(one, piece).set(piece, one);
      break;
    }
  }
  if (others.size === 0) return null;
  return order.map((task) =>
    at(others.get(task.piece)?.tasks ?? task.piece.tasks, task.piece.tasks.indexOf(task)),
  );
}
