import { NO_PATH } from "./longest-paths.ts";
import type { Relaxation } from "./relaxation.ts";

/** Where every task starts: its minute of the circle, and its turn. */
export interface Placing {
  readonly minutes: Int32Array;
  readonly turns: Int32Array;
}

/** The earliest minutes and turns that the networks leave. It keeps to them; what else it breaks is a conflict. */
export function placeEarliest(relaxation: Relaxation): Placing {
  const { size, circle } = relaxation;
  const minutes = new Int32Array(size);
  const turns = new Int32Array(size);
  for (let task = 0; task < size; task++) minutes[task] = relaxation.minutes.least(size, task);
  for (const { begins } of circle.pieces) {
    const [first = 0] = begins;
    for (let task = 0; task < size; task++) {
      const turn = relaxation.turns.least(first, task);
      if (turn > NO_PATH) turns[task] = turn;
    }
  }
  return { minutes, turns };
}

/** The session a task is placed in; -1: none. */
export function sessionIn({ circle }: Relaxation, { minutes }: Placing, task: number): number {
  return circle.sessions.findIndex(({ closes }) => closes > (minutes[task] as number));
}
