import { uptime } from "node:os";
import type { Instant } from "../time/instant.ts";

/** Where time comes from; the core is handed instants and never asks. */
export interface Clock {
  /** The wall clock, as the machine has it. */
  now(): Instant;
  /** Milliseconds since some moment, running on through sleep and untouched by anyone setting the clock. */
  steady(): number;
}

/** This machine's own clock. Uptime counts sleep on Linux, so a laptop's nap does not look like a wrong clock. */
export const machineClock: Clock = { now: () => Date.now(), steady: () => uptime() * 1000 };

/** A clock that starts at `start` and runs `speed` times as fast as `real`: the demo's. */
export function scaledClock(real: Clock, start: Instant, speed: number): Clock {
  const origin = real.steady();
  const passed = () => Math.round((real.steady() - origin) * speed);
  return { now: () => start + passed(), steady: passed };
}
