import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { jsonSchema } from "../../src/process/schema.ts";
import { coatTexts, processTexts, rulesTexts } from "./shipped-files.ts";

/** A judge from outside: the same files through a general JSON Schema validator. */
function validator(kind: Parameters<typeof jsonSchema>[0]) {
  return new Ajv2020({ allErrors: true, strictTypes: false }).compile(jsonSchema(kind));
}

const validProcess = validator("process");
const validCoat = validator("coat");

describe("the JSON Schema", () => {
  test("accepts every shipped file", () => {
    for (const { file, text } of processTexts)
      expect([file, validProcess(parse(text)), validProcess.errors]).toEqual([file, true, null]);
    for (const { file, text } of coatTexts)
      expect([file, validCoat(parse(text)), validCoat.errors]).toEqual([file, true, null]);
    for (const { file, text } of rulesTexts) {
      const valid = validator(file === "cautions.yaml" ? "cautions" : "keep-apart");
      expect([file, valid(parse(text)), valid.errors]).toEqual([file, true, null]);
    }
  });

  test("refuses unknown words, missing ones and values of another kind", () => {
    const step = { step: "a", hands_on: "5 min" };
    expect(validProcess({ process: "p", steps: [step] })).toBe(true);
    expect(validProcess({ process: "p", steps: [{ ...step, hand_on: "5 min" }] })).toBe(false);
    expect(validProcess({ process: "p", steps: [{ hands_on: "5 min" }] })).toBe(false);
    expect(validProcess({ process: "p", steps: [{ ...step, hands_on: 5 }] })).toBe(false);
    expect(validProcess({ process: "p", steps: [{ ...step, waits_for: "dry" }] })).toBe(false);
    expect(validProcess({ process: "p", steps: [] })).toBe(false);
    const coat = { coat: "c", cures_by: "water", sheet_air: "21 °C 50 %" };
    expect(validCoat(coat)).toBe(true);
    expect(validCoat({ ...coat, cures_by: "magic" })).toBe(false);
    expect(validCoat({ ...coat, windows: [{ from: "1 h", frist: {} }] })).toBe(false);
  });

  test("tells an editor how each value is written", () => {
    expect(JSON.stringify(jsonSchema("coat"))).toContain(
      '"description":"a duration, as 20 min, 4 h, 1 h 30 min, 2 d or PT4H',
    );
    expect(jsonSchema("process")).toMatchObject({
      $schema: "https://json-schema.org/draft/2020-12/schema",
      title: "dryline process file",
      required: ["process", "steps"],
      additionalProperties: false,
    });
  });
});
