import { type Command, WHEN } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { perform } from "./perform.ts";

/** What, a number, and the rest as its unit: `wood moisture 8 %`. */
const MEASURED = /^(.*?\S)\s+(-?\d+(?:[.,]\d+)?)\s*(.*)$/;

/** A measurement on pieces: what steps need before they begin (wood moisture), or what the maker wants kept. */
export const measure: Command = {
  usage: ["measure TAGS WHAT VALUE UNIT"],
  says: "writes down what was measured on pieces",
  options: WHEN,
  examples: [
    ['measure 3 "wood moisture" 8 %', "dry enough for the lead, where the step asks for it"],
    ["measure 14 ballast 12.5 g", "the weight in it"],
  ],
  async run(words, bench) {
    const { speech } = await bench.open();
    const tags = words.needTags();
    const read = readMeasured(words);
    return perform(words, bench, { act: "measure", at: words.when(speech), tags, ...read });
  },
};

function readMeasured(words: CommandWords): { what: string; value: number; unit: string } {
  const said = words.rest();
  const [, what, value, unit = ""] = MEASURED.exec(said ?? "") ?? [];
  if (what === undefined || value === undefined) {
    const got = said === null ? "" : `, not "${said}"`;
    words.problems.push(`say what was measured, its value and unit${got}: measure 3 "wood moisture" 8 %`);
    return { what: "", value: 0, unit: "" };
  }
  return { what, value: Number(value.replace(",", ".")), unit: unit.trim() };
}
