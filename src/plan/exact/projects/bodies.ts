import { type LongestPaths, NO_PATH } from "./longest-paths.ts";

/**
 * Events that the lags hold rigidly to one another make one body: only its leader's time is open. The operations of a
 * job without waiting are one body, whatever their number.
 */
export interface Bodies {
  /** By event: the body it belongs to, and how long after its leader it comes. */
  readonly body: readonly number[];
  readonly offset: readonly number[];
  /** By body: the event that leads it. */
  readonly leaders: readonly number[];
}

export function findBodies({ size, length }: LongestPaths): Bodies {
  const body: number[] = [];
  const offset: number[] = [];
  const leaders: number[] = [];
  for (let event = 0; event < size; event++) {
    let own = leaders.findIndex((leader) => isRigid(length, size, leader, event));
    if (own < 0) own = leaders.push(event) - 1;
    body.push(own);
    offset.push(length[(leaders[own] as number) * size + event] as number);
  }
  return { body, offset, leaders };
}

function isRigid(length: Int32Array, size: number, one: number, other: number): boolean {
  const there = length[one * size + other] as number;
  const back = length[other * size + one] as number;
  return there !== NO_PATH && back !== NO_PATH && there + back === 0;
}
