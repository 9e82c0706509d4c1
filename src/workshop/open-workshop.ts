import { mkdirSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import type { By } from "../journal/event.ts";
import { openJournal } from "../journal/sqlite-journal.ts";
import { SUMMARY_VERSION, summarise } from "../shop/summarise.ts";
import type { Clock } from "./clock.ts";
import { machineClock } from "./clock.ts";
import { LiveWorkshop } from "./live-workshop.ts";
import { findPackageRoot } from "./package-root.ts";
import type { PlacesOnDisk } from "./places-on-disk.ts";
import { placesOnDisk } from "./places-on-disk.ts";
import { readTaste } from "./taste-file.ts";
import type { Workshop } from "./workshop.ts";

export interface WorkshopOptions {
  /** Where things are kept; by default this machine's places. */
  readonly places?: PlacesOnDisk;
  readonly clock?: Clock;
  readonly by?: By;
  /** The shipped process files; by default those installed with the program. */
  readonly shippedProcesses?: string;
}

/** A folder that cannot be made: one sentence with what, where and how to mend it. */
export class NoFolder extends Error {
  constructor(folder: string, code: string) {
    super(`${folder} cannot be made (${code}): give dryline a folder it may write with DRYLINE_HOME.`);
  }
}

/**
 * Opens journal, taste, clock and files.
 *
 * Throws NoHomeFolder, NoFolder or JournalTrouble: each is one sentence for the maker.
 */
export async function openWorkshop(options: WorkshopOptions = {}): Promise<Workshop> {
  const places = options.places ?? machinePlaces();
  makeFolder(places.data);
  const journal = await openJournal(join(places.data, "journal.sqlite"), {
    summarise,
    summaryVersion: SUMMARY_VERSION,
  });
  const { taste, trouble } = readTaste(places.config);
  return new LiveWorkshop({
    journal,
    places,
    taste,
    tasteTrouble: trouble,
    by: options.by ?? "maker",
    clock: options.clock ?? machineClock,
    shippedProcesses: options.shippedProcesses ?? join(findPackageRoot(), "processes"),
  });
}

/** Where this machine keeps a maker's things. */
export function machinePlaces(): PlacesOnDisk {
  const { env, platform } = globalThis.process;
  return placesOnDisk({ env, platform, homedir });
}

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
  } catch (trouble) {
    throw new NoFolder(folder, (trouble as NodeJS.ErrnoException).code ?? "unknown");
  }
}
