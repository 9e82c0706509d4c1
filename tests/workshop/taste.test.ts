import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { USUAL_TASTE } from "../../src/workshop/taste.ts";
import { readTaste, writeTaste } from "../../src/workshop/taste-file.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dryline-taste-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

it("reads back what was written, and the usual for the rest", async () => {
  await writeTaste(folder, "clock", "12 h");
  await writeTaste(folder, "firstDayOfWeek", 7);
  expect(readTaste(folder)).toEqual({
    taste: { ...USUAL_TASTE, clock: "12 h", firstDayOfWeek: 7 },
    trouble: null,
  });
});

it("takes the usual where there is no file, and says which value it did not understand", () => {
  expect(readTaste(folder)).toEqual({ taste: USUAL_TASTE, trouble: null });
  writeFileSync(join(folder, "config.json"), JSON.stringify({ units: "cubits", clock: "12 h" }));
  const { taste, trouble } = readTaste(folder);
  expect(taste).toEqual({ ...USUAL_TASTE, clock: "12 h" });
  expect(trouble).toContain("units");
});

it("goes on with the usual taste over a damaged file, and names the file", () => {
  writeFileSync(join(folder, "config.json"), "{ units:");
  const { taste, trouble } = readTaste(folder);
  expect(taste).toEqual(USUAL_TASTE);
  expect(trouble).toContain(join(folder, "config.json"));
});
