import { type Candidate, setUpFor } from "./candidates.ts";
import type { ShopFacts } from "./plan-shop.ts";

/**
 * Puts together what one melt, cup, colour or coat serves: the same part of the same step at the same station. A cup
 * serves only so many, so a fuller group becomes several, in the order given. Work that shares nothing stands alone,
 * each piece a row of its own, for it is taken and hung one after the other.
 */
export function groupCandidates(candidates: readonly Candidate[], facts: ShopFacts): Candidate[][] {
  const groups = new Map<string, Candidate[][]>();
  for (const candidate of candidates) {
    const key = keyOf(candidate);
    const same = groups.get(key) ?? [];
    const open = same.at(-1);
    if (open !== undefined && open.length < mostTogether(candidate, same.length, facts)) open.push(candidate);
    else same.push([candidate]);
    groups.set(key, same);
  }
  return [...groups.values()].flat();
}

function keyOf({ tag, step, part, preparation, coat, colour, state }: Candidate): string {
  const shares = step.setUp !== null || coat !== null || colour !== null;
  const alone = !shares || tag === null || state.is === "left" ? `${tag}` : "";
  return [step.name, step.station, part, preparation?.do, step.setUp?.do, coat?.name, colour, alone].join(
    "\n",
  );
}

/** How many one cup serves: what stands for the first group, a fresh one for the others. */
function mostTogether(candidate: Candidate, groups: number, facts: ShopFacts): number {
  const keeps = candidate.part === "step" ? candidate.step.setUp?.keeps : undefined;
  if (keeps?.way !== "mix") return Number.POSITIVE_INFINITY;
  const stands = groups <= 1 && setUpFor(candidate, 1, facts)?.standing === true;
  if (!stands) return keeps.serves;
  const served = facts.standing.find(({ station }) => station === candidate.step.station)?.setUp.served ?? 0;
  return Math.max(1, keeps.serves - served);
}
