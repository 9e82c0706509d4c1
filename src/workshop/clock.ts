import { uptime } from "node:os";
import type { Instant, Minutes } from "../time/instant.ts";
import { MINUTE } from "../time/instant.ts";

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

/** What is wrong with the clock. `behind`: now is before the newest recorded moment. `jumped`: it was set while open. */
export interface ClockDoubt {
  readonly kind: "behind" | "jumped";
  /** Minutes the clock was (behind) or was moved (jumped), rounded up; jumped back is negative. */
  readonly minutes: Minutes;
}

/** Wall and steady time may part by this much before anyone is troubled: slewing and rounding stay below it. */
const PARTING = MINUTE;

/**
 * Watches one clock while the program is open. Ask it at every tick; it says the same doubt until `settle`.
 */
export class ClockWatch {
  readonly #clock: Clock;
  #wall: Instant;
  #steady: number;

  constructor(clock: Clock) {
    this.#clock = clock;
    this.#wall = clock.now();
    this.#steady = clock.steady();
  }

  /** What is wrong now, given the newest moment the journal has recorded. */
  doubt(newestRecorded: Instant | null): ClockDoubt | null {
    const now = this.#clock.now();
    const parted = now - this.#wall - (this.#clock.steady() - this.#steady);
    if (Math.abs(parted) > PARTING) return { kind: "jumped", minutes: Math.round(parted / MINUTE) };
    if (newestRecorded !== null && newestRecorded > now) {
      return { kind: "behind", minutes: Math.ceil((newestRecorded - now) / MINUTE) };
    }
    return null;
  }

  /** The maker has answered: the clock is right as it is now. */
  settle(): void {
    this.#wall = this.#clock.now();
    this.#steady = this.#clock.steady();
  }
}
