import type { Minutes } from "../../time/instant.ts";
import type { Chance } from "../chance.ts";
import type { BenchTask } from "./bench.ts";

/** What is held is mostly all that fouls the air for as long, else a task or a few, now and then throughout. By trial. */
const HELD = { byAir: 0.7, most: 3, throughout: 0.3 };

/**
 * Holds some tasks until a moment of a stretch of bench time: what would keep other work out of the room is often best done
 * after that, which no rule sees that knows only what could go next.
 *
 * @param tasks those that may come free in the stretch: at least one
 */
export function holdSome(tasks: readonly BenchTask[], from: Minutes, until: Minutes, chance: Chance): void {
  const drawMinute = (): Minutes => Math.floor(from + (until - from) * chance());
  const fouls = tasks.filter(({ holds }) => holds > 0);
  if (fouls.length > 0 && chance() < HELD.byAir) {
    const { holds: long } = fouls[Math.floor(chance() * fouls.length)] as BenchTask;
    const minute = drawMinute();
    for (const task of fouls) if (task.holds >= long) hold(task, minute);
    return;
  }
  for (let count = Math.ceil(HELD.most * chance() * chance()); count > 0; count--) {
    const task = tasks[Math.floor(chance() * tasks.length)] as BenchTask;
    hold(task, chance() < HELD.throughout ? until : drawMinute());
  }
}

function hold(task: BenchTask, until: Minutes): void {
  task.lifted = Math.max(task.lifted, until + task.rest);
}
