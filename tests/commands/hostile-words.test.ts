import { Readable } from "node:stream";
import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { CommandContext } from "../../src/commands/bench.ts";
import { runCommandLine } from "../../src/commands/command-line.ts";
import { JournalTrouble } from "../../src/journal/trouble.ts";
import { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";

/** What no line may put on a screen: controls but the line's end, halves of letters, marks that turn the writing. */
const OBEYED = /(?!\n)[\p{Cc}\p{Cs}\u200e\u200f\u202a-\u202e\u2066-\u2069\u2028\u2029]/u;

const nasty = fc.oneof(
  fc.constantFrom(
    "\u001b[2J\u001b[31mred",
    "\u001b]0;owned\u0007",
    "a\u202eb",
    "\u009b1mbold",
    "line\nbreak",
    "bell\u0007",
    "--name",
    "-x",
    "'\"$(id)",
  ),
  fc.string({ unit: "binary", minLength: 1, maxLength: 12 }),
);

let bench: BenchInAFolder;

beforeAll(async () => {
  bench = new BenchInAFolder(at("Mon 18:00"));
  await bench.type("settings zone Europe/Dublin");
  await bench.type("tag walker");
});
afterAll(() => bench.remove());

async function type(argv: readonly string[], pipe = "") {
  const said: string[] = [];
  const exit = await runCommandLine(argv, contextOf(said, pipe));
  return { exit, said: said.join("") };
}

/** A world without a terminal that keeps all that is said in it, by either stream. */
function contextOf(said: string[], pipe: string): CommandContext {
  return {
    openWorkshop: () => bench.workshop(),
    version: "0.0.0",
    out: (text) => said.push(text),
    err: (text) => said.push(text),
    isTerminal: false,
    columns: null,
    openDashboard: async () => 0,
    input: () => Readable.from([pipe]),
    ask: async () => "",
  };
}

test("hostile names and notes never put a control character on the screen, as text or as JSON", {
  timeout: 120_000,
}, async () => {
  await fc.assert(
    fc.asyncProperty(nasty, async (words) => {
      const lines = [
        ["tag", "1", `--name=${words}`],
        ["note", "1", "--", words],
        ["move", "1", "--", words],
        ["take", "1", "--", words],
        [words],
        ["now", `--${words}`],
        ["help", "--", words],
        ["process", "show", "--", words],
      ];
      for (const line of lines) {
        for (const argv of [line, ["--json", ...line].sort((a) => (a === line[0] ? -1 : 0))]) {
          const { exit, said } = await type(argv);
          expect(said).not.toMatch(OBEYED);
          expect([0, 2, 3]).toContain(exit);
        }
      }
      for (const line of [["now"], ["rack"], ["undo", "--list"], ["now", "--json"], ["week", "--json"]]) {
        expect((await type(line)).said).not.toMatch(OBEYED);
      }
    }),
    { numRuns: 25 },
  );
});

test("hostile lines of a sensor's pipe never put a control character on the screen", async () => {
  await fc.assert(
    fc.asyncProperty(nasty, async (words) => {
      const lines = [
        words,
        `${words} 20C 50%`,
        `20C 140% ${words}`,
        `{"temperature": 20, ${words}}`,
        JSON.stringify({ temperature: 20, humidity: 50, place: words, time: words }),
        JSON.stringify({ temperature: 20, humidity: 50, place: words }),
      ];
      expect((await type(["air", "-", `--from=${words}`], `${lines.join("\n")}\n`)).said).not.toMatch(OBEYED);
      for (const line of [["air"], ["air", "--json"], ["rack"]]) {
        expect((await type(line)).said).not.toMatch(OBEYED);
      }
    }),
    { numRuns: 25 },
  );
});

test("a folder with a hostile name that cannot be used is told in plain letters", async () => {
  const said: string[] = [];
  const context = contextOf(said, "");
  const trouble = new JournalTrouble(
    "damaged",
    "The journal /tmp/\u001b[31mred\u0007/journal.sqlite is damaged.",
  );
  const openWorkshop = () => Promise.reject(trouble);
  expect(await runCommandLine(["now"], { ...context, openWorkshop })).toBe(2);
  expect(said).toEqual(["The journal /tmp/red/journal.sqlite is damaged.\n"]);
});
