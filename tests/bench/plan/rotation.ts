import { solveCircle } from "../../../src/plan/rotation/solve-circle.ts";
import { type Answer, type Ask, type Family, FileTrouble } from "./family.ts";
import { readRotation } from "./read-rotation.ts";
import type { RotationFile } from "./rotation-file.ts";

/** One routing, every step once each period: least span, proven. */
export const rotation: Family = {
  format: "rotation/1",
  reads: (file, text) => file.endsWith(".json") && formatOf(text) === "rotation/1",
  solve(text, ask) {
    const file = JSON.parse(text) as RotationFile;
    return solveRotation(file, ask.period ?? file.day, ask);
  },
};

function solveRotation(file: RotationFile, period: number, ask: Ask): Answer {
  const { status, span, bound, nodes, starts } = solveCircle(readRotation(file, period), {
    stop: until(ask),
  });
  return { status, objective: span, bound: status === "infeasible" ? null : bound, rounds: nodes, starts };
}

/** Whether the time, or the rounds, of what was asked are over. */
export function until({ ms, rounds }: Ask): (nodes: number) => boolean {
  const end = performance.now() + ms;
  return (nodes) => (rounds === null ? performance.now() >= end : nodes > rounds);
}

function formatOf(text: string): unknown {
  try {
    return (JSON.parse(text) as { format?: unknown } | null)?.format;
  } catch (error) {
    throw new FileTrouble(`it is no JSON: ${(error as Error).message}`);
  }
}
