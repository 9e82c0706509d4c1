import fc from "fast-check";
import type { ActRequest } from "../../src/acts/request.ts";
import type { ProcessDefinition } from "../../src/process/definition.ts";
import { MINUTE } from "../../src/time/instant.ts";
import {
  acrylic,
  loadColour,
  makeCoat,
  makeProcess,
  makeStep,
  mixResin,
  resin,
  scuff,
  varnish,
  walker,
} from "../fixtures/walker.ts";

/** Felt before it is coated over, and with a gap between its two windows. */
const primer = makeCoat("primer", {
  feelFirst: true,
  stages: { "dust-free": 10, "tack-free": 30, "dry-hard": 120 },
  windows: [
    { opens: 20, shuts: 60, first: null },
    { opens: 180, shuts: 600, first: scuff },
  ],
});

/** Two branches from one step that meet again, several open at once; one may be left, one lays a coat that shuts for good. */
export const branching: ProcessDefinition = makeProcess(
  "branching",
  [
    makeStep("cut", 10, { mayStop: true, givesOff: [{ what: "dust", lasts: 0 }] }),
    makeStep("prime", 5, { after: ["cut"], coat: "primer", place: "rack" }),
    makeStep("wire", 10, { after: ["cut"], mayStop: true, station: "vice" }),
    makeStep("paint", 5, {
      after: ["prime"],
      coat: "acrylic",
      passes: "scheme",
      station: "spray corner",
      setUp: loadColour,
      place: "rack",
    }),
    makeStep("seal", 5, { after: ["paint", "wire"], coat: "varnish", place: "rack" }),
    makeStep("resin", 5, { after: ["seal"], coat: "bar-top resin", setUp: mixResin, place: "wheel" }),
    makeStep("test", 5, {
      after: ["resin"],
      waitsFor: "tack-free",
      result: { passes: { goes: "on" }, rewire: { backTo: "wire" } },
    }),
  ],
  [primer, acrylic, varnish, resin],
);

/** Mostly nothing said, sometimes this. */
const seldom = <T>(said: fc.Arbitrary<T>): fc.Arbitrary<T | null> =>
  fc.oneof({ weight: 9, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: said });

const tags = fc.oneof(
  { weight: 20, arbitrary: fc.constantFrom([1], [2], [3], [1, 2], [4]) },
  { weight: 1, arbitrary: fc.constantFrom([1, 1], [9], [], [1, 9]) },
);
const named = fc.constantFrom(
  ...[...walker.steps, ...branching.steps].map(({ name }) => name),
  "scuff",
  "clear",
  "SEAL",
  "wrie",
  "",
);
const step = fc.oneof({ weight: 3, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: named });
const colour = seldom(fc.constantFrom("ochre", "white", "Ochre", "", "red oxide"));
const anyway = fc.oneof(
  { weight: 6, arbitrary: fc.constant(null) },
  { weight: 6, arbitrary: fc.constant({ reason: "it was warm" }) },
  { weight: 1, arbitrary: fc.constant({ reason: " " }) },
);
const scheme = fc.array(
  fc.record({
    colour: fc.constantFrom("ochre", "white", "black"),
    minutes: fc.option(fc.integer({ min: 1, max: 20 })),
    flashOff: fc.option(fc.integer({ min: 0, max: 30 })),
  }),
  { maxLength: 3 },
);
const ticked = fc.oneof(
  { weight: 12, arbitrary: fc.constant(["molten lead", "solvent vapour", "epoxy", "wood and foam dust"]) },
  { weight: 1, arbitrary: fc.constantFrom(["epoxy"], [], ["no such thing"]) },
);
const station = fc.constantFrom("bench", "lead pot", "spray corner", "vice", "nowhere");
const place = fc.constantFrom("rack", "wheel", "wheel", " ");
const routes = fc.oneof(
  fc.record({
    do: fc.constant("put" as const),
    name: fc.constantFrom("wax", "seal", ""),
    like: named,
    after: named,
    coat: fc.option(fc.constant(varnish)),
    handsOn: fc.constant(null),
  }),
  fc.record({ do: fc.constant("skip" as const), step: named }),
  fc.record({
    do: fc.constant("swap" as const),
    step: named,
    like: named,
    coat: fc.option(fc.constant(acrylic)),
  }),
);
const evening = [{ opens: 1080, closes: 1260 }];
const settings = fc.constantFrom(
  { of: "place", name: "rack", hooks: 2 } as const,
  { of: "hands", from: "2026-03-01", pairs: 2 } as const,
  { of: "day", date: "2026-03-24", hours: evening } as const,
  { of: "day", date: "yesterday", hours: null } as const,
  { of: "away", from: "2026-03-30", to: "2026-04-12" } as const,
  { of: "back", from: "2026-04-02" } as const,
);

