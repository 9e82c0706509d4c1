import { readFileSync, writeFileSync } from "node:fs";
import { Readable } from "node:stream";
import { expect } from "vitest";
import { runCommandLine } from "../../src/commands/command-line.ts";
import { BenchInAFolder, type Said, wordsOf } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";

/** Journals of benches that began with some lines, by these. */
const begun = new Map<string, Buffer>();

/** A bench at which these lines were typed and done. Typed once: later ones begin with a copy of its journal. */
export async function benchAfter(
  when: string,
  lines: readonly string[],
  effort?: ConstructorParameters<typeof BenchInAFolder>[1],
): Promise<BenchInAFolder> {
  const bench = new BenchInAFolder(at(when), effort);
  const key = [when, ...lines].join("\n");
  const journal = begun.get(key);
  if (journal === undefined) {
    for (const line of lines) await done(bench, when, line);
    begun.set(key, readFileSync(bench.journal));
  } else writeFileSync(bench.journal, journal, { mode: 0o600 });
  return bench;
}

/** Types a line that must be done, and gives what it printed. */
export async function done(bench: BenchInAFolder, when: string, line: string): Promise<string> {
  bench.now = at(when);
  const said = await bench.type(line);
  expect({ line, err: said.err, exit: said.exit }).toEqual({ line, err: "", exit: 0 });
  return said.out;
}

/**
 * Types a line that must not be done: its sentence on stderr, nothing on stdout, nothing written; and the same under
 * --json as one object on stdout.
 *
 * @returns the sentence
 */
export async function refused(
  bench: BenchInAFolder,
  when: string,
  line: string,
  exit: 2 | 3,
): Promise<string> {
  bench.now = at(when);
  const before = await newest(bench);
  const said = await bench.type(line);
  expect({ line, out: said.out, exit: said.exit }).toEqual({ line, out: "", exit });
  expect(said.err).toMatch(/^[^\n]+\.\n$/);
  const asJson = await bench.type(`${line} --json`);
  expect({ line, err: asJson.err, exit: asJson.exit }).toEqual({ line, err: "", exit });
  const { error } = JSON.parse(asJson.out) as { error: { code: string; message: string; until?: string } };
  expect(error.message).toBe(said.err.trim());
  expect(error.code).not.toBe("");
  expect(await newest(bench)).toBe(before);
  return said.err.trim();
}

/** The newest event of the journal: it stands still while nothing is written. */
export async function newest(bench: BenchInAFolder): Promise<number> {
  const workshop = await bench.workshop();
  try {
    return (await workshop.shop()).newest;
  } finally {
    workshop.close();
  }
}

/** Types a line at a terminal, where questions are answered by `answers` in turn; gives the questions too. */
export async function typeAtTerminal(
  bench: BenchInAFolder,
  line: string,
  answers: readonly string[],
): Promise<Said & { readonly asked: readonly string[] }> {
  const asked: string[] = [];
  let out = "";
  let err = "";
  const exit = await runCommandLine(wordsOf(line), {
    openWorkshop: () => bench.workshop(),
    version: "0.0.0",
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    isTerminal: true,
    columns: 80,
    openDashboard: async () => 0,
    planRounds: bench.planRounds,
    input: () => Readable.from([]),
    ask: async (question) => {
      asked.push(question);
      return answers[asked.length - 1] ?? "";
    },
  });
  return { exit, out, err, asked };
}
