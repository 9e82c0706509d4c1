/** Any coat and any process that a file can say, for properties. */
import fc from "fast-check";
import {
  type Coat,
  CURES_BY,
  EMISSIONS,
  type Emission,
  type HandsOn,
  type Preparation,
  TIMED_STAGES,
  type Window,
} from "../../src/process/coat.ts";
import type { ProcessDefinition } from "../../src/process/definition.ts";
import { isShowable } from "../../src/process/problem.ts";
import { BALLAST_METALS, type SetUp, type Step } from "../../src/process/step.ts";

/** Text that YAML could take for something else, and any other. */
const tricky = fc.constantFrom(
  "true",
  "null",
  "~",
  "12",
  "0x1f",
  "a: b",
  "# x",
  "- x",
  "'",
  '"',
  "{x}",
  "[",
  "é, ü",
  "*",
  "&a",
  "!b",
  "%",
  "on",
  "2026-03-23",
  ": ",
  "constructor",
);

function textUpTo(maxLength: number) {
  return fc
    .oneof(tricky, fc.string({ unit: "binary", minLength: 1, maxLength }), fc.lorem({ maxCount: 8 }))
    .map((text) => text.trim().slice(0, maxLength).trim())
    .filter((text) => text.length > 0 && text !== "__proto__" && isShowable(text));
}

const name = textUpTo(60);
const minutes = fc.integer({ min: 1, max: 20_000 });
const names = fc.uniqueArray(name, { maxLength: 4 });
const sheet = fc.dictionary(name, textUpTo(200), { maxKeys: 8, noNullPrototype: true });

const handsOn: fc.Arbitrary<HandsOn> = fc
  .tuple(fc.integer({ min: 1, max: 400 }), fc.nat({ max: 300 }), fc.nat({ max: 300 }))
  .map(([low, more, most]) => ({ low, likely: low + more, high: low + more + most }));

function givesOff(...lasting: Emission["lasts"][]): fc.Arbitrary<Emission[]> {
  const lasts = fc.oneof(fc.constant(0), minutes, ...lasting.map((last) => fc.constant(last)));
  // Always in the order of EMISSIONS, as files are read.
  return fc
    .tuple(...EMISSIONS.map((what) => fc.option(fc.record({ what: fc.constant(what), lasts }))))
    .map((given) => given.filter((emission) => emission !== null));
}

const preparation: fc.Arbitrary<Preparation> = fc.record({
  do: name,
  handsOn,
  givesOff: givesOff(),
  cautions: names,
});

/** Windows one after the other; `gaps` are times between one opening or shut and the next. */
const windows: fc.Arbitrary<Window[]> = fc
  .tuple(
    fc.array(fc.record({ gap: fc.nat({ max: 3_000 }), open: minutes, first: fc.option(preparation) }), {
      minLength: 1,
      maxLength: 4,
    }),
    fc.boolean(),
  )
  .map(([spans, shutsLast]) => {
    let at = 0;
    return spans.map(({ gap, open, first }, index) => {
      const opens = at + gap;
      at = opens + open;
      return { opens, shuts: index === spans.length - 1 && !shutsLast ? null : at, first };
    });
  });

const flashOffWindow: fc.Arbitrary<Window[]> = preparation.map((first) => [
  { opens: "flash-off", shuts: 3_000, first: null },
  { opens: 4_000, shuts: null, first },
]);

const stages = fc.array(minutes, { minLength: 5, maxLength: 5 }).map((times) => {
  const rising = times.toSorted((a, b) => a - b);
  return Object.fromEntries(TIMED_STAGES.map((stage, index) => [stage, rising[index] ?? 0]));
});

const hundredths = (min: number, max: number) =>
  fc.integer({ min: min * 100, max: max * 100 }).map((value) => value / 100);

export const anyCoat: fc.Arbitrary<Coat> = fc.record({
  name,
  curesBy: fc.constantFrom(...CURES_BY),
  sheetAir: fc.record({ celsius: hundredths(-40, 120), humidityPercent: hundredths(0, 100) }),
  lowestCelsius: fc.option(hundredths(-40, 40)),
  highestCelsius: fc.option(hundredths(41, 120), { nil: undefined }),
  dampestPercent: fc.option(hundredths(1, 100), { nil: undefined }),
  mix: fc.option(
    fc.record({
      resin: fc.integer({ min: 1, max: 100 }).map((tenths) => tenths / 10),
      hardener: fc.integer({ min: 1, max: 100 }).map((tenths) => tenths / 10),
      by: fc.constantFrom("volume" as const, "weight" as const),
      perPiece: fc.option(fc.integer({ min: 1, max: 1_000 }).map((tenths) => tenths / 10)),
    }),
  ),
  activationEnergy: fc.option(fc.integer({ min: 10, max: 2_000 }).map((tenths) => tenths / 10)),
  feelFirst: fc.boolean(),
  stages,
  windows: fc.oneof(windows, flashOffWindow, fc.constant([])),
  flashOff: fc.nat({ max: 2_999 }),
  givesOff: givesOff(),
  cautions: names,
  sheet,
  source: fc.option(textUpTo(300)),
});

