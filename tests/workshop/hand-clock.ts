import { MINUTE } from "../../src/time/instant.ts";

/** A machine whose wall clock and steady clock a test sets apart. */
export function handClock() {
  const clock = {
    wall: 1_000_000_000_000,
    steadyTime: 0,
    now: () => clock.wall,
    steady: () => clock.steadyTime,
  };
  const pass = (minutes: number) => {
    clock.wall += minutes * MINUTE;
    clock.steadyTime += minutes * MINUTE;
  };
  return { clock, pass };
}
