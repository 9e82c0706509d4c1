import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { isSoundDefinition } from "../../src/journal/definition-shape.ts";
import { walker } from "../fixtures/walker.ts";
import { anyProcess } from "../process/any-process.ts";
import { processes } from "../process/shipped-files.ts";
import { anAct, monday, tagged } from "./made-acts.ts";
import { bareFile, scratchJournal } from "./scratch.ts";

type Tree = Readonly<Record<string, unknown>>;

/** Every place of a tree, as its keys from the root on. */
function* placesIn(value: unknown, path: readonly string[] = []): Generator<readonly string[]> {
  if (path.length > 0) yield path;
  if (typeof value !== "object" || value === null) return;
  for (const [key, inner] of Object.entries(value)) yield* placesIn(inner, [...path, key]);
}

/** The same tree with another value at a place; undefined takes it out. */
function withOther(value: unknown, [key, ...path]: readonly string[], other: unknown): unknown {
  if (key === undefined) return other;
  if (Array.isArray(value))
    return value.map((inner, index) => (String(index) === key ? withOther(inner, path, other) : inner));
  return { ...(value as Tree), [key]: withOther((value as Tree)[key], path, other) };
}

const keptForm = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
/** What a kept process may lack, and what is one entry of many. */
const MAY_LACK = new Set(["metal", "grams", "highestCelsius", "dampestPercent", "activationEnergy", "mix"]);
const ENTRIES_OF = new Set([
  "stages",
  "sheet",
  "result",
  "steps",
  "after",
  "look",
  "needs",
  "givesOff",
  "windows",
]);

describe.each(processes.map((definition) => [definition.name, keptForm(definition)] as const))(
  "%s",
  (_, kept) => {
    test("is sound as it is kept", () => {
      expect(isSoundDefinition(kept)).toBe(true);
    });

    test("is sound as it was kept before its younger fields were told", () => {
      const older = JSON.stringify(kept, (key, value) => (MAY_LACK.has(key) ? undefined : value));
      expect(isSoundDefinition(JSON.parse(older))).toBe(true);
    });

    test("spoilt at any place is told from a sound one", () => {
      const passed = [...placesIn(kept)].filter((path) =>
        isSoundDefinition(withOther(kept, path, { spoilt: true })),
      );
      expect(passed).toEqual([]);
    });

    test("with any field lost is told from a sound one", () => {
      const needed = [...placesIn(kept)].filter(
        (path) =>
          !MAY_LACK.has(path.at(-1) ?? "") &&
          !ENTRIES_OF.has(path.at(-2) ?? "") &&
          path.at(-2) !== "cautions",
      );
      const passed = needed.filter((path) => isSoundDefinition(keptForm(withOther(kept, path, undefined))));
      expect(passed).toEqual([]);
    });
  },
);

test("any process that a file can say is sound as it is kept", () => {
  fc.assert(fc.property(anyProcess, (definition) => isSoundDefinition(keptForm(definition))));
});

const seal = walker.steps.findIndex(({ name }) => name === "seal");
const damages: readonly (readonly [string, string])[] = [
  ["nothing of it", "{}"],
  ["half of it", JSON.stringify(walker).slice(0, 900)],
  ["a ring of steps", ofSteps({ after: ["second seal"] })],
  ["a step after one that there is not", ofSteps({ after: ["polish"] })],
  ["a coat that is not there", ofSteps({ coat: "lacquer" })],
  ["an answer that goes back to no step", ofSteps({ result: { tune: { backTo: "polish" } } })],
  ["hands-on that falls", ofSteps({ handsOn: { low: 9, likely: 6, high: 6 } })],
  ["minutes without end", ofSteps({ wait: 77_777 }).replace("77777", "1e999")],
  ["minutes below nothing", ofSteps({ wait: -5 })],
  ["stages that fall", ofVarnish({ stages: { "dust-free": 120, "tack-free": 45 } })],
  ["windows that overlap", ofVarnish({ windows: [aWindow(240, null), aWindow(300, 400)] })],
  ["no steps", JSON.stringify({ ...walker, steps: [] })],
];

test.each(damages)(
  "a process kept with %s is refused in one sentence, and nothing is changed",
  async (_, text) => {
    const { journal, path } = await scratchJournal();
    await journal.append(anAct([tagged(1)]));
    bareFile(path).prepare("UPDATE process_version SET definition = ?").run(text);
    const refusal = {
      name: "JournalTrouble",
      code: "damaged",
      message: `A process that pieces were begun with is damaged in the journal ${path}: put its newest backup in its place; the damaged one was not changed.`,
    };
    await expect(journal.read({ of: "out" })).rejects.toMatchObject(refusal);
    await expect(journal.rebuild()).rejects.toMatchObject(refusal);
    await expect(journal.append(anAct([tagged(2)]))).rejects.toMatchObject(refusal);
    const rows = bareFile(path).prepare("SELECT count(*) FROM event").pluck().get();
    expect(rows).toBe(1);
  },
);

test("a process that is not kept at all is refused likewise", async () => {
  const { journal, path } = await scratchJournal();
  await journal.append(anAct([tagged(1, monday)]));
  bareFile(path).exec("DELETE FROM process_version");
  await expect(journal.read({ of: "out" })).rejects.toMatchObject({ code: "damaged" });
});

/** The walker as it is kept, its seal another. */
function ofSteps(other: Tree): string {
  return JSON.stringify(withOther(walker, ["steps", String(seal)], { ...walker.steps[seal], ...other }));
}

/** The walker as it is kept, its varnish another. */
function ofVarnish(other: Tree): string {
  return JSON.stringify(withOther(walker, ["coats", "varnish"], { ...walker.coats.varnish, ...other }));
}

function aWindow(opens: number, shuts: number | null) {
  return { opens, shuts, first: null };
}
