import type { EventKind, NewEvent, Setting } from "../../src/journal/event.ts";
import { makeCoat, minutes } from "../fixtures/walker.ts";
import { hours, hung, monday, onPiece, readied, shopWide, tagged, taken } from "./made-acts.ts";

const settings: readonly Setting[] = [
  { of: "hours", from: "2026-01-01", weekly: [[{ opens: 1080, closes: 1260 }], [], [], [], [], [], []] },
  { of: "day", date: "2026-03-24", hours: [{ opens: 1080, closes: 1335 }] },
  { of: "day", date: "2026-03-25", hours: null },
  { of: "away", from: "2026-03-30", to: "2026-04-12" },
  { of: "back", from: "2026-04-10" },
  { of: "zone", name: "Europe/Dublin" },
  { of: "hands", from: "2026-01-01", pairs: 1 },
  { of: "place", name: "rack", hooks: 8 },
  { of: "place", name: "warm box", hooks: null },
  { of: "aim", from: "2026-01-01", finishedPerWeek: 3, out: null },
  { of: "default process", name: "walker" },
  { of: "default process", name: null },
];

const at = monday + hours(1);
const override = [{ over: "too early", reason: "it is warm" }];

/**
 * An event of every kind and of every form a kind has, of piece 1. Act 1 is its tagging. A kind that is missing here
 * fails the type check.
 */
export const everyKind: Readonly<Record<Exclude<EventKind, "tagged">, readonly NewEvent[]>> = {
  changed: [
    onPiece(1, { kind: "changed" }, at),
    onPiece(1, { kind: "changed", due: null, price: null, for: null, weight: 2 }, at),
    onPiece(
      1,
      {
        ...{ kind: "changed", name: "smelt", scheme: [{ colour: "ochre", minutes: null, flashOff: null }] },
        ...{ due: "2026-04-03", price: 2_800, for: "a friend" },
      },
      at,
    ),
  ],
  routed: [
    onPiece(1, { kind: "routed", why: null, change: { do: "skip", step: "drill" } }, at),
    onPiece(
      1,
      { kind: "routed", why: "a gift", change: { do: "swap", step: "seal", like: "seal", coat: null } },
      at,
    ),
    onPiece(
      1,
      {
        ...{ kind: "routed", why: null },
        change: {
          ...{ do: "put", name: "third seal", like: "seal", after: "second seal", handsOn: minutes(6) },
          coat: makeCoat("shellac", { stages: { "dry-hard": 60 }, windows: [] }),
        },
      },
      at,
    ),
  ],
  taken: [{ ...taken(1, "shape", at), overrides: override } as NewEvent],
  left: [{ ...onPiece(1, { kind: "left", step: "shape", pass: 1, part: "step" }, at), station: "bench" }],
  hung: [
    hung(1, "shape", at),
    { ...hung(1, "colours", at, "spray corner"), colour: "ochre", another: true, flashOff: 5 } as NewEvent,
    { ...hung(1, "water test", at), result: "passes", guessed: true, place: null } as NewEvent,
  ],
  readied: [
    readied("spray corner", "load ochre", at),
    {
      ...readied("lead pot", "melt lead", at),
      begun: monday,
      keeps: { way: "heat", minutes: 45 },
    } as NewEvent,
    { ...readied("bench", "mix resin", at), keeps: { way: "mix", minutes: 30, serves: 4 } } as NewEvent,
  ],
  "put away": [{ kind: "put away", at, tag: null, station: "lead pot" }],
  touched: [onPiece(1, { kind: "touched", step: "seal", pass: 1, found: "tacky" }, at)],
  moved: [onPiece(1, { kind: "moved", place: "warm box" }, at)],
  measured: [onPiece(1, { kind: "measured", what: "wood moisture", value: 8.5, unit: "%" }, at)],
  mended: [onPiece(1, { kind: "mended", what: "level the run", minutes: 10, goOnFrom: "seal" }, at)],
  scrapped: [onPiece(1, { kind: "scrapped", why: "split" }, at)],
  gone: [
    onPiece(1, { kind: "gone", how: "sold", price: 2_800, to: "a friend" }, at),
    onPiece(1, { kind: "gone", how: "kept", price: null, to: null }, at),
  ],
  noted: [shopWide({ kind: "noted", text: "cold tonight" }, at), onPiece(1, { kind: "noted", text: "" }, at)],
  ticked: [shopWide({ kind: "ticked", caution: "molten lead" }, at)],
  amended: [onPiece(1, { kind: "amended", target: 1, time: monday }, at)],
  undone: [onPiece(1, { kind: "undone", target: 1 }, at)],
  settled: settings.map((setting) => shopWide({ kind: "settled", setting }, at)),
  clock: [shopWide({ kind: "clock", since: 1, minutes: -60 }, at)],
};

/** Two ways to come into the shop: new, and already hanging. */
export const taggings: readonly NewEvent[] = [
  tagged(1),
  { ...tagged(2), due: "2026-04-03", hung: { step: "seal", since: monday - hours(22) } } as NewEvent,
];
