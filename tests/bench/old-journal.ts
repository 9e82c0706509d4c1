/** A journal with years behind it, written straight into the file in seconds: for benchmarks, not a story. */

import { insertEvents } from "../../src/journal/append-act.ts";
import type { NewEvent, Tag } from "../../src/journal/event.ts";
import { openFile } from "../../src/journal/sqlite-file.ts";
import type { Step } from "../../src/process/step.ts";
import { type Instant, MINUTE } from "../../src/time/instant.ts";
import { walker } from "../fixtures/walker.ts";
import {
  anAct,
  days,
  hung,
  onPiece,
  readied,
  shopWide,
  tagged,
  taken,
  walkers,
} from "../journal/made-acts.ts";

export interface OldShop {
  /** The last moment of it. */
  readonly now: Instant;
  /** Pieces finished over the years, evenly. */
  readonly finished: number;
  readonly years: number;
  /** Pieces out at `now`, each some steps along. */
  readonly out: number;
  /** Events in all: notes are added to the finished pieces until there are so many. */
  readonly events: number;
}

/** What the speed of a journal with ten years behind it is measured on. */
export const tenYears = { finished: 2_500, years: 10, events: 150_000 };

interface Dated {
  readonly at: Instant;
  readonly events: readonly NewEvent[];
}

const colours = ["white", "ochre", "black"];
/** From one step of a piece to its next, at most two a day. */
const stepEvery = days(1) / 2;
const lifetime = walker.steps.length * stepEvery;

/** Writes the file. Its derived rows are made when it is first opened. */
export function writeOldJournal(path: string, shop: OldShop): void {
  const file = openFile(path);
  const acts = [...settle(shop), ...liveThrough(shop)]
    .filter(({ at }) => at <= shop.now)
    .toSorted((a, b) => a.at - b.at);
  file.database.pragma("synchronous = OFF");
  file.database.transaction(() => {
    for (const { hash, definition } of walkers) {
      file.prepare("INSERT INTO process_version VALUES (?, ?)").run(hash, JSON.stringify(definition));
    }
    let newest = 0;
    for (const { at, events } of acts) {
      insertEvents(file, anAct(events, at), newest + 1);
      newest += events.length;
    }
  })();
  file.database.close();
}

/** Every piece from its tagging on; tags are given in the order of time. */
function liveThrough({ now, finished, years, out, events }: OldShop): Dated[] {
  const begin = now - days(365 * years);
  const apart = Math.floor((days(365 * years) - lifetime - stepEvery) / Math.max(1, finished));
  const past = Array.from({ length: finished }, (_, index) => live(index + 1, begin + index * apart));
  const written = past.flat().reduce((sum, act) => sum + act.events.length, 0);
  const notes = Array.from({ length: Math.max(0, events - written) }, (_, index): Dated => {
    const tag = 1 + (index % Math.max(1, finished));
    const at = begin + (tag - 1) * apart + stepEvery * (1 + (index % 9));
    return { at, events: [onPiece(tag, { kind: "noted", text: "a little rough at the tail" }, at)] };
  });
  const present = Array.from({ length: out }, (_, index) => {
    const stepsDone = 1 + (index % (walker.steps.length - 2));
    // Those at the same step are hours apart: a pot is put away before it is lit for the next.
    const apart = Math.floor(index / (walker.steps.length - 2)) * 120 * MINUTE;
    return live(finished + index + 1, now - stepsDone * stepEvery - stepEvery / 2 + apart);
  });
  return [...past.flat(), ...notes, ...present.flat()];
}

/** One piece from its tagging to its water test. */
function live(tag: Tag, begin: Instant): Dated[] {
  const scheme = colours.map((colour) => ({ colour, minutes: 8, flashOff: 10 }));
  const work = walker.steps.flatMap((step, index) => workThrough(tag, step, begin + (index + 1) * stepEvery));
  return [{ at: begin, events: [{ ...tagged(tag, begin), scheme } as NewEvent] }, ...work];
}

/** A step taken and hung, with what is readied for it and looked at after it. */
function workThrough(tag: Tag, step: Step, at: Instant): Dated[] {
  const passes = step.passes === "scheme" ? colours : [null];
  const acts = passes.flatMap((colour, index): Dated[] => {
    const begun = at + index * 30 * MINUTE;
    const done = begun + step.handsOn.likely * MINUTE;
    const pass = { pass: index + 1, colour };
    return [
      { at: begun, events: [{ ...taken(tag, step.name, begun, step.station), ...pass } as NewEvent] },
      {
        at: done,
        events: [{ ...hung(tag, step.name, done, step.station), ...pass, place: step.place } as NewEvent],
      },
    ];
  });
  const { setUp } = step;
  if (setUp !== null) {
    const what = setUp.do.replace("{colour}", "white");
    const { keeps, putAway: putAwayMinutes } = setUp;
    const ready = { ...readied(step.station, what, at), keeps, putAwayMinutes } as NewEvent;
    const after = at + 100 * MINUTE;
    acts.unshift({ at, events: [ready] });
    acts.push({ at: after, events: [{ kind: "put away", at: after, tag: null, station: step.station }] });
  }
  for (const caution of step.cautions) acts.push({ at, events: [shopWide({ kind: "ticked", caution }, at)] });
  if (step.coat !== null) {
    const felt = at + 300 * MINUTE;
    const touch = { kind: "touched", step: step.name, pass: passes.length, found: "dry" } as const;
    acts.push({ at: felt, events: [onPiece(tag, touch, felt)] });
  }
  return acts;
}

/** A weekly pattern at the beginning, and another end of the evening once a week. */
function settle({ now, years }: OldShop): Dated[] {
  const begin = now - days(365 * years);
  const evening = [{ opens: 18 * 60, closes: 21 * 60 }];
  const weekly = [evening, evening, evening, evening, evening, evening, []];
  const dateOf = (at: Instant) => new Date(at).toISOString().slice(0, 10);
  const single = Array.from({ length: 52 * years }, (_, week): Dated => {
    const at = begin + days(7 * week);
    const setting = { of: "day", date: dateOf(at), hours: [{ opens: 18 * 60, closes: 22 * 60 }] } as const;
    return { at, events: [shopWide({ kind: "settled", setting }, at)] };
  });
  const pattern = { of: "hours", from: dateOf(begin), weekly } as const;
  return [{ at: begin, events: [shopWide({ kind: "settled", setting: pattern }, begin)] }, ...single];
}
