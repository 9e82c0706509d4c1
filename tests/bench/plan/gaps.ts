import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { checkRotation, spanOfRotation } from "../../plan/rotation/check-rotation.ts";
import { checkHoist } from "../../published/rotation/hoist-line.ts";
import type { Row } from "../compare-runs.ts";
import { checkShop } from "./check-shop.ts";
import { families } from "./families.ts";
import { readHoistFile } from "./hoist-file.ts";
import type { RotationFile } from "./rotation-file.ts";
import type { ShopFile, ShopSolution } from "./shop-file.ts";

const benchmarks = join(import.meta.dirname, "../../../../shared/benchmarks");
const bestKnown = join(import.meta.dirname, "../best-known.json");

/** Milliseconds for each file. */
const MS = 1000;

/** With how many seeds medium and large shops are searched: luck moves one of them by a tenth and more. */
const SEEDS = 5;

/** How one search of a file came out: how far above the reference, how much of it is proven, and whether it was proven best. */
interface Gap {
  readonly group: string;
  /** Share above the reference; null: no reference, or no solution. */
  readonly above: number | null;
  readonly proven: boolean;
  readonly ms: number;
}

/** The table of gaps for each family, over the benchmark files where they are there. */
export function measureGaps(): Row[] {
  if (!existsSync(benchmarks)) {
    console.log("  not run: benchmarks not here");
    return [];
  }
  const known = readReferences();
  const gaps = readdirSync(benchmarks, { recursive: true, encoding: "utf8" })
    .filter((file) => /^[a-z-]+\/[^/]+\.(json|sm|sch|txt)$/.test(file))
    .sort()
    .flatMap((file) => measureFile(file, known.get(file) ?? null));
  const groups = [...new Set(gaps.map(({ group }) => group))];
  return groups.flatMap((group) =>
    rowsOf(
      group,
      gaps.filter((gap) => gap.group === group),
    ),
  );
}

function measureFile(name: string, reference: number | null): Gap[] {
  const file = join(benchmarks, name);
  const text = readFileSync(file, "utf8");
  const family = families.find((one) => one.reads(file, text));
  if (family === undefined) return [];
  const group = groupOf(name);
  return Array.from({ length: /medium|large/.test(group) ? SEEDS : 1 }, (_, before) => {
    const begun = performance.now();
    const answer = family.solve(text, { ms: MS, rounds: null, seed: before + 1, period: null });
    const ms = performance.now() - begun;
    if (answer.starts !== null) demandRight(name, family.format, text, answer);
    const { status, objective } = answer;
    return {
      group,
      above: objective === null || reference === null ? null : objective / reference - 1,
      proven: status === "optimal" || status === "infeasible",
      ms,
    };
  });
}

/** @throws when starts are not what they are said to be: a gap would mean nothing */
function demandRight(
  name: string,
  format: string,
  text: string,
  answer: { objective: number | null; starts: unknown },
): void {
  const { wrong, objective } = judge(format, text, answer);
  if (wrong.length > 0 || objective !== answer.objective) {
    throw new Error(`${name}: ${wrong[0] ?? `the objective is ${objective}`}`);
  }
}

/** What is wrong with an answer, and what it is worth, told from the file alone. */
function judge(
  format: string,
  text: string,
  answer: { objective: number | null; starts: unknown },
): { readonly wrong: readonly string[]; readonly objective: number | null } {
  const starts = answer.starts as readonly number[];
  if (format === "shop/1") {
    return checkShop(JSON.parse(text) as ShopFile, answer as unknown as ShopSolution);
  }
  if (format === "rotation/1") {
    const file = JSON.parse(text) as RotationFile;
    return { wrong: checkRotation(file, file.day, starts), objective: spanOfRotation(file, starts) };
  }
  // Of a hoist the objective is the period itself; projects are judged in tests/published.
  const { objective } = answer;
  return {
    wrong: format === "hoist" ? checkHoist(readHoistFile(text), objective ?? 0, starts) : [],
    objective,
  };
}

/** The folder, and of our own shops and rotations the size too. */
function groupOf(name: string): string {
  const [folder = "", file = ""] = name.split("/");
  if (folder === "rotation") return `rotation, ${/\d+/.exec(file)?.[0]} steps`;
  return folder === "shop" ? `shop, ${file.split("-")[0]}` : folder;
}

/** What each file's value is set against: the proven optimum, the best seen, or the best we ever found. */
function readReferences(): Map<string, number> {
  const known = new Map<string, number>();
  for (const [file, value] of Object.entries(JSON.parse(readFileSync(bestKnown, "utf8")))) {
    known.set(`shop/${file}`, Number(value));
  }
  for (const table of ["optima.csv", "shop-optima.csv"]) {
    const [head = "", ...lines] = readFileSync(join(benchmarks, table), "utf8").trim().split("\n");
    const titles = head.split(",");
    const column = titles.indexOf(titles.includes("known_optimum") ? "known_optimum" : "objective");
    for (const line of lines) {
      const cells = line.split(",");
      const value = Number(cells[column]);
      const file = cells[0] ?? "";
      if (cells[column] && value > 0) known.set(file, Math.min(value, known.get(file) ?? value));
    }
  }
  return known;
}

function rowsOf(group: string, gaps: readonly Gap[]): Row[] {
  const above = gaps.flatMap((gap) => (gap.above === null ? [] : [100 * gap.above]));
  const proven = gaps.filter((gap) => gap.proven).length;
  const mean = above.reduce((sum, gap) => sum + gap, 0) / above.length;
  const row = (what: string, value: number, unit: string): Row => ({
    name: `${group}: ${what}`,
    value,
    unit,
    ratio: null,
  });
  return [
    ...(above.length === 0
      ? []
      : [row(`mean gap of ${above.length}`, mean, "%"), row("worst gap", Math.max(...above), "%")]),
    row(`proven, of ${gaps.length}`, proven, "searches"),
    row("longest", Math.max(...gaps.map(({ ms }) => ms)), "ms"),
  ];
}
