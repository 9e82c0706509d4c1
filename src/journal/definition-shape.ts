import { type Coat, CURES_BY, EMISSIONS, type HandsOn, LONGEST_WAIT, STAGES } from "../process/coat.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import { stepsInOrder } from "../process/order.ts";
import { COLDEST, HOTTEST } from "../process/quantity-form.ts";
import { BALLAST_METALS } from "../process/step.ts";
import {
  by,
  either,
  fields,
  flag,
  listOf,
  oneOf,
  optional,
  orNull,
  type Shape,
  text,
  valuesOf,
} from "./shape.ts";

const between =
  (least: number, most: number): Shape =>
  (value) =>
    typeof value === "number" && value >= least && value <= most;
const minutes: Shape = (value) => Number.isInteger(value) && between(0, LONGEST_WAIT)(value);
const positive = between(Number.MIN_VALUE, Number.MAX_VALUE);
const whole: Shape = (value) => Number.isInteger(value) && positive(value);
const celsius = between(COLDEST, HOTTEST);
const percent = between(0, 100);
const texts = listOf(text);
const stage = oneOf(...STAGES);

const handsOnFields = fields({ low: minutes, likely: minutes, high: minutes });

/** Hands-on minutes. */
export const HANDS_ON: Shape = (value) => handsOnFields(value) && areRising(value as HandsOn);

function areRising({ low, likely, high }: HandsOn): boolean {
  return low <= likely && likely <= high;
}

const emissions = listOf(
  fields({ what: oneOf(...EMISSIONS), lasts: either(minutes, oneOf("while set up")) }),
);
const preparation = fields({ do: text, handsOn: HANDS_ON, givesOff: emissions, cautions: texts });
const windows = listOf(
  fields({
    opens: either(minutes, oneOf("flash-off")),
    shuts: orNull(minutes),
    first: orNull(preparation),
  }),
);
const coatFields = fields({
  name: text,
  curesBy: oneOf(...CURES_BY),
  sheetAir: fields({ celsius, humidityPercent: percent }),
  lowestCelsius: orNull(celsius),
  highestCelsius: optional(celsius),
  dampestPercent: optional(percent),
  activationEnergy: optional(orNull(positive)),
  feelFirst: flag,
  stages: valuesOf(minutes),
  windows,
  flashOff: minutes,
  givesOff: emissions,
  cautions: texts,
  mix: optional(
    orNull(
      fields({
        resin: positive,
        hardener: positive,
        by: oneOf("volume", "weight"),
        perPiece: orNull(positive),
      }),
    ),
  ),
  sheet: valuesOf(text),
  source: orNull(text),
});

/** A coat, as it stands in a process or in a change of a piece's route. */
export const COAT: Shape = (value) => coatFields(value) && isInOrder(value as Coat);

/** Its stages are stages, each no sooner than the one before; its windows follow one another. */
function isInOrder(coat: Coat): boolean {
  const names = STAGES.filter((name) => coat.stages[name] !== undefined);
  if (names.length !== Object.keys(coat.stages).length) return false;
  let reached = 0;
  for (const name of names) {
    const reaches = coat.stages[name] ?? 0;
    if (reaches < reached) return false;
    reached = reaches;
  }
  let shut = 0;
  for (const { opens, shuts } of coat.windows) {
    const from = opens === "flash-off" ? coat.flashOff : opens;
    if (from < shut || (shuts !== null && shuts < from)) return false;
    shut = shuts ?? Number.POSITIVE_INFINITY;
  }
  return true;
}

const keeps = by("way", {
  heat: fields({ minutes }),
  mix: fields({ minutes, serves: whole }),
  load: fields({}),
});
const step = fields({
  name: text,
  station: text,
  handsOn: HANDS_ON,
  mayStop: flag,
  setUp: orNull(fields({ do: text, takes: minutes, keeps, putAway: minutes, cautions: texts })),
  passes: oneOf("one", "scheme"),
  coat: orNull(text),
  waitsFor: orNull(stage),
  wait: minutes,
  place: orNull(text),
  until: orNull(either(fields({ stage }), fields({ minutes }))),
  after: texts,
  look: listOf(minutes),
  givesOff: emissions,
  needs: listOf(fields({ what: text, atMost: between(0, Number.MAX_VALUE), unit: text })),
  ballast: orNull(
    fields({
      holes: whole,
      acrossMillimetres: positive,
      deepMillimetres: orNull(positive),
      grams: optional(orNull(positive)),
      metal: optional(oneOf(...BALLAST_METALS)),
    }),
  ),
  cautions: texts,
  result: orNull(valuesOf(either(fields({ goes: oneOf("on") }), fields({ backTo: text })))),
  sheet: valuesOf(text),
});
const definition = fields({
  name: text,
  piece: text,
  steps: listOf(step),
  coats: valuesOf(COAT),
  note: orNull(text),
});

/** Whether a process can be worked by as it stands: all its fields of their forms, every name it leans on there, no ring. */
export function isSoundDefinition(value: unknown): value is ProcessDefinition {
  return definition(value) && leansOnItsOwn(value as ProcessDefinition);
}

function leansOnItsOwn({ steps, coats }: ProcessDefinition): boolean {
  // A step named twice, after one that there is not or in a ring is left out of the order.
  if (steps.length === 0 || stepsInOrder(steps).length !== steps.length) return false;
  const names = new Set(steps.map(({ name }) => name));
  return steps.every(
    ({ coat, result }) =>
      (coat === null || Object.hasOwn(coats, coat)) &&
      Object.values(result ?? {}).every((answer) => !("backTo" in answer) || names.has(answer.backTo)),
  );
}
