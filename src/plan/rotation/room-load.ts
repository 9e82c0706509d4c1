import type { CircleHold } from "./circle.ts";
import { leastHeld } from "./hold-conflict.ts";
import type { Relaxation } from "./relaxation.ts";

/**
 * Whether what is held can have room: all of it in a period, by minutes alone, and what is held for certain at any
 * moment (the compulsory part of each hold, from its latest beginning to its earliest end).
 */
export function fitsRoom(relaxation: Relaxation): boolean {
  const { circle } = relaxation;
  if (circle.holds.length === 0) return true;
  return circle.room.every((room, kind) => {
    const holds = circle.holds.filter(({ of }) => of === kind);
    const held = holds.reduce((sum, hold) => sum + leastHeld(relaxation, hold), 0);
    return held <= room * circle.period && certainAtMost(relaxation, holds, room);
  });
}

function certainAtMost(relaxation: Relaxation, holds: readonly CircleHold[], room: number): boolean {
  const { circle, minutes, size } = relaxation;
  const parts = holds.flatMap((hold) => {
    const from = -minutes.least(hold.task, size) + hold.after;
    const until = minutes.least(size, hold.task) + hold.after + leastHeld(relaxation, hold);
    return until > from ? [{ from, until }] : [];
  });
  return parts.every(({ from: moment }) => {
    const count = parts.reduce((sum, { from, until }) => {
      return sum + Math.floor((moment - from) / circle.period) - Math.floor((moment - until) / circle.period);
    }, 0);
    return count <= room;
  });
}
