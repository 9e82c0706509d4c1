import { leastHeld } from "./hold-conflict.ts";
import type { Relaxation } from "./relaxation.ts";

/** Whether what is held in one period can have room at all, by minutes alone. */
export function fitsRoom(relaxation: Relaxation): boolean {
  const { circle } = relaxation;
  if (circle.holds.length === 0) return true;
  return circle.room.every((room, kind) => {
    const held = circle.holds.reduce(
      (sum, hold) => (hold.of === kind ? sum + leastHeld(relaxation, hold) : sum),
      0,
    );
    return held <= room * circle.period;
  });
}
