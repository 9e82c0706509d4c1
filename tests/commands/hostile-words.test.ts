import { Readable } from "node:stream";
import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { runCommandLine } from "../../src/commands/command-line.ts";
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

async function type(argv: readonly string[]) {
  const said: string[] = [];
  const exit = await runCommandLine(argv, {
    openWorkshop: () => bench.workshop(),
    version: "0.0.0",
    out: (text) => said.push(text),
    err: (text) => said.push(text),
    isTerminal: false,
    columns: null,
    openDashboard: async () => 0,
    input: () => Readable.from([]),
    ask: async () => "",
  });
  return { exit, said: said.join("") };
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
