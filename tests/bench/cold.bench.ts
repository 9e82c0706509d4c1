import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { builtCommand } from "../../src/fresh.mjs";
import { appendAir } from "../../src/journal/air-rows.ts";
import { openFile } from "../../src/journal/sqlite-file.ts";
import { type Instant, MINUTE } from "../../src/time/instant.ts";
import { compareRuns, type Row, type Run } from "./compare-runs.ts";
import { type OldShop, tenYears, writeOldJournal } from "./old-journal.ts";

/** Enough for a median that a busy moment does not move. */
const ROUNDS = 60;

/** It runs the program as built. */
export const runsBuilt = true;

/**
 * How long whole commands take from nothing, against a Node that does nothing: five and twenty pieces out, and the
 * same twenty with a year of readings of the air every ten minutes, or with ten years (2,500 finished pieces, 150,000
 * events) behind them. Node reads the certificates that NODE_EXTRA_CA_CERTS names at each start, which takes it longer than
 * all else: where it is set, the same is measured once more without, as in a maker's shell.
 */
export function measure(): Row[] {
  const folder = mkdtempSync(join(tmpdir(), "dryline-cold-bench-"));
  try {
    const bare = { name: "node -e 0", args: ["-e", "0"] };
    const now = Date.now();
    const few = shopOf(folder, "5 out", { now, out: 5, finished: 0, years: 1, events: 0 });
    const many = shopOf(folder, "20 out", { now, out: 20, finished: 0, years: 1, events: 0 });
    const aired = shopOf(folder, "20 out, a year of readings", {
      now,
      out: 20,
      finished: 0,
      years: 1,
      events: 0,
      readings: 52_000,
    });
    const old = shopOf(folder, "20 out, ten years behind", { now, out: 20, ...tenYears });
    const runs = [
      { name: "dryline --version", args: [builtCommand, "--version"] },
      ...[few, many, aired, old].map((shop) => shop(["now"])),
      ...[many, old].map((shop) => shop(["week"])),
    ];
    const rows = compareRuns(bare, runs, ROUNDS);
    if (process.env.NODE_EXTRA_CA_CERTS === undefined) return rows;
    return [...rows, ...compareRuns(withoutCertificates(bare), runs.map(withoutCertificates), ROUNDS)];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function withoutCertificates({ name, args, env = process.env }: Run): Run {
  const { NODE_EXTRA_CA_CERTS: _, ...rest } = env;
  return { name: `${name}, no certificates`, args, env: rest };
}

/**
 * Writes a shop and starts it once, so that its caches stand as on any day but the first. The bench is open in it whenever
 * this is measured: only then are there rows of work, and is told what leaving them brings. Gives how to run a line in it.
 */
function shopOf(
  folder: string,
  name: string,
  shop: OldShop & { readonly readings?: number },
): (words: readonly string[]) => Run {
  const home = join(folder, name.replaceAll(/\W+/g, "-"));
  mkdirSync(home);
  writeOldJournal(join(home, "journal.sqlite"), shop);
  if (shop.readings !== undefined) writeReadings(join(home, "journal.sqlite"), shop.readings, shop.now);
  const env = { ...process.env, DRYLINE_HOME: home };
  const run = (words: readonly string[]): Run => ({
    name: `dryline ${words.join(" ")}, ${name}`,
    args: [builtCommand, ...words],
    env,
  });
  const settled = [run(["settings", "zone", eveningZone(shop.now)]), run(["hours", "daily 18-22"])];
  compareRuns(run(["now"]), [...settled, run(["now"])], 1);
  return run;
}

/** The zone in which it is the hour from 19:00 on. Names of `Etc` count westward: Etc/GMT-4 is four hours ahead. */
function eveningZone(now: Instant): string {
  const ahead = (19 - new Date(now).getUTCHours() + 24) % 24;
  const hours = ahead > 12 ? ahead - 24 : ahead;
  return hours === 0 ? "Etc/UTC" : `Etc/GMT${hours > 0 ? "-" : "+"}${Math.abs(hours)}`;
}

/** So many readings of the shop's air, one every ten minutes up to now: mild days and nights that no coat is too cold in. */
function writeReadings(path: string, count: number, now: Instant): void {
  const file = openFile(path);
  const readings = Array.from({ length: count }, (_, index) => {
    const at = now - (count - index) * 10 * MINUTE;
    const day = (at / (24 * 60 * MINUTE)) * 2 * Math.PI;
    const celsius = Math.round(10 * (18 + 4 * Math.sin(day) + Math.sin(13 * index))) / 10;
    return { at, place: null, celsius, humidityPercent: Math.round(55 + 12 * Math.cos(day)), doubt: null };
  });
  appendAir(file, readings, "sensor:logger", now);
  file.database.close();
}
