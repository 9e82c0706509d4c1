/** Small files whose wrong place is marked by §, so that a test shows where a problem must point. */
import { sayProblem } from "../../src/process/problem.ts";
import { readCoat } from "../../src/process/read-coat.ts";
import { readProcess } from "../../src/process/read-process.ts";
import { cautionNames, coats } from "./shipped-files.ts";

/** What is told of a file, and the place of its mark as `line:column`. */
export interface Told {
  readonly problems: readonly string[];
  readonly marked: string;
}

/** A process of these step lines. */
export function tellProcess(...steps: string[]): Told {
  const { text, marked } = unmark(["process: test", "steps:", ...steps]);
  const read = readProcess(text, { file: "a.yaml", coats, cautions: cautionNames });
  return { problems: "problems" in read ? read.problems.map(sayProblem) : [], marked };
}

/** A coat with these lines beside its name, its way of curing and its air. */
export function tellCoat(...lines: string[]): Told {
  const { text, marked } = unmark(["coat: test", "cures_by: solvent", "sheet_air: 20 °C 50 %", ...lines]);
  const read = readCoat(text, { file: "a.yaml", cautions: cautionNames });
  return { problems: "problems" in read ? read.problems.map(sayProblem) : [], marked };
}

function unmark(lines: readonly string[]): { text: string; marked: string } {
  const marked = lines.join("\n").split("\n");
  const line = marked.findIndex((text) => text.includes("§"));
  return {
    text: marked.join("\n").replace("§", ""),
    marked: `${line + 1}:${(marked[line] ?? "").indexOf("§") + 1}`,
  };
}
