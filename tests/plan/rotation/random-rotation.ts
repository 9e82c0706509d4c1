import { type Chance, chanceFrom } from "../../../src/plan/chance.ts";
import type { RotationFile } from "../../bench/plan/rotation-file.ts";

/** A small rotation drawn from a seed: short days, so that windows, hours, families and what is in the air all bind. */
export function randomRotation(seed: number): RotationFile {
  const chance = chanceFrom(seed);
  const pick = (from: number, to: number): number => from + Math.floor(chance() * (to - from + 1));
  const count = pick(3, 6);
  const steps = Array.from({ length: count }, (_, index) => randomStep(index, chance, pick));
  const day = pick(60, 90);
  const opens = pick(5, 15);
  return {
    format: "rotation/1",
    bench: [opens, opens + pick(32, 44)],
    day,
    hooks: chance() < 0.4 ? pick(1, 3) : null,
    setups: { booth: { type: "family", minutes: pick(1, 4) } },
    exclusions: [
      { after: "wet", forbids: "dust" },
      { after: "vapour", forbids: "heat" },
    ],
    steps,
    edges: randomEdges(count, chance, pick),
    finalCure: pick(0, 30),
  };
}

type Pick = (from: number, to: number) => number;

function randomStep(index: number, chance: Chance, pick: Pick): RotationFile["steps"][number] {
  const booth = chance() < 0.5;
  const tag = chance() < 0.3 ? "dust" : chance() < 0.3 ? "heat" : null;
  return {
    name: `step ${index}`,
    p: pick(2, 6),
    station: booth ? "booth" : null,
    family: booth ? (["white", "warm", "dark"][pick(0, 2)] ?? "white") : null,
    tags: tag === null ? [] : [tag],
    marks: {
      ...(chance() < 0.3 ? { wet: pick(1, 15) } : {}),
      ...(chance() < 0.2 ? { vapour: pick(1, 10) } : {}),
    },
    hold: chance() < 0.5 ? { holder: "rack", minutes: pick(5, 100) } : null,
  };
}

/** A chain, with a step now and then that may come at any time before another. */
function randomEdges(count: number, chance: Chance, pick: Pick): RotationFile["edges"] {
  return Array.from({ length: count - 1 }, (_, index) => {
    const least = chance() < 0.4 ? 0 : pick(1, 80);
    const most = chance() < 0.5 ? null : least + pick(4, 60);
    const from = index > 0 && chance() < 0.2 ? index - 1 : index;
    return [from, index + 1, least, most] as const;
  });
}
