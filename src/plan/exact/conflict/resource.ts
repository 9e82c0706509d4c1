/** An activity as a resource sees it: it starts `offset` after the variable of its body. */
export interface ResourceActivity {
  readonly body: number;
  readonly offset: number;
  readonly duration: number;
  readonly demand: number;
}

/**
 * The activities of one resource, seen forward or backward in time. Backward, an activity starts where it ended and
 * what was its latest end is its earliest start: so each rule is written once.
 *
 * The earliest start of activity `k` is the bound of `side[k]` plus `shift[k]`.
 */
export interface View {
  readonly side: Int32Array;
  readonly shift: Int32Array;
  readonly duration: Int32Array;
  readonly demand: Int32Array;
  readonly capacity: number;
}

export function lookForward(activities: readonly ResourceActivity[], capacity: number): View {
  return {
    side: Int32Array.from(activities, ({ body }) => 2 * body),
    shift: Int32Array.from(activities, ({ offset }) => offset),
    duration: Int32Array.from(activities, ({ duration }) => duration),
    demand: Int32Array.from(activities, ({ demand }) => demand),
    capacity,
  };
}

export function lookBackward(activities: readonly ResourceActivity[], capacity: number): View {
  return {
    ...lookForward(activities, capacity),
    side: Int32Array.from(activities, ({ body }) => 2 * body + 1),
    shift: Int32Array.from(activities, ({ offset, duration }) => -offset - duration),
  };
}
