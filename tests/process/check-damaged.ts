/** What must hold of every damaged file: a refusal that leads to the place, or something sound. */
import { expect } from "vitest";
import { isSoundDefinition } from "../../src/journal/definition-shape.ts";
import type { Coat } from "../../src/process/coat.ts";
import type { ProcessDefinition } from "../../src/process/definition.ts";
import { stepsInOrder } from "../../src/process/order.ts";
import { isShowable, type Problem, sayProblem } from "../../src/process/problem.ts";
import { readCoat } from "../../src/process/read-coat.ts";
import { readProcess } from "../../src/process/read-process.ts";
import { writeCoat } from "../../src/process/write-coat.ts";
import { writeProcess } from "../../src/process/write-process.ts";
import { damage, seededPicker } from "./damage.ts";
import { coats, type TextFile, unwrap } from "./shipped-files.ts";

/** Seeds that damage a file differently, `count` of them from `first` on, spread over the files. */
export function damagedFiles(texts: readonly TextFile[], first: number, count: number): TextFile[] {
  return Array.from({ length: count }, (_, index) => {
    const text = texts[index % texts.length] ?? { file: "none", text: "" };
    const seed = first + index;
    return { file: `${text.file} damaged by seed ${seed}`, text: damage(text.text, seededPicker(seed)) };
  });
}

/** How many of the files were refused; fails at the first that is neither refused clearly nor sound. */
export function countRefusedProcesses(files: readonly TextFile[]): number {
  return files.filter(({ file, text }) => {
    const read = readProcess(text, { file: "damaged.yaml", coats });
    if ("problems" in read) return expectClear(read.problems, text, file);
    expectSoundProcess(read.definition, file);
    return false;
  }).length;
}

export function countRefusedCoats(files: readonly TextFile[]): number {
  return files.filter(({ file, text }) => {
    const read = readCoat(text, { file: "damaged.yaml" });
    if ("problems" in read) return expectClear(read.problems, text, file);
    expectSoundCoat(read.coat, file);
    return false;
  }).length;
}

function expectClear(problems: readonly Problem[], text: string, file: string): true {
  const lines = text.split("\n").length;
  expect(problems.length, file).toBeGreaterThan(0);
  for (const problem of problems) {
    const said = sayProblem(problem);
    const placed = problem.line >= 1 && problem.line <= lines && problem.column >= 1;
    // No stack trace, no word of the program's own, nothing a terminal would obey, and not a page of it.
    const plain =
      isShowable(said) && said.length < 800 && !/undefined|\[object|Error\b|\bat .*:\d+:\d+\)/.test(said);
    if (!placed || !plain) expect.fail(`${file}: ${JSON.stringify(problem)}`);
  }
  return true;
}

/** Its steps can all be worked, its coats are there, and it can be kept as a file and in the journal. */
function expectSoundProcess(definition: ProcessDefinition, file: string): void {
  const { steps } = definition;
  expect(isSoundDefinition(JSON.parse(JSON.stringify(definition))), file).toBe(true);
  expect(stepsInOrder(steps).length, file).toBe(steps.length);
  const named = steps.flatMap(({ coat }) => coat ?? []);
  expect(Object.keys(definition.coats).sort(), file).toEqual([...new Set(named)].sort());
  expect(unwrap(readProcess(writeProcess(definition), { file, coats })).definition, file).toEqual(definition);
}

function expectSoundCoat(coat: Coat, file: string): void {
  for (const { opens, shuts } of coat.windows) {
    const rising = shuts === null || (opens === "flash-off" ? coat.flashOff : opens) < shuts;
    expect(rising, file).toBe(true);
  }
  expect(unwrap(readCoat(writeCoat(coat), { file })).coat, file).toEqual(coat);
}
