import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Journal } from "../../src/journal/journal.ts";
import { openJournal } from "../../src/journal/sqlite-journal.ts";
import { foldShop } from "../../src/shop/fold.ts";
import { SUMMARY_VERSION, summarise } from "../../src/shop/summarise.ts";
import type { Instant } from "../../src/time/instant.ts";
import { anAct, days, monday, shopWide } from "../journal/made-acts.ts";
import type { Row } from "./compare-runs.ts";
import { tenYears, writeOldJournal } from "./old-journal.ts";

/** Pieces out in each of the journals. */
const OUT = 20;

/** What an act and a reading cost, in a young journal and with ten years behind it, and what folding all of it takes. */
export async function measure(): Promise<Row[]> {
  const folder = mkdtempSync(join(tmpdir(), "dryline-bench-journal-"));
  const made: Journal[] = [];
  const open = async (name: string, finished: number, years: number, events: number) => {
    const path = join(folder, name);
    writeOldJournal(path, { now: monday, finished, years, out: OUT, events });
    const journal = await openJournal(path, { summarise, summaryVersion: SUMMARY_VERSION });
    made.push(journal);
    return journal;
  };
  try {
    // Five weeks of the same life: what was finished of late is read with what is out.
    const { finished, years, events } = tenYears;
    const young = await open("young.db", finished / 100, years / 100, events / 100);
    const old = await open("old.db", finished, years, events);
    return [
      ...(await pair("append an act, on disk", young, old, 300, append)),
      ...(await pair("read what is out", young, old, 60, (journal) => journal.read({ of: "out" }))),
      ...(await pair("read a week", young, old, 60, (journal) =>
        journal.read({ of: "span", from: monday - days(7), to: monday }),
      )),
      await foldAll(old),
    ];
  } finally {
    for (const journal of made) journal.close();
    rmSync(folder, { recursive: true });
  }
}

/** A note of the whole shop, each a minute after the last; it is on disk when the append is done. */
function append(journal: Journal, round: number): Promise<unknown> {
  const at: Instant = monday + round * 60_000;
  return journal.append(anAct([shopWide({ kind: "noted", text: "a little rough at the tail" }, at)], at));
}

/** The median of each, taking turns; the old one's ratio is to the young one's. */
async function pair(
  name: string,
  young: Journal,
  old: Journal,
  rounds: number,
  ask: (journal: Journal, round: number) => Promise<unknown>,
): Promise<Row[]> {
  const times: [number[], number[]] = [[], []];
  for (let round = 0; round < rounds; round++) {
    for (const [which, journal] of [young, old].entries()) {
      const begun = performance.now();
      await ask(journal, round);
      times[which]?.push(performance.now() - begun);
    }
  }
  const [before = Number.NaN, after = Number.NaN] = times.map(median);
  return [
    { name: `${name}, five weeks behind it`, value: before, unit: "ms", ratio: 1 },
    { name: `${name}, ten years behind it`, value: after, unit: "ms", ratio: after / before },
  ];
}

/** Time of the processor, which a busy machine does not lengthen. */
async function foldAll(journal: Journal): Promise<Row> {
  const reading = await journal.read({ of: "all" });
  const times: number[] = [];
  for (let round = 0; round < 5; round++) {
    const begun = process.cpuUsage();
    foldShop(reading);
    times.push(process.cpuUsage(begun).user / 1000);
  }
  const name = `fold all ${reading.events.length} events, processor`;
  return { name, value: median(times), unit: "ms", ratio: null };
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
