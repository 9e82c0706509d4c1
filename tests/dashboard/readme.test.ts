import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { pictureOf } from "../../src/dashboard/picture.ts";
import { readFacts } from "../../src/dashboard/read-facts.ts";
import { firstState } from "../../src/dashboard/state.ts";
import { update } from "../../src/dashboard/update.ts";
import { makeDemoShop } from "../../src/workshop/demo-shop.ts";
import { findPackageRoot } from "../../src/workshop/package-root.ts";

/** The screen README shows: the first block of text in it. */
function screenInReadme(): string {
  const readme = readFileSync(join(findPackageRoot(), "README.md"), "utf8");
  return /```text\n([\s\S]*?)\n```/.exec(readme)?.[1] ?? "";
}

it("shows in README what the demo's dashboard really shows", { timeout: 120_000 }, async () => {
  const still = { now: () => 0, steady: () => 0 };
  const shop = await makeDemoShop({ speed: 1, clock: still });
  try {
    const state = firstState({ columns: 80, rows: 24 }, shop.workshop.now());
    const facts = await readFacts(shop.workshop);
    const lines = pictureOf(update(state, { is: "facts", facts }).state);
    const screen = lines
      .map((spans) =>
        spans
          .map(({ text }) => text)
          .join("")
          .trimEnd(),
      )
      .join("\n");
    expect(screenInReadme()).toBe(screen.trimEnd());
    // A month of acts, and each of them counts.
    expect((await shop.workshop.shop({ of: "all" })).setAside).toEqual([]);
  } finally {
    shop.workshop.close();
    shop.remove();
  }
});
