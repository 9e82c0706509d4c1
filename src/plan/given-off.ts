import { at } from "./at.ts";
import type { Gives, Problem, Task } from "./problem.ts";

/**
 * What a task and its set-up put into the room, of that which something must keep apart from. A set-up gives off from its
 * beginning until it could be put away after the task.
 *
 * @param matters whether anything must keep apart from an emission
 */
export function givenOff(problem: Problem, task: Task, matters: (what: number) => boolean): Gives[] {
  // Pushed together, as in listOf.
  const given: Gives[] = [];
  for (const one of task.gives) if (matters(one.what)) given.push(one);
  if (task.setUp === null) return given;
  const { gives, putAway } = at(problem.setUps, task.setUp);
  for (const what of gives) if (matters(what)) given.push({ what, lasts: putAway, fromSetUp: true });
  return given;
}
