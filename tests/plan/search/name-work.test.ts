import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { at } from "../../../src/plan/at.ts";
import { chanceFrom } from "../../../src/plan/chance.ts";
import { firstAlike } from "../../../src/plan/search/alike-pieces.ts";
import { nameOf, nameWork } from "../../../src/plan/search/name-work.ts";
import { openBench } from "../../../src/plan/search/open-bench.ts";
import { smallProblem } from "../small-problem.ts";

/** Four pieces of three tasks each; the first two are just alike. */
const problem = smallProblem(
  [0, 1, 2, 3].flatMap((piece) => [5, 10, 20].map((minutes) => ({ piece, minutes }))),
  [{}, {}, { due: 100 }, { weight: 2 }],
);

describe("the name of work done", () => {
  test("is the same for the same tasks, in whatever sequence, and on whichever of two pieces alike", () => {
    const { tasks } = openBench(problem);
    const names = namesBy(1);
    const some = fc.shuffledSubarray([...tasks]);
    fc.assert(
      fc.property(some, (done) => {
        const swapped = done.map(({ index }) =>
          at(tasks, index < 3 ? index + 3 : index < 6 ? index - 3 : index),
        );
        expect(nameOf(done.toReversed(), names)).toBe(nameOf(done, names));
        expect(nameOf(swapped, names)).toBe(nameOf(done, names));
      }),
    );
  });

  test("is another for any other work", () => {
    const { tasks } = openBench(problem);
    const subset = fc.subarray([...tasks]);
    const counts = (done: readonly { index: number }[]): string =>
      // How often each task was done, the first two pieces taken together.
      done
        .map(({ index }) => (index < 3 ? index + 3 : index))
        .sort((a, b) => a - b)
        .join(" ");
    fc.assert(
      fc.property(subset, subset, fc.nat(1000), (one, other, seed) => {
        const names = namesBy(seed);
        expect(nameOf(one, names) === nameOf(other, names)).toBe(counts(one) === counts(other));
      }),
      { numRuns: 500 },
    );
  });
});

function namesBy(seed: number): Float64Array {
  return nameWork(openBench(problem), firstAlike(problem), chanceFrom(seed));
}
