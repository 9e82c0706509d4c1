import fc from "fast-check";
import type { EventBody, JournalEvent, NewEvent, Setting } from "../../src/journal/event.ts";
import type { Append, Appended } from "../../src/journal/journal.ts";
import type { Instant } from "../../src/time/instant.ts";
import { inARow, loadColour, makeProcess, makeStep, mixResin, varnish } from "../fixtures/walker.ts";
import { anAct, days, hours, hung, onPiece, readied, shopWide, tagged, taken } from "./made-acts.ts";

/** A process short enough for pieces to be finished, and left behind, within a few dozen acts. */
const spoon = makeProcess(
  "spoon",
  inARow([
    makeStep("paint", 10, { station: "spray corner", setUp: loadColour, mayStop: true }),
    makeStep("seal", 6, { coat: "varnish", setUp: mixResin, place: "rack" }),
    makeStep("test", 5, { result: { passes: { goes: "on" }, tune: { backTo: "seal" } } }),
  ]),
  [varnish],
);
const processes = [{ hash: "spoon-1", definition: spoon }];

/** One draw of what happens: what, on which of the pieces or acts there are, after how long, told how late. */
export interface Draw {
  readonly what: (typeof happenings)[number];
  readonly which: number;
  readonly also: boolean;
  readonly laterHours: number;
  readonly lateHours: number;
}

const happenings = [
  ...([
    "tag",
    "tag",
    "advance",
    "advance",
    "advance",
    "advance",
    "advance",
    "leave",
    "mend",
    "touch",
  ] as const),
  ...(["scrap", "note", "tick", "ready", "put away", "settle", "amend", "undo", "undo", "clock"] as const),
];

/** Sequences of draws. With hours between them from none to four days, the older half is soon past all recency. */
export const draws = (most: number) =>
  fc.array(
    fc.record<Draw>({
      what: fc.constantFrom(...happenings),
      which: fc.nat(1000),
      also: fc.boolean(),
      laterHours: fc.oneof(fc.nat(3), fc.nat(96), fc.constantFrom(24 * 100)),
      lateHours: fc.oneof(fc.constant(0), fc.nat(30)),
    }),
    { minLength: most / 2, maxLength: most, size: "max" },
  );

/**
 * Appends what the draws tell as acts would be written: most make sense, some fit nothing and are for the fold to set
 * aside. What is undone or amended is so for each of its pieces and stations.
 */
export function play(append: (act: Append) => Appended, sequence: readonly Draw[], begin: Instant): void {
  const written: JournalEvent[] = [];
  let now = begin;
  for (const draw of sequence) {
    now += hours(draw.laterHours);
    const newest = written.at(-1)?.act ?? 0;
    const nextTag = 1 + written.reduce((most, { tag }) => Math.max(most, tag ?? 0), 0);
    const at = Math.max(begin, now - hours(draw.lateHours));
    const events = eventsOf(draw, at, written, nextTag, newest);
    if (events.length === 0) continue;
    const appended = append({ ...anAct(events, now), processes });
    if (!appended.kept) throw new Error("an act that expects nothing was refused");
    for (const [index, event] of events.entries()) {
      const envelope = { seq: appended.act + index, act: appended.act, v: 1, recorded: now, together: 1 };
      written.push({ ...event, ...envelope, by: "maker" } as JournalEvent);
    }
  }
}