/** A request without its time; `earlier` minutes before now it was so. */
export interface Timeless {
  readonly request: { readonly act: ActRequest["act"] } & Record<string, unknown>;
  /** Minutes the clock moves on before it is asked. */
  readonly wait: number;
  readonly earlier: number;
}

const act = <Act extends ActRequest["act"]>(name: Act, facts: Record<string, fc.Arbitrary<unknown>>) =>
  fc.record({ act: fc.constant(name), ...facts });

const took = { step, colour, anyway, ticked };
const result = fc.oneof(
  { weight: 8, arbitrary: fc.constant(null) },
  { weight: 1, arbitrary: fc.constantFrom("rewire", "tune", "re", "sinks") },
  { weight: 1, arbitrary: fc.constant("passes") },
);
const hang = act("hang", {
  tags,
  ...took,
  flashOff: seldom(fc.integer({ min: 0, max: 30 })),
  place: seldom(place),
  result,
  asUsual: fc.constantFrom(false, false, false, true),
});
const text = (some: string) => fc.constantFrom(some, some, some, "");
const kinds: readonly [weight: number, fc.Arbitrary<unknown>][] = [
  [16, act("take", { tags, ...took })],
  [22, hang],
  [2, act("leave", { tags })],
  [3, act("touch", { tags, found: fc.constantFrom("tacky", "dry", "hard", "hard") })],
  [1, act("move", { tags, place })],
  [1, act("mend", { tags, what: text("a run"), minutes: fc.nat(30), goOnFrom: named })],
  [
    2,
    act("measure", {
      tags,
      what: fc.constantFrom("moisture", "grams"),
      value: fc.constantFrom(8, 12, Number.NaN),
      unit: fc.constant("%"),
    }),
  ],
  [0.2, act("scrap", { tags, why: text("dropped") })],
  [1, act("note", { tags, text: text("a knot") })],
  [1, act("change", { tags, scheme })],
  [1, act("change", { tags, price: fc.constantFrom(2800, -1, null) })],
  [2, act("route", { tags, change: routes, why: fc.constant(null) })],
  [1, act("tick", { caution: fc.constantFrom("epoxy", "lead", "none") })],
  [
    2,
    act("ready", {
      station,
      what: fc.constantFrom(null, null, "melt lead", "white", "mix", "load ochre"),
      begun: fc.constant(null),
      beginning: fc.boolean(),
      anyway,
      ticked,
    }),
  ],
  [1, act("put away", { station })],
  [
    2,
    act("amend", {
      target: fc.oneof(fc.record({ tag: fc.integer({ min: 1, max: 5 }) }), fc.record({ act: fc.nat(60) })),
      timeBefore: fc.nat(300),
    }),
  ],
  [2, act("undo", { target: seldom(fc.nat(60)) })],
  [1, act("undo", { target: fc.nat(60) })],
  [1, act("settle", { setting: settings })],
  [
    1,
    act("clock", {
      minutes: fc.constantFrom(1, 20, 60, 60, 300, -20, -60),
      since: seldom(fc.nat(60)),
      until: seldom(fc.nat(60)),
    }),
  ],
];
const requests = fc.oneof(
  ...kinds.map(([weight, arbitrary]) => ({
    weight: weight * 10,
    arbitrary: arbitrary as fc.Arbitrary<Timeless["request"]>,
  })),
);

/** Anything a maker could ask, in any order: mostly sensible, some of it nonsense; mostly now, some of it of earlier. */
export const anyRequests: fc.Arbitrary<readonly Timeless[]> = fc.array(
  fc.record({
    request: requests,
    wait: fc.oneof(
      { weight: 30, arbitrary: fc.nat(90) },
      { weight: 8, arbitrary: fc.integer({ min: 240, max: 2000 }) },
      // A clock found fast and set right.
      { weight: 1, arbitrary: fc.constant(-60) },
    ),
    earlier: fc.oneof(
      { weight: 9, arbitrary: fc.constant(0) },
      { weight: 1, arbitrary: fc.integer({ min: -2, max: 400 }) },
    ),
  }),
  { minLength: 20, maxLength: 90, size: "max" },
) as fc.Arbitrary<readonly Timeless[]>;

/** The request as it is asked at a moment. */
export function askedAt({ request, earlier }: Timeless, now: number): ActRequest {
  const { timeBefore, ...facts } = request;
  const time = typeof timeBefore === "number" ? { time: now - timeBefore * MINUTE } : {};
  return { ...facts, ...time, at: now - earlier * MINUTE } as unknown as ActRequest;
}
