import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import type { Row } from "./compare-runs.ts";
import { families } from "./plan/families.ts";
import { type Ask, FileTrouble } from "./plan/family.ts";
import { measureGaps } from "./plan/gaps.ts";
import { keepBest } from "./plan/keep-best.ts";

/**
 * Plans benchmark files, one line of JSON for each; without files, the table of gaps for each family.
 *
 * @param words `FILE... [--ms N] [--rounds N] [--seed N] [--period T]`; or `FILE... --keep SEEDS [--ms N]`: shop files
 * searched with seeds 1 to SEEDS for N milliseconds of the processor each, the best kept in best-known.json
 */
export function measure(words: string[]): Row[] {
  if (words.length === 0) return measureGaps();
  try {
    const { files, ask, keep } = readWords(words);
    if (keep > 0) keepBest(files, keep, ask.ms / 1000);
    else for (const file of files) console.log(JSON.stringify(solveFile(file, ask)));
  } catch (trouble) {
    if (!(trouble instanceof FileTrouble)) throw trouble;
    console.error(trouble.message);
    process.exitCode = 2;
  }
  return [];
}

function readWords(words: string[]): { files: readonly string[]; ask: Ask; keep: number } {
  const option = { type: "string" } as const;
  try {
    const options = { ms: option, rounds: option, seed: option, period: option, keep: option };
    const { values, positionals: files } = parseArgs({ args: words, options, allowPositionals: true });
    const { ms = "1000", rounds = null, seed = "1", period = null, keep = "0" } = values;
    return {
      files,
      keep: wholeNumber("keep", keep),
      ask: {
        ms: wholeNumber("ms", ms),
        rounds: rounds === null ? null : wholeNumber("rounds", rounds),
        seed: wholeNumber("seed", seed),
        period: period === null ? null : wholeNumber("period", period),
      },
    };
  } catch (trouble) {
    throw new FileTrouble(trouble instanceof Error ? trouble.message : String(trouble));
  }
}

function wholeNumber(name: string, text: string): number {
  if (!/^\d{1,9}$/.test(text)) throw new FileTrouble(`--${name} takes a whole number, not "${text}".`);
  return Number(text);
}

function solveFile(file: string, ask: Ask) {
  const text = readText(file);
  const family = families.find((one) => one.reads(file, text));
  if (family === undefined) throw new FileTrouble(`${file} is of no format known here.`);
  const begun = performance.now();
  try {
    const { status, objective, bound, rounds, starts, ...more } = family.solve(text, ask);
    const ms = Math.round(performance.now() - begun);
    const { format } = family;
    return { file, format, status, objective, bound, ms, rounds, seed: ask.seed, starts, ...more };
  } catch (trouble) {
    if (!(trouble instanceof FileTrouble)) throw trouble;
    throw new FileTrouble(`${file}: ${trouble.message}`);
  }
}

function readText(file: string): string {
  try {
    return readFileSync(file, "utf8");
  } catch (trouble) {
    const why = trouble instanceof Error ? trouble.message : String(trouble);
    throw new FileTrouble(`${file} cannot be read: ${why}.`);
  }
}
