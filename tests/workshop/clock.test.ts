import { expect, it } from "vitest";
import { MINUTE } from "../../src/time/instant.ts";
import { scaledClock } from "../../src/workshop/clock.ts";
import { handClock } from "./hand-clock.ts";

it("runs a demo's clock sixty times as fast", () => {
  const { clock, pass } = handClock();
  const fast = scaledClock(clock, 5_000, 60);
  pass(1);
  expect(fast.now()).toBe(5_000 + 60 * MINUTE);
});
