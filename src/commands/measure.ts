import type { Tag } from "../journal/event.ts";
import { measurementsAsked } from "../shop/measurements-asked.ts";
import { readTags } from "../words/read-tags.ts";
import { sayList } from "../words/say-list.ts";
import type { Workshop } from "../workshop/workshop.ts";
import { type Command, WHEN } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { perform } from "./perform.ts";

/** What, a number, and the rest as its unit: `wood moisture 8 %`. */
const MEASURED = /^(.*?\S)\s+(-?\d+(?:[.,]\d+)?)(?![\d.,]|e\d)\s*(.*)$/;
/** Tags and a number with at most a unit, but not what it is: `3 8 %`. */
const VALUE_ALONE = /^((?:#?\d[\d,.#–-]*\s+)+)(-?\d+(?:[.,]\d+)?)\s*(\D{0,8})$/;

/** What was measured, as it was said. */
interface Measured {
  readonly tags: readonly Tag[];
  readonly what: string;
  readonly value: number;
  readonly unit: string;
}

/**
 * A measurement on pieces: what steps need before they begin (wood moisture), or what the maker wants kept. Where steps
 * ask for one thing only, its value alone is enough.
 */
export const measure: Command = {
  usage: ["measure TAGS WHAT VALUE UNIT", "measure TAGS VALUE"],
  says: "writes down what was measured on pieces",
  options: WHEN,
  examples: [
    ['measure 3 "wood moisture" 8 %', "dry enough for the lead, where the step asks for it"],
    ["measure 3 8", "the same, where it is all that its steps ask for"],
    ["measure 14 ballast 12.5 g", "the weight in it"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const read = (await readValueAlone(words, workshop)) ?? readMeasured(words);
    return perform(words, bench, { act: "measure", at: words.when(speech), ...read });
  },
};

/** A value without what it is; null: that was said too, or is not known. */
async function readValueAlone(words: CommandWords, workshop: Workshop): Promise<Measured | null> {
  const [, first = "", value, said = ""] = VALUE_ALONE.exec(words.ahead().join(" ")) ?? [];
  const tags = first.split(/\s+/).flatMap((word) => (word === "" ? [] : (readTags(word) ?? [])));
  if (value === undefined || tags.length === 0) return null;
  const shop = await workshop.shop({ of: "tags", tags });
  const asked = measurementsAsked(
    tags.flatMap((tag) => shop.pieces.get(tag) ?? []),
    null,
  );
  const [only] = asked;
  if (only === undefined) return null;
  words.rest();
  if (asked.length > 1) {
    words.problems.push(`say which was measured: ${sayList(asked.map(({ what }) => what))}`);
  }
  const unit = said.trim();
  if (unit !== "" && unit !== only.unit)
    words.problems.push(`${only.what} is asked in ${only.unit}, not ${unit}`);
  return { tags: [...new Set(tags)], what: only.what, value: numberOf(value), unit: only.unit };
}

function readMeasured(words: CommandWords): Measured {
  const tags = words.needTags();
  const said = words.rest();
  const [, what, value, unit = ""] = MEASURED.exec(said ?? "") ?? [];
  if (what === undefined || value === undefined) {
    const got = said === null ? "" : `, not "${said}"`;
    words.problems.push(`say what was measured, its value and unit${got}: measure 3 "wood moisture" 8 %`);
    return { tags, what: "", value: 0, unit: "" };
  }
  if (unit.trim() === "")
    words.problems.push(`say its unit too: measure ${tags[0] ?? 3} "${what}" ${value} %`);
  return { tags, what, value: numberOf(value), unit: unit.trim() };
}

function numberOf(value: string): number {
  return Number(value.replace(",", "."));
}
