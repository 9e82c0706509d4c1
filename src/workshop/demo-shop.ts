import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Setting } from "../journal/event.ts";
import { chanceFrom } from "../plan/chance.ts";
import { instantOf } from "../time/civil.ts";
import type { Instant } from "../time/instant.ts";
import { sessionsBetween } from "../time/sessions.ts";
import type { Clock } from "./clock.ts";
import { machineClock, scaledClock } from "./clock.ts";
import { airReader } from "./demo-air.ts";
import { playSession } from "./demo-session.ts";
import { openWorkshop } from "./open-workshop.ts";
import type { PlacesOnDisk } from "./places-on-disk.ts";
import type { Workshop } from "./workshop.ts";
import { zoneNamed } from "./zones.ts";

/** The demo's own time and place: an evening in spring, in mid-rotation. */
const ZONE = "Europe/Dublin";
const FIRST_DAY = "2026-03-15";
const LAST_DAY = "2026-04-10";
const LAST_MINUTE = 19 * 60 + 36;
const SEED = 14;

const SETTLED: readonly Setting[] = [
  { of: "zone", name: ZONE },
  {
    of: "hours",
    from: "2026-01-01",
    weekly: [
      ...Array.from({ length: 5 }, () => [{ opens: 18 * 60, closes: 21 * 60 }]),
      [{ opens: 9 * 60, closes: 16 * 60 }],
      [],
    ],
  },
  { of: "place", name: "rack", hooks: 10 },
  { of: "aim", from: "2026-01-01", finishedPerWeek: 6, out: 8 },
  { of: "default process", name: "carved walker" },
];

/** A made-up shop to play with: nothing in it touches the maker's own. */
export interface DemoShop {
  readonly workshop: Workshop;
  /** Opens the same shop once more, as another terminal would. */
  readonly reopen: () => Promise<Workshop>;
  /** Takes the scratch folder away. */
  readonly remove: () => void;
}

export interface DemoOptions {
  /** Minutes that pass in a minute. */
  readonly speed: number;
  readonly clock?: Clock;
}

/**
 * Makes a shop in a scratch folder by running the real program on a seeded script with its own clock, a month of
 * evenings long, and opens it live at the moment the script ends.
 */
export async function makeDemoShop({ speed, clock = machineClock }: DemoOptions): Promise<DemoShop> {
  const folder = mkdtempSync(join(tmpdir(), "dryline-demo-"));
  const places: PlacesOnDisk = {
    data: folder,
    config: folder,
    cache: join(folder, "cache"),
    state: join(folder, "state"),
  };
  const remove = () => rmSync(folder, { recursive: true, force: true });
  const unguard = removeOnSignal(remove);
  try {
    const end = await playHistory(places);
    const live = scaledClock(clock, end, speed);
    const reopen = () => openWorkshop({ places, clock: live, by: "demo" });
    return { workshop: await reopen(), reopen, remove };
  } catch (trouble) {
    remove();
    throw trouble;
  } finally {
    unguard();
  }
}

/** Ended while the shop is made, as by Ctrl-C, the program takes its folder along. @returns what ends this guard */
function removeOnSignal(remove: () => void): () => void {
  const signals = ["SIGINT", "SIGTERM", "SIGHUP"] as const;
  const unguard = () => {
    for (const signal of signals) process.off(signal, end);
  };
  const end = (signal: NodeJS.Signals) => {
    unguard();
    remove();
    process.kill(process.pid, signal);
  };
  for (const signal of signals) process.on(signal, end);
  return unguard;
}

/** Plays the days one session after another. Gives the moment the script ends. */
async function playHistory(places: PlacesOnDisk): Promise<Instant> {
  const zone = await zoneNamed(places.cache, ZONE);
  if (zone === null) throw new Error(`this Node has no time zone ${ZONE}`);
  const start = instantOf(zone, FIRST_DAY, 0);
  const end = instantOf(zone, LAST_DAY, LAST_MINUTE);
  const hand = { time: start, now: () => hand.time, steady: () => hand.time };
  const workshop = await openWorkshop({ places, clock: hand, by: "demo" });
  try {
    for (const setting of SETTLED) await workshop.perform({ act: "settle", at: start, setting });
    const chance = chanceFrom(SEED);
    const readAir = airReader(workshop, end);
    const hours = await workshop.hours();
    for (const session of sessionsBetween(hours, zone, start, end)) {
      // Some evenings belong to other things: that is when windows are missed.
      if (chance() < 0.12 && session.closes < end) continue;
      hand.time = session.opens;
      // A turn of the event loop, in which signals are heard: promises of the journal alone take none.
      await new Promise((resolve) => setImmediate(resolve));
      await readAir(hand.time);
      await playSession(workshop, hand, Math.min(session.closes, end), chance);
    }
    hand.time = end;
    await readAir(end);
    return end;
  } finally {
    workshop.close();
  }
}
