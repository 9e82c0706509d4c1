/**
 * `npm run bench -- year`: a simulated year at the bench under dryline's plan and under what a maker does without it.
 *
 * By default four weeks of one shipped process under two seeds; `--full`: whole years of all four under three. With few
 * out one seed lies up to a tenth beside another: compare ways by the same seeds, and by many. Others: `--weeks N`,
 * `--seeds N`, `--rounds N` (of search before each act, four times as many before the first of a bench session),
 * `--process NAME`.
 */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import type { ProcessDefinition } from "../../src/process/definition.ts";
import { findCeiling } from "../../src/simulate/ceiling.ts";
import {
  byRule,
  lastRungFirst,
  newestFirst,
  oldestFirst,
  oneAtATime,
  shutsFirst,
} from "../../src/simulate/makers-rules.ts";
import { planned } from "../../src/simulate/planned.ts";
import type { Policy } from "../../src/simulate/play-forward.ts";
import { type Bench, shopFor } from "../../src/simulate/routing.ts";
import { noiseFrom } from "../../src/simulate/work-noise.ts";
import { type Figures, playStream, type Stream } from "../../src/simulate/year.ts";
import type { BenchHours, DayHours } from "../../src/time/bench-hours.ts";
import { readLibraryFiles } from "../../src/workshop/read-library-files.ts";
import type { Row } from "./compare-runs.ts";

const WEEK = 7 * 1440;
const WARM_UP = 4 * WEEK;
const SPREAD = { hands: 0.25, wait: 0.15 };
const OUT = [3, 6, 9];

/** How many pieces more than may be out a plan looks at. */
const AHEAD = 2;

/** Rounds of search before each act, and how many times as many before the first of a bench session. */
const ROUNDS = 50;
const AT_FIRST = 4;

const evening: DayHours[] = [{ opens: 18 * 60, closes: 21 * 60 }];
const day: DayHours[] = [{ opens: 9 * 60, closes: 17 * 60 }];
const hours: Readonly<Record<string, BenchHours>> = {
  evenings: weekly([evening, evening, evening, evening, evening, [{ opens: 9 * 60, closes: 16 * 60 }], []]),
  "daily hours": weekly([day, day, day, day, day, day, day]),
};

function weekly(each: readonly DayHours[][]): BenchHours {
  return { weekly: [{ from: "1970-01-01", hours: each }], days: {}, away: [] };
}

/** The ways of working, in the order of the table. */
function ways(rounds: number): Readonly<Record<string, (seed: number) => Policy>> {
  return {
    "one at a time": oneAtATime,
    "oldest first": () => byRule(oldestFirst),
    "newest first": () => byRule(newestFirst),
    "last rung first": () => byRule(lastRungFirst),
    "first to shut first": () => byRule(shutsFirst),
    dryline: (seed) => planned({ seed, rounds: { first: AT_FIRST * rounds, other: rounds } }),
  };
}

/** Prints the table; there are no rows but its own. */
export function measure(words: readonly string[]): Row[] {
  const { values } = parseArgs({
    args: [...words],
    options: {
      full: { type: "boolean", default: false },
      weeks: { type: "string" },
      seeds: { type: "string" },
      rounds: { type: "string", default: String(ROUNDS) },
      process: { type: "string", default: "carved walker" },
    },
  });
  const weeks = Number(values.weeks ?? (values.full ? 52 : 4));
  const seeds = Array.from({ length: Number(values.seeds ?? (values.full ? 3 : 2)) }, (_, seed) => seed + 1);
  const { processes, rules } = readShipped();
  for (const { definition } of processes) {
    if (!values.full && definition.name !== values.process) continue;
    for (const [name, open] of Object.entries(hours)) {
      const bench: Bench = { ...place, hours: open, rules };
      playTable({ definition, bench, name, weeks, seeds, rounds: Number(values.rounds) });
    }
  }
  return [];
}

function readShipped() {
  const folder = join(import.meta.dirname, "../../processes");
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" });
  const shipped = files.filter((file) => file.endsWith(".yaml")).map((file) => join(folder, file));
  return readLibraryFiles({ shipped, own: [] });
}

/** A rack for twelve and a wheel for six; no clock changes. */
const place = {
  from: Date.UTC(2026, 0, 5),
  zone: { name: "Etc/UTC", offsetMinutes: 0, changes: [] },
  hooks: { rack: 12, "turning wheel": 6 },
};

interface Table {
  readonly definition: ProcessDefinition;
  readonly bench: Bench;
  readonly name: string;
  readonly weeks: number;
  readonly seeds: readonly number[];
  readonly rounds: number;
}

function playTable({ definition, bench, name, weeks, seeds, rounds }: Table): void {
  const span = { from: WARM_UP, until: WARM_UP + weeks * WEEK };
  // Two weeks more, so that the last days have something to plan.
  const shop = shopFor(definition, bench, span.until + 3 * WEEK);
  const lucks = seeds.map((seed) => noiseFrom(seed, SPREAD));
  for (const out of OUT) {
    const { byHours, byTimeOut } = findCeiling(shop, out, lucks, span);
    console.log(`\n${definition.name}, ${name}, ${out} out: ${seeds.length} seeds of ${weeks} weeks`);
    console.log(
      `  ceiling ${one(Math.min(byHours, byTimeOut))} a week` +
        ` (${one(byHours)} by hours open over hands-on, ${one(byTimeOut)} by number out over time out)`,
    );
    console.log(HEAD);
    const stream: Stream = { shop, out, ahead: AHEAD };
    let oldest: number | null = null;
    for (const [way, policy] of Object.entries(ways(rounds))) {
      const begun = process.cpuUsage().user;
      const figures = mean(lucks.map((luck, index) => playStream(stream, policy(index + 1), luck, span)));
      if (way === "oldest first") oldest = figures.finishedPerWeek;
      const seconds = (process.cpuUsage().user - begun) / 1e6 / seeds.length;
      console.log(formatLine(way, figures, oldest, seconds));
    }
  }
}

const HEAD =
  "                        a week  to oldest  missed  prep min  set-up min  days out     score   s/seed";

function formatLine(way: string, figures: Figures, oldest: number | null, seconds: number): string {
  const to = oldest === null ? "" : `${(figures.finishedPerWeek / oldest).toFixed(2)}x`;
  const cells = [
    one(figures.finishedPerWeek).padStart(8),
    to.padStart(11),
    figures.missed.toFixed(2).padStart(8),
    one(figures.amends).padStart(10),
    one(figures.setUp).padStart(12),
    one(figures.daysOut).padStart(10),
    figures.score.toFixed(0).padStart(10),
    one(seconds).padStart(9),
  ];
  return `  ${way.padEnd(20)}${cells.join("")}`;
}

const one = (number: number): string => number.toFixed(1);

/** The mean of each figure over the seeds. */
function mean(years: readonly Figures[]): Figures {
  const [first, ...others] = years;
  if (first === undefined) throw new Error("no seed, no year");
  const keys = Object.keys(first) as (keyof Figures)[];
  const sums = keys.map((key) => [
    key,
    others.reduce((sum, year) => sum + year[key], first[key]) / years.length,
  ]);
  return Object.fromEntries(sums);
}
