import { expect, test } from "vitest";
import type { Refusal } from "../../src/acts/refusal.ts";
import { sayRefusal } from "../../src/words/say-refusal.ts";
import { at } from "../fixtures/week-time.ts";
import { speechAt } from "./made-rows.ts";

type Held = Extract<Refusal, { code: "held" }>;

/** What is said of a piece held by these, none of which the clock alone ends. */
const said = (tag: number, step: string, holds: Held["holds"]) =>
  sayRefusal({ code: "held", exit: 3, tags: [tag], step, holds, until: null }, speechAt("Tue 18:21"));

test("a remedy that ends two holds at once is named once", () => {
  const holds = ["heat", "lead fume"].map((what) => ({
    code: "keep apart" as const,
    because: `${what} of the lead pot`,
    until: null,
    tags: [],
    remedy: "put the lead pot away",
  }));
  expect(said(4, "sand", holds)).toBe(
    "4 sand is held by heat of the lead pot and lead fume of the lead pot: put the lead pot away, or go on anyway with a reason.",
  );
});

test("what ends by itself tells when, where the rest does not", () => {
  expect(
    said(3, "pour the ballast", [
      { code: "keep apart", because: "dust of 3", until: at("Tue 18:30"), tags: [3], remedy: null },
      {
        code: "measure first",
        because: "wood moisture of 3 is not measured, at most 10 %",
        until: null,
        tags: [3],
        remedy: "measure the wood moisture",
      },
    ]),
  ).toBe(
    "3 pour the ballast is held by dust of 3 till 18:30, and as wood moisture of 3 is not measured, at most 10 %: measure the wood moisture, or go on anyway with a reason.",
  );
});
