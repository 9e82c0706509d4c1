import { at } from "../at.ts";
import type { Leave } from "../bench-run.ts";
import { listOf } from "../list-of.ts";
import type { Bench, BenchHook, BenchPiece, BenchPlace, BenchSlot, BenchTask } from "./bench.ts";
import { layBench, layPiece, layStation, layTask, linkWait } from "./lay-bench.ts";
import { measureTail } from "./tails.ts";

/**
 * Another bench for plays of its own, like one that no play has begun on, with some tasks left until a minute: the same as
 * a bench made for a problem in which they are not released before it. What never changes is shared.
 */
export function copyBench(bench: Bench, { tasks: left, until }: Leave): Bench {
  const pieces = listOf(bench.pieces, layPiece);
  const slots = listOf(bench.slots, (slot) => copySlot(slot, pieces));
  const places = listOf(
    bench.places,
    ({ hooks, slots: own }): BenchPlace => ({ hooks, slots: listOf(own, ({ index }) => at(slots, index)) }),
  );
  const stations = listOf(bench.stations, layStation);
  const tasks = listOf(bench.tasks, (task) => {
    const { piece, station, hook } = task;
    return layTask(task, {
      piece: at(pieces, piece.index),
      station: station === null ? null : at(stations, station.index),
      setUp: task.setUp,
      hook: hook === null ? null : copyHook(hook, at(places, bench.places.indexOf(hook.place))),
    });
  });
  for (let index = 0; index < tasks.length; index++) copyWaits(at(bench.tasks, index), tasks);
  const needs = listOf(bench.needs, ({ index }) => at(tasks, index));
  const copy = layBench({ ...bench, tasks, pieces, stations, places, slots, needs });
  release(copy, new Set(left), until);
  return copy;
}

function copyWaits({ index, waits }: BenchTask, tasks: readonly BenchTask[]): void {
  for (let place = 0; place < waits.length; place++) {
    const { on, windows } = at(waits, place);
    linkWait(at(tasks, index), at(tasks, on.index), windows);
  }
}

function copyHook({ until, stays }: BenchHook, place: BenchPlace): BenchHook {
  return { place, until, stays };
}

function copySlot({ index, until, piece }: BenchSlot, pieces: readonly BenchPiece[]): BenchSlot {
  const slot: BenchSlot = { index, until, piece: piece === null ? null : at(pieces, piece.index) };
  if (slot.piece !== null) slot.piece.hook = slot;
  return slot;
}

/** Releases tasks no sooner than at a minute, and measures anew what comes before them. */
function release(bench: Bench, left: ReadonlySet<number>, until: number): void {
  const later = new Set<BenchTask>();
  for (let index = bench.tasks.length - 1; index >= 0; index--) {
    const task = at(bench.tasks, index);
    if (task.awaited.some((wait) => later.has(wait.task))) {
      measureTail(bench, task);
      later.add(task);
    }
    if (!left.has(index) || task.running || task.release >= until) continue;
    task.release = until;
    later.add(task);
  }
}
