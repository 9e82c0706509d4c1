import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { hashProcess } from "../../src/process/hash.ts";
import { readCoat } from "../../src/process/read-coat.ts";
import { readProcess } from "../../src/process/read-process.ts";
import { writeCoat } from "../../src/process/write-coat.ts";
import { writeProcess } from "../../src/process/write-process.ts";
import { anyCoat, anyProcess } from "./any-process.ts";
import { coats, processes, unwrap } from "./shipped-files.ts";

describe("what is written reads back to the same", () => {
  test.each(processes.map((process) => [process.name, process] as const))("%s", (_name, process) => {
    const { definition } = unwrap(readProcess(writeProcess(process), { file: "again.yaml", coats }));
    expect(definition).toEqual(process);
    expect(hashProcess(definition)).toBe(hashProcess(process));
  });

  test.each(Object.values(coats).map((coat) => [coat.name, coat] as const))("%s", (_name, coat) => {
    expect(unwrap(readCoat(writeCoat(coat), { file: "again.yaml" })).coat).toEqual(coat);
  });

  test("any coat", () => {
    fc.assert(
      fc.property(anyCoat, (coat) => {
        expect(unwrap(readCoat(writeCoat(coat), { file: "any.yaml" })).coat).toEqual(coat);
      }),
      { numRuns: 300 },
    );
  });

  test("any process", () => {
    fc.assert(
      fc.property(anyProcess, (process) => {
        const read = readProcess(writeProcess(process), { file: "any.yaml", coats: process.coats });
        expect(unwrap(read).definition).toEqual(process);
      }),
      { numRuns: 300 },
    );
  });
});