function eventsOf(
  draw: Draw,
  at: Instant,
  written: readonly JournalEvent[],
  nextTag: number,
  newest: number,
): NewEvent[] {
  const first = nextTag === 1 ? null : 1 + (draw.which % (nextTag - 1));
  const second = draw.also && first !== null && first > 1 ? first - 1 : null;
  const tags = [first, second].filter((tag) => tag !== null);
  const onEach = (make: (tag: number) => NewEvent) => tags.map(make);
  switch (draw.what) {
    case "tag": {
      const more = draw.also ? [nextTag, nextTag + 1] : [nextTag];
      return more.map((tag) => tagged(tag, at, "spoon-1"));
    }
    case "advance":
      return onEach((tag) => nextWork(tag, at, written, draw));
    case "leave":
      return onEach((tag) => onPiece(tag, { kind: "left", step: "paint", pass: 1, part: "step" }, at));
    case "mend":
      return onEach((tag) => onPiece(tag, { kind: "mended", what: "run", minutes: 5, goOnFrom: "seal" }, at));
    case "touch":
      return onEach((tag) => onPiece(tag, { kind: "touched", step: "seal", pass: 1, found: "dry" }, at));
    case "scrap":
      return onEach((tag) => onPiece(tag, { kind: "scrapped", why: "split" }, at));
    case "note":
      return [shopWide({ kind: "noted", text: "cold" }, at)];
    case "tick":
      return [shopWide({ kind: "ticked", caution: "epoxy" }, at)];
    case "ready":
      return [readied(draw.also ? "bench" : "spray corner", draw.also ? "mix resin" : "load white", at)];
    case "put away":
      return [{ kind: "put away", at, tag: null, station: draw.also ? "bench" : "spray corner" }];
    case "settle":
      return [shopWide({ kind: "settled", setting: someSetting(draw.which, at) }, at)];
    case "clock":
      return newest === 0 ? [] : [shopWide({ kind: "clock", since: newest, minutes: draw.which % 120 }, at)];
    case "undo":
      return about({ kind: "undone", target: targetOf(draw, written, 3) }, at, written);
    case "amend":
      return about(
        { kind: "amended", target: targetOf(draw, toldBefore(at, written), 12), time: at - hours(1) },
        at,
        written,
      );
  }
}

/** Takes the first step of the process that is not hung yet, or hangs it. */
function nextWork(tag: number, at: Instant, written: readonly JournalEvent[], { which }: Draw): NewEvent {
  const own = written.filter((event) => event.tag === tag);
  const isHung = (step: string) => own.some((event) => event.kind === "hung" && event.step === step);
  const step = spoon.steps.find(({ name }) => !isHung(name)) ?? spoon.steps[2];
  const { name = "test", station = "bench" } = step ?? {};
  if (which % 3 === 0) return taken(tag, name, at, station);
  const result = name !== "test" ? null : which % 5 === 0 ? "tune" : "passes";
  return { ...hung(tag, name, at, station), result } as NewEvent;
}

/** One of the newest acts that can still be undone or amended: no undoing, and not undone itself. 0: there is none. */
function targetOf({ which }: Draw, written: readonly JournalEvent[], among: number): number {
  const undone = written.flatMap((event) => (event.kind === "undone" ? [event.target, event.act] : []));
  const acts = [...new Set(written.map(({ act }) => act))]
    .filter((act) => !undone.includes(act))
    .slice(-among);
  return acts[which % Math.max(1, acts.length)] ?? 0;
}

/** What was told in the last day: nobody gives a better time for what was months ago. */
function toldBefore(at: Instant, written: readonly JournalEvent[]): readonly JournalEvent[] {
  return written.filter(({ recorded, kind }) => recorded > at - days(1) || kind === "undone");
}

function about(
  body: Extract<EventBody, { kind: "undone" | "amended" }>,
  at: Instant,
  written: readonly JournalEvent[],
): NewEvent[] {
  const ofAct = written.filter(({ act }) => act === body.target);
  if (ofAct.length === 0) return [];
  const unique = <T>(values: readonly (T | null)[]) => [...new Set(values.filter((value) => value !== null))];
  const events = [
    ...unique(ofAct.map(({ tag }) => tag)).map((tag) => onPiece(tag, body, at)),
    ...unique(ofAct.map(({ station }) => station)).map((station) => ({ ...shopWide(body, at), station })),
  ];
  return events.length > 0 ? events : [shopWide(body, at)];
}

function someSetting(which: number, at: Instant): Setting {
  const date = (later: number) => new Date(at + days(later)).toISOString().slice(0, 10);
  const settings: readonly Setting[] = [
    { of: "zone", name: "Europe/Dublin" },
    { of: "hours", from: date(0), weekly: [[], [], [], [], [], [{ opens: 540, closes: 960 }], []] },
    { of: "day", date: date(which % 3), hours: which % 2 === 0 ? null : [{ opens: 600, closes: 700 }] },
    { of: "away", from: date(5), to: date(9) },
    { of: "back", from: date(2) },
    { of: "hands", from: date(0), pairs: 1 + (which % 2) },
    { of: "place", name: "rack", hooks: which % 4 === 0 ? null : 8 },
    { of: "aim", from: date(0), finishedPerWeek: 3, out: null },
    { of: "default process", name: "spoon" },
  ];
  return settings[which % settings.length] ?? { of: "zone", name: "UTC" };
}
