import { describe, expect, test } from "vitest";
import { countRefusedCoats, damagedFiles } from "./check-damaged.ts";
import { coatTexts } from "./shipped-files.ts";

describe("of 5,000 damaged coat files", () => {
  test.each([1, 2, 3, 4, 5])("the thousand no. %i are refused clearly or sound", (thousand) => {
    const refused = countRefusedCoats(damagedFiles(coatTexts, thousand * 1_000, 1_000));
    // Damage in a comment or a source does no harm; most does.
    expect(refused).toBeGreaterThan(500);
    expect(refused).toBeLessThan(1_000);
  });
});
