import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { appendAct } from "../../src/journal/append-act.ts";
import { rebuildPieces } from "../../src/journal/derive-pieces.ts";
import { readEvents } from "../../src/journal/read-events.ts";
import { DATED_SETTING_MILLISECONDS, RECENT_MILLISECONDS } from "../../src/journal/select-events.ts";
import { openFile, type SqliteFile } from "../../src/journal/sqlite-file.ts";
import { foldShop } from "../../src/shop/fold.ts";
import type { Shop, StationState } from "../../src/shop/shop.ts";
import { SUMMARY_VERSION, summarise } from "../../src/shop/summarise.ts";
import type { Instant } from "../../src/time/instant.ts";
import { days, monday } from "./made-acts.ts";
import { draws, play } from "./random-acts.ts";
import { bareRows } from "./scratch.ts";

/**
 * What of a shop is the present, as of its newest moment: the same for a reading that leaves out what is over.
 * A week is how long what is over still counts.
 */
function presentOf(shop: Shop, pieces: ReadonlySet<number>) {
  const newest = shop.newestRecorded ?? 0;
  // An amendment moves an act by less than a day.
  const since = newest - RECENT_MILLISECONDS + days(1);
  const isRecent = (at: Instant | null) => at !== null && at >= since;
  const hours = shop.settings.hours ?? { weekly: [], days: {}, away: [] };
  const firstDate = new Date(newest - DATED_SETTING_MILLISECONDS + days(2)).toISOString().slice(0, 10);
  const station = ({ station, lastSeq, setUp, lastUsed, clearedAt }: StationState) => ({
    ...{ station, lastSeq },
    // Of one that has stood for longer, when it was last used and how many it served no longer say anything.
    setUp: setUp === null || isRecent(setUp.ready) ? setUp : { ...setUp, lastUsed: null, served: 0 },
    lastUsed: isRecent(lastUsed) ? lastUsed : null,
    clearedAt: isRecent(clearedAt) ? clearedAt : null,
  });
  return {
    newest: shop.newest,
    newestRecorded: shop.newestRecorded,
    nextTag: shop.nextTag,
    pieces: [...shop.pieces.values()].filter(({ tag }) => pieces.has(tag)),
    stations: new Map([...shop.stations].sort().map(([name, state]) => [name, station(state)])),
    settings: {
      ...shop.settings,
      hours: {
        weekly: hours.weekly,
        days: Object.fromEntries(Object.entries(hours.days).filter(([date]) => date >= firstDate)),
        away: hours.away.filter(({ to }) => to >= firstDate),
      },
    },
    ticks: shop.ticks.filter(({ at }) => isRecent(at)),
    acts: shop.acts.slice(-20),
  };
}

/** A journal by its insides, without waiting for the disk: this is about what is read, hundreds of times over. */
function openHastily(folder: string): SqliteFile {
  const file = openFile(join(folder, "journal.db"));
  file.database.pragma("synchronous = OFF");
  return file;
}

test("what a reading of the present folds to is what the whole journal folds to", () => {
  const deriving = { summarise, summaryVersion: SUMMARY_VERSION };
  fc.assert(
    fc.property(draws(70), (sequence) => {
      const folder = mkdtempSync(join(tmpdir(), "dryline-present-"));
      const file = openHastily(folder);
      try {
        rebuildPieces(file, deriving);
        play((act) => appendAct(file, act, deriving), sequence, monday);
        const whole = foldShop(readEvents(file, { of: "all" }));
        const present = foldShop(readEvents(file, { of: "out" }));
        const out = [...whole.pieces.values()].filter(({ end }) => end === null).map(({ tag }) => tag);
        // Every piece that is out, and every other that the reading brought.
        const pieces = new Set([...out, ...present.pieces.keys()]);
        expect(presentOf(present, pieces)).toEqual(presentOf(whole, pieces));
        // What is left out makes nothing misfit that fits.
        expect(whole.setAside).toEqual(expect.arrayContaining([...present.setAside]));

        const derived = bareRows(file.path, "piece", "step_time");
        rebuildPieces(file, deriving);
        expect(bareRows(file.path, "piece", "step_time")).toEqual(derived);
      } finally {
        file.database.close();
        rmSync(folder, { recursive: true });
      }
    }),
    { numRuns: 100 },
  );
});
