import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { hashProcess } from "../../src/process/hash.ts";
import { processes, readWalker } from "./shipped-files.ts";

test("the hash is SHA-256 of the JSON with sorted keys", () => {
  const tiny = { steps: [], piece: "lure", note: null, name: "x", coats: {} };
  const sorted = '{"coats":{},"name":"x","note":null,"piece":"lure","steps":[]}';
  expect(hashProcess(tiny)).toBe(createHash("sha256").update(sorted).digest("hex"));
});

test("the order of keys does not change the hash, any word does", () => {
  const walker = readWalker();
  const turned = Object.fromEntries(Object.entries(walker).reverse()) as typeof walker;
  expect(hashProcess(turned)).toBe(hashProcess(walker));
  expect(hashProcess({ ...walker, name: "walker 2" })).not.toBe(hashProcess(walker));
  const [first, ...rest] = walker.steps;
  expect(hashProcess({ ...walker, steps: [...rest, ...(first ? [first] : [])] })).not.toBe(
    hashProcess(walker),
  );
});

test("every shipped process has a hash of its own", () => {
  const hashes = processes.map(hashProcess);
  expect(new Set(hashes).size).toBe(processes.length);
  for (const hash of hashes) expect(hash).toMatch(/^[0-9a-f]{64}$/);
});
