import { COAT, HANDS_ON } from "./definition-shape.ts";
import type { EventKind } from "./event.ts";
import { by, fields, flag, listOf, number, oneOf, optional, orNull, type Shape, text } from "./shape.ts";

const scheme = listOf(fields({ colour: text, minutes: orNull(number), flashOff: orNull(number) }));
const overrides = listOf(fields({ over: text, reason: text }));
const part = oneOf("step", "preparation");
const dayHours = listOf(fields({ opens: number, closes: number }));
const routeChange = by("do", {
  put: fields({ name: text, like: text, after: text, coat: orNull(COAT), handsOn: orNull(HANDS_ON) }),
  skip: fields({ step: text }),
  swap: fields({ step: text, like: text, coat: orNull(COAT) }),
});

const keeps = by("way", {
  heat: fields({ minutes: number }),
  mix: fields({ minutes: number, serves: number }),
  load: fields({}),
});

const setting = by("of", {
  hours: fields({ from: text, weekly: listOf(dayHours) }),
  day: fields({ date: text, hours: orNull(dayHours) }),
  away: fields({ from: text, to: text }),
  back: fields({ from: text }),
  zone: fields({ name: text }),
  hands: fields({ from: text, pairs: number }),
  place: fields({ name: text, hooks: orNull(number) }),
  aim: fields({ from: text, finishedPerWeek: orNull(number), out: orNull(number) }),
  "default process": fields({ name: orNull(text) }),
  air: fields({
    place: orNull(text),
    day: orNull(fields({ low: number, high: number, humidityPercent: number })),
  }),
  "dew margin": fields({ celsius: number }),
  room: fields({ name: text, airChangesPerHour: orNull(number), mixingFactor: orNull(number) }),
  "in room": fields({ what: text, room: orNull(text) }),
  touches: fields({ count: flag }),
});

/** The form of each kind's body as it is today: what a reading relies on, whoever wrote the file. */
export const EVENT_SHAPES: Readonly<Record<EventKind, Shape>> = {
  tagged: fields({
    process: text,
    name: text,
    scheme,
    due: orNull(text),
    price: orNull(number),
    for: orNull(text),
    hung: orNull(fields({ step: text, since: number })),
  }),
  changed: fields({
    name: optional(text),
    scheme: optional(scheme),
    due: optional(orNull(text)),
    price: optional(orNull(number)),
    for: optional(orNull(text)),
    weight: optional(number),
  }),
  routed: fields({ change: routeChange, why: orNull(text) }),
  taken: fields({ step: text, pass: number, part, colour: orNull(text), another: flag, overrides }),
  left: fields({ step: text, pass: number, part }),
  hung: fields({
    step: text,
    pass: number,
    part,
    place: orNull(text),
    colour: orNull(text),
    another: flag,
    flashOff: orNull(number),
    result: orNull(text),
    guessed: flag,
    overrides,
  }),
  readied: fields({
    setUp: text,
    begun: orNull(number),
    ready: number,
    keeps,
    putAwayMinutes: number,
    givesOff: listOf(text),
    overrides,
  }),
  "put away": fields({}),
  touched: fields({ step: text, pass: number, found: oneOf("tacky", "dry", "hard") }),
  moved: fields({ place: text }),
  measured: fields({ what: text, value: number, unit: text }),
  mended: fields({ what: text, minutes: number, goOnFrom: text }),
  scrapped: fields({ why: text }),
  gone: fields({ how: oneOf("sold", "given", "kept"), price: orNull(number), to: orNull(text) }),
  noted: fields({ text }),
  ticked: fields({ caution: text }),
  amended: fields({ target: number, time: number }),
  undone: fields({ target: number }),
  settled: fields({ setting }),
  clock: fields({ since: number, minutes: number }),
};