const setUp: fc.Arbitrary<SetUp> = fc.record({
  // Each its own words, for one pot must be told alike everywhere.
  do: fc.uuid().map((id) => `load {colour} ${id}`),
  takes: fc.nat({ max: 600 }),
  keeps: fc.oneof(
    fc.record({ way: fc.constant("heat" as const), minutes }),
    fc.record({ way: fc.constant("mix" as const), minutes, serves: fc.integer({ min: 1, max: 99 }) }),
    fc.record({ way: fc.constant("load" as const) }),
  ),
  putAway: fc.nat({ max: 600 }),
  cautions: names,
});

const tenThousandths = fc.integer({ min: 1, max: 1_000_000 }).map((value) => value / 10_000);

/** A step without its place in the order, with one of these coats or none. */
function anyStep(stepName: string, coats: readonly string[]): fc.Arbitrary<Step> {
  const loose = fc.record({
    name: fc.constant(stepName),
    station: name,
    handsOn,
    mayStop: fc.boolean(),
    setUp: fc.option(setUp),
    passes: fc.constantFrom("one" as const, "scheme" as const),
    coat: fc.option(fc.constantFrom(...coats)),
    waitsFor: fc.option(fc.constantFrom(...TIMED_STAGES)),
    wait: fc.nat({ max: 3_000 }),
    place: fc.option(name),
    until: fc.oneof(fc.record({ minutes }), fc.record({ stage: fc.constantFrom(...TIMED_STAGES) })),
    look: fc.uniqueArray(minutes, { maxLength: 3 }).map((looks) => looks.toSorted((a, b) => a - b)),
    givesOff: givesOff("while set up"),
    needs: fc
      .uniqueArray(
        fc.record({ what: name, atMost: tenThousandths, unit: fc.constantFrom("%", "g", "runs") }),
        { maxLength: 2, selector: ({ what }) => what },
      )
      .map((needs) => needs.toSorted((a, b) => (a.what < b.what ? -1 : 1))),
    ballast: fc.option(
      fc
        .record({
          holes: fc.integer({ min: 1, max: 20 }),
          acrossMillimetres: tenThousandths,
          metal: fc.constantFrom(...BALLAST_METALS),
          size: fc.oneof(
            tenThousandths.map((deepMillimetres) => ({ deepMillimetres, grams: null })),
            fc
              .integer({ min: 1, max: 100_000 })
              .map((tenths) => ({ deepMillimetres: null, grams: tenths / 10 })),
          ),
        })
        .map(({ size, ...hole }) => ({ ...hole, ...size })),
    ),
    cautions: names,
    sheet,
    after: fc.constant([] as string[]),
    result: fc.constant(null),
  });
  return loose.map(makeSound);
}

/** Takes out what no file may say together. */
function makeSound(step: Step): Step {
  const { coat, place, setUp } = step;
  const until = place === null ? null : step.until;
  return {
    ...step,
    mayStop: coat === null && step.mayStop,
    passes: coat === null ? "one" : step.passes,
    until: coat === null && until !== null && "stage" in until ? null : until,
    wait: coat === null && place !== null ? Math.max(1, step.wait) : step.wait,
    givesOff: step.givesOff.filter(({ lasts }) => setUp !== null || lasts !== "while set up"),
  };
}

/** Steps after any of those before them, so without a ring; the last may go back to any before it. */
export const anyProcess: fc.Arbitrary<ProcessDefinition> = fc
  .tuple(
    fc.uniqueArray(anyCoat, { minLength: 1, maxLength: 3, selector: (coat) => coat.name }),
    fc.uniqueArray(
      name.filter((word) => word.toLowerCase() !== "on"),
      { minLength: 1, maxLength: 6, selector: (word) => word.toLowerCase() },
    ),
  )
  .chain(([coats, stepNames]) =>
    fc.record({
      name,
      piece: name,
      note: fc.option(
        fc.array(textUpTo(80), { minLength: 1, maxLength: 4 }).map((lines) => lines.join("\n")),
      ),
      steps: fc
        .tuple(
          fc.tuple(
            ...stepNames.map((stepName) =>
              anyStep(
                stepName,
                coats.map((coat) => coat.name),
              ),
            ),
          ),
          fc.infiniteStream(fc.boolean()),
        )
        .map(([steps, flips]) => linkSteps(steps, () => flips.next().value === true)),
      coats: fc.constant(Object.fromEntries(coats.map((coat) => [coat.name, coat]))),
    }),
  )
  .map((definition) => ({ ...definition, coats: usedCoats(definition) }));

function linkSteps(steps: readonly Step[], flip: () => boolean): Step[] {
  return steps.map((step, index) => {
    const before = steps.slice(0, index).map((other) => other.name);
    const after = flip() ? before.slice(-1) : before.filter(flip);
    // Only a step with a coat on its way may wait for a stage; the first has none.
    const waitsFor =
      after.length > 0 && index > 0 && steps[0]?.coat !== null && after.includes(steps[0]?.name ?? "")
        ? step.waitsFor
        : null;
    const back = after[0] ?? step.name;
    const result = flip() ? { passes: { goes: "on" as const }, "goes back": { backTo: back } } : null;
    return { ...step, after, waitsFor, result };
  });
}

function usedCoats({ steps, coats }: Pick<ProcessDefinition, "steps" | "coats">): Record<string, Coat> {
  return Object.fromEntries(
    Object.entries(coats).filter(([coat]) => steps.some((step) => step.coat === coat)),
  );
}
