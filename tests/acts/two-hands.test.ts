import { expect, test } from "vitest";
import { whatNow } from "../../src/plan/what-now.ts";
import { Bench, told } from "./bench.ts";
import { branching } from "./random-requests.ts";

/** Two pairs of hands from before the week on, and three pieces of the process whose steps branch. */
function twoPairs(): Bench {
  const bench = new Bench("Mon 18:00", branching);
  bench.tag(3, { scheme: [{ colour: "ochre", minutes: null, flashOff: 5 }] });
  bench.settle({ of: "hands", from: "2026-03-01", pairs: 2 });
  return bench;
}

const answer = (bench: Bench) => whatNow(bench.shop, { ...bench.context, newPiece: null });

test("with a second pair of hands free nothing is put down, so what is cut goes on and holds a wet coat", () => {
  const bench = twoPairs();
  bench.hang(2, { step: "cut" });
  bench.take(1, { step: "cut" });
  const { work, held } = answer(bench);
  expect(work.filter(({ step }) => step === "prime")).toEqual([]);
  const prime = held.find(({ step }) => step === "prime");
  expect(prime).toMatchObject({ tags: [2], because: { because: "dust of 1", remedy: "finish 1 first" } });
  expect(told(bench.take(2, { step: "prime" }))).toEqual(["no: held"]);
});

test("with both pairs busy the longest in hand is put down, and its dust with it", () => {
  const bench = twoPairs();
  bench.hang(2, { step: "cut" });
  bench.take(1, { step: "cut" });
  bench.at("Mon 18:05").take(3, { step: "cut" });
  // 1 is left for it, but 3 would go on making dust.
  const prime = answer(bench).held.find(({ step }) => step === "prime");
  expect(prime).toMatchObject({ tags: [2], because: { because: "dust of 3" } });
});

test("work forgotten on a piece holds its other branch, however many hands there are", () => {
  const bench = twoPairs();
  bench.hang([1, 3], { step: "cut" });
  bench.take(3, { step: "wire" });
  bench.at("Tue 18:00");
  const { work, held } = answer(bench);
  expect(work.filter(({ step }) => step === "prime").map(({ tags }) => tags)).toEqual([[1]]);
  const prime = held.find(({ step }) => step === "prime");
  expect(prime).toMatchObject({ tags: [3], because: { code: "hands full", because: "3 wire is in hand" } });
  expect(told(bench.take(3, { step: "prime" }))).toEqual(["no: other in hand"]);
});
