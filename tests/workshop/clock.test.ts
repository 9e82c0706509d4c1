import { describe, expect, it } from "vitest";
import { MINUTE } from "../../src/time/instant.ts";
import { ClockWatch, scaledClock } from "../../src/workshop/clock.ts";

/** A machine whose wall clock and steady clock a test sets apart. */
function handClock() {
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

describe("watching the clock", () => {
  it("trusts a clock that only goes on, through a night of sleep too", () => {
    const { clock, pass } = handClock();
    const watch = new ClockWatch(clock);
    pass(600);
    expect(watch.doubt(clock.wall - MINUTE)).toBeNull();
  });

  it("says by how much the clock was moved while open, until the maker answers", () => {
    const { clock, pass } = handClock();
    const watch = new ClockWatch(clock);
    pass(5);
    clock.wall += 60 * MINUTE;
    expect(watch.doubt(null)).toEqual({ kind: "jumped", minutes: 60 });
    expect(watch.doubt(null)).toEqual({ kind: "jumped", minutes: 60 });
    watch.settle();
    expect(watch.doubt(null)).toBeNull();
    clock.wall -= 90 * MINUTE;
    expect(watch.doubt(null)).toEqual({ kind: "jumped", minutes: -90 });
  });

  it("doubts a clock that is behind what was already recorded", () => {
    const { clock } = handClock();
    expect(new ClockWatch(clock).doubt(clock.wall + 24 * 60 * MINUTE)).toEqual({
      kind: "behind",
      minutes: 1440,
    });
  });

  it("runs a demo's clock sixty times as fast", () => {
    const { clock, pass } = handClock();
    const fast = scaledClock(clock, 5_000, 60);
    pass(1);
    expect(fast.now()).toBe(5_000 + 60 * MINUTE);
  });
});
