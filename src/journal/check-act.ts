/** Loaded only when something is appended: readers do not pay for the schema library. */
import * as z from "zod/mini";
import type { Coat } from "../process/coat.ts";
import { EVENT_SHAPES } from "./event-shapes.ts";
import type { Append } from "./journal.ts";
import { isRecord } from "./shape.ts";
import { FOR_EVER } from "./tables.ts";

/** Characters in a name, a colour, a word of the maker's. */
const longestName = 200;
/** Characters in a note or a reason. */
const longestText = 4_000;
/** Entries of a list: colours, overrides, sessions of a day. */
const longestList = 100;
/** Events of one act: a take of every piece of a large shop. */
const mostEvents = 2_000;

const name = z.string().check(z.minLength(1), z.maxLength(longestName));
const label = z.string().check(z.maxLength(longestName));
const prose = z.string().check(z.maxLength(longestText));
const instant = z.int().check(z.gte(0), z.lte(FOR_EVER));
const minutes = z.int().check(z.gte(0));
const atLeastOne = z.int().check(z.gte(1));
const date = z.iso.date();
const part = z.enum(["step", "preparation"]);
const orNull = z.nullable;

function list<Item extends z.ZodMiniType>(item: Item) {
  return z.readonly(z.array(item).check(z.maxLength(longestList)));
}

const scheme = list(z.strictObject({ colour: name, minutes: orNull(minutes), flashOff: orNull(minutes) }));
const overrides = list(z.strictObject({ over: name, reason: prose }));
const price = orNull(z.int().check(z.gte(0)));
const sessions = list(z.strictObject({ opens: minutes, closes: minutes }));
/** Its insides were checked where it was read; the form is looked at again with the rest of the body. */
const coat = orNull(z.custom<Coat>(isRecord));
const handsOn = orNull(z.strictObject({ low: minutes, likely: minutes, high: minutes }));

const routeChange = z.discriminatedUnion("do", [
  z.strictObject({ do: z.literal("put"), name, like: name, after: name, coat, handsOn }),
  z.strictObject({ do: z.literal("skip"), step: name }),
  z.strictObject({ do: z.literal("swap"), step: name, like: name, coat }),
]);

const keeps = z.discriminatedUnion("way", [
  z.strictObject({ way: z.literal("heat"), minutes }),
  z.strictObject({ way: z.literal("mix"), minutes, serves: atLeastOne }),
  z.strictObject({ way: z.literal("load") }),
]);

const setting = z.discriminatedUnion("of", [
  z.strictObject({ of: z.literal("hours"), from: date, weekly: list(sessions) }),
  z.strictObject({ of: z.literal("day"), date, hours: orNull(sessions) }),
  z.strictObject({ of: z.literal("away"), from: date, to: date }),
  z.strictObject({ of: z.literal("back"), from: date }),
  z.strictObject({ of: z.literal("zone"), name }),
  z.strictObject({ of: z.literal("hands"), from: date, pairs: atLeastOne }),
  z.strictObject({ of: z.literal("place"), name, hooks: orNull(minutes) }),
  z.strictObject({
    of: z.literal("aim"),
    from: date,
    finishedPerWeek: orNull(z.number().check(z.gte(0))),
    out: orNull(z.int().check(z.gte(0))),
  }),
  z.strictObject({ of: z.literal("default process"), name: orNull(name) }),
  z.strictObject({
    of: z.literal("air"),
    place: orNull(name),
    day: orNull(z.strictObject({ low: z.number(), high: z.number(), humidityPercent: z.number() })),
  }),
  z.strictObject({ of: z.literal("dew margin"), celsius: z.number() }),
  z.strictObject({
    of: z.literal("room"),
    name,
    airChangesPerHour: orNull(z.number().check(z.gt(0))),
    mixingFactor: orNull(z.number().check(z.gte(1))),
  }),
  z.strictObject({ of: z.literal("in room"), what: name, room: orNull(name) }),
  z.strictObject({ of: z.literal("touches"), count: z.boolean() }),
]);

/** What every event has beside its body. */
const envelope = { at: instant, tag: orNull(atLeastOne), station: orNull(name) };

function event<Kind extends string, Body extends z.core.$ZodShape>(kind: Kind, body: Body) {
  return z.strictObject({ kind: z.literal(kind), ...envelope, ...body });
}

const act = z.readonly(
  z
    .array(
      z.discriminatedUnion("kind", [
        event("tagged", {
          process: name,
          name: label,
          scheme,
          due: orNull(date),
          price,
          for: orNull(label),
          hung: orNull(z.strictObject({ step: name, since: instant })),
        }),
        event("changed", {
          name: z.exactOptional(label),
          scheme: z.exactOptional(scheme),
          due: z.exactOptional(orNull(date)),
          price: z.exactOptional(price),
          for: z.exactOptional(orNull(label)),
          weight: z.exactOptional(z.number().check(z.gt(0))),
        }),
        event("routed", { change: routeChange, why: orNull(prose) }),
        event("taken", {
          step: name,
          pass: atLeastOne,
          part,
          colour: orNull(name),
          another: z.boolean(),
          overrides,
        }),
        event("left", { step: name, pass: atLeastOne, part }),
        event("hung", {
          step: name,
          pass: atLeastOne,
          part,
          place: orNull(name),
          colour: orNull(name),
          another: z.boolean(),
          flashOff: orNull(minutes),
          result: orNull(name),
          guessed: z.boolean(),
          overrides,
        }),
        event("readied", {
          setUp: name,
          begun: orNull(instant),
          ready: instant,
          keeps,
          putAwayMinutes: minutes,
          givesOff: list(name),
          overrides,
        }),
        event("put away", {}),
        event("touched", { step: name, pass: atLeastOne, found: z.enum(["tacky", "dry", "hard"]) }),
        event("moved", { place: name }),
        event("measured", { what: name, value: z.number(), unit: label }),
        event("mended", { what: prose, minutes, goOnFrom: name }),
        event("scrapped", { why: prose }),
        event("gone", { how: z.enum(["sold", "given", "kept"]), price, to: orNull(label) }),
        event("noted", { text: prose }),
        event("ticked", { caution: name }),
        event("amended", { target: atLeastOne, time: instant }),
        event("undone", { target: atLeastOne }),
        event("settled", { setting }),
        event("clock", { since: atLeastOne, minutes: z.int() }),
      ]),
    )
    .check(z.minLength(1), z.maxLength(mostEvents)),
);

/**
 * Holds an act to what events may say, before any of it is written.
 *
 * @throws Error naming the event and field: rooms above check the maker's words, so this is our own mistake
 */
export function checkAct(events: Append["events"]): void {
  // The annotation makes a kind of event that this file has forgotten fail the type check.
  const given: z.input<typeof act> = events;
  const checked = act.safeParse(given);
  if (!checked.success) {
    const issue = checked.error.issues[0];
    const path = (issue?.path ?? []).join(".");
    throw new Error(`an act holds what no event may say: event ${path || "list"} (${issue?.code})`);
  }
  for (const { kind, ...body } of events) {
    if (!EVENT_SHAPES[kind](body)) throw new Error(`an act holds a "${kind}" that would not be read again`);
  }
}
