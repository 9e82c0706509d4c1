import { type AirBounds, ALIKE_AFTER } from "../cure/air-ahead.ts";
import { dewMargin } from "../cure/fit-air.ts";
import { NO_PLACE } from "../cure/hanging-air.ts";
import type { Coat } from "../process/coat.ts";
import { wetMinutes } from "../shop/sheet-windows.ts";
import type { Shop } from "../shop/shop.ts";
import { after, type Instant, type Minutes } from "../time/instant.ts";
import { AirByQuarters, type DewyAir, QUARTER } from "./air-by-quarters.ts";
import type { Unfit } from "./unfit-air.ts";

/** How far it is looked for when air is fit again: two days. */
const FARTHEST = (48 * 60) / QUARTER;

/** From then on days are alike. */
const ALIKE_FROM = ALIKE_AFTER / QUARTER;
const DAY = (24 * 60) / QUARTER;

/** For how long after it was laid a coat's air is looked at, at most: a forecast of more than a night says little. */
const LONGEST_WET: Minutes = 12 * 60;

/** A coat about to be laid: where it is to hang, and the minutes that laying it takes. */
export interface Laying {
  readonly coat: Coat;
  /** Null: nowhere that is named. */
  readonly place: string | null;
  readonly minutes: Minutes;
}

/**
 * What makes the air unfit to begin laying a coat at a moment; null: it is fit, or nobody knows. Asked of the shop's air
 * while it is laid, and of the air it will hang in till it is dust-free by its sheet: the limits of the coat, and dew. A
 * piece is taken to be as warm as the air round it: one just brought in from the cold is colder, and only the maker knows.
 */
export function unfitAir(laying: Laying, shop: Shop, at: Instant): Unfit | null {
  return unfitWhile(laying, judgeFrom(laying, new AirByQuarters(shop, at)), 0);
}

/**
 * When air that is unfit for a coat at a moment is expected to be fit again: a minute at which `unfitAir` has nothing to
 * say. It is looked for by quarters of an hour, and within the first that is fit again by halving, so that it stands still
 * while it is waited for. Null: not within two days.
 */
export function fitAgainAt(laying: Laying, shop: Shop, from: Instant): Instant | null {
  const judge = judgeFrom(laying, new AirByQuarters(shop, from));
  for (let step = 1; step <= FARTHEST; step++) {
    if (unfitWhile(laying, judge, step) === null)
      return after(from, fitAgainIn(laying, shop, from, step * QUARTER));
  }
  return null;
}

/** The minute from which on air is fit that is so at a minute and was not a quarter of an hour before. */
function fitAgainIn(laying: Laying, shop: Shop, from: Instant, minute: Minutes): Minutes {
  let [unfit, fit] = [minute - QUARTER, minute];
  while (fit - unfit > 1) {
    const middle = Math.floor((unfit + fit) / 2);
    if (unfitAir(laying, shop, after(from, middle)) === null) fit = middle;
    else unfit = middle;
  }
  return fit;
}

/** From a minute until before another. */
type Stretch = readonly [from: Minutes, until: Minutes];

/**
 * All stretches of some minutes from a moment on in which a coat is not to be laid, by coat and place: the same that
 * `unfitAir` says of each moment. What was asked once is remembered, for pieces wear the same coats.
 */
export function unfitStretches(
  shop: Shop,
  from: Instant,
  minutes: Minutes,
): (coat: Coat, place: string | null) => readonly Stretch[] {
  const known = new Map<string, readonly Stretch[]>();
  if (shop.air.lines.size === 0) return () => [];
  const air = new AirByQuarters(shop, from);
  const isMild = (coat: Coat, place: string): boolean => {
    const bounds = air.bounds(place);
    return bounds !== null && isFitIn(coat, bounds, air.wanted);
  };
  return (coat, place) => {
    // Nearly always: then no quarter need be judged.
    if (isMild(coat, NO_PLACE) && isMild(coat, place ?? NO_PLACE)) return [];
    const { lowestCelsius, highestCelsius, dampestPercent } = coat;
    const key = `${lowestCelsius} ${highestCelsius} ${dampestPercent} ${wetOf(coat)} ${place ?? NO_PLACE}`;
    const stretches =
      known.get(key) ??
      findStretches(judgeFrom({ coat, place }, air), minutes, (minute) =>
        fitAgainIn({ coat, place, minutes: 1 }, shop, from, minute),
      );
    known.set(key, stretches);
    return stretches;
  };
}

/** Whether a coat can be laid and dry wherever the air stays within bounds. */
function isFitIn(
  { lowestCelsius, highestCelsius, dampestPercent }: Coat,
  bounds: AirBounds,
  wanted: number,
): boolean {
  const { coldest, warmest, dampest } = bounds;
  // Of air as damp, the colder lies nearer to its dew point.
  const { isFit } = dewMargin({ celsius: coldest, humidityPercent: dampest }, coldest, wanted);
  return (
    isFit &&
    coldest >= (lowestCelsius ?? Number.NEGATIVE_INFINITY) &&
    warmest <= (highestCelsius ?? Number.POSITIVE_INFINITY) &&
    dampest <= (dampestPercent ?? Number.POSITIVE_INFINITY)
  );
}

/** One sweep from the last quarter to the first, with the next one in which the coat must not be wet. */
function findStretches(
  judge: Judge,
  minutes: Minutes,
  fitAgain: (quarter: Minutes) => Minutes,
): readonly Stretch[] {
  const quarters = Math.min(ALIKE_FROM + DAY, Math.ceil(minutes / QUARTER));
  const isUnfit = new Array<boolean>(quarters);
  let next = Number.POSITIVE_INFINITY;
  for (let step = quarters - 1 + judge.wet; step >= 0; step--) {
    if (judge.hangs(step) !== null) next = step;
    if (step < quarters) isUnfit[step] = next <= step + judge.wet || judge.laid(step) !== null;
  }
  if (!isUnfit.includes(true)) return [];
  const stretches: Stretch[] = [];
  let since: Minutes | null = null;
  for (let step = 0; step * QUARTER < minutes; step++) {
    if (isUnfit[step < quarters ? step : ALIKE_FROM + (step % DAY)]) since ??= step * QUARTER;
    else if (since !== null) {
      stretches.push([since, fitAgain(step * QUARTER)]);
      since = null;
    }
  }
  return since === null ? stretches : [...stretches, [since, minutes]];
}

/** What makes air unfit for a coat in a quarter of an hour, by its number: to lay it there, and to hang there wet. */
interface Judge {
  readonly laid: (step: number) => Unfit | null;
  readonly hangs: (step: number) => Unfit | null;
  /** For so many quarters more it is wet. */
  readonly wet: number;
}

/** Any quarter of an hour that laying reaches into, or in which what was laid in it is wet. */
function unfitWhile({ minutes }: Laying, { laid, hangs, wet }: Judge, first: number): Unfit | null {
  const last = first + Math.floor((minutes - 1) / QUARTER);
  for (let step = first; step <= last; step++) {
    const unfit = laid(step);
    if (unfit !== null) return unfit;
  }
  for (let step = first; step <= last + wet; step++) {
    const unfit = hangs(step);
    if (unfit !== null) return unfit;
  }
  return null;
}

function judgeFrom({ coat, place }: Pick<Laying, "coat" | "place">, air: AirByQuarters): Judge {
  const [here, there] = [air.at(NO_PLACE), air.at(place ?? NO_PLACE)];
  return {
    laid: (step) => judgeAir(coat, air, here(step), step, false),
    hangs: (step) => judgeAir(coat, air, there(step), step, true),
    wet: Math.floor(wetOf(coat) / QUARTER),
  };
}

/** Minutes for which a coat's air is looked at. */
const wetOf = (coat: Coat): Minutes => Math.min(LONGEST_WET, wetMinutes(coat, null));

function judgeAir(
  coat: Coat,
  quarters: AirByQuarters,
  air: DewyAir | null,
  step: number,
  isAhead: boolean,
): Unfit | null {
  if (air === null) return null;
  const { celsius, humidityPercent, dew } = air;
  const { lowestCelsius, highestCelsius, dampestPercent } = coat;
  const isTooCold = lowestCelsius !== null && celsius < lowestCelsius;
  const isTooWarm = highestCelsius !== undefined && celsius > highestCelsius;
  const isTooDamp = dampestPercent !== undefined && humidityPercent > dampestPercent;
  // Nearly always, and asked of every quarter of an hour.
  if (dew.isFit && !isTooCold && !isTooWarm && !isTooDamp) return null;
  const found = { coat: coat.name, at: quarters.moment(step), isAhead };
  if (isTooCold) return { ...found, is: "too cold", celsius, lowestCelsius };
  if (isTooWarm) return { ...found, is: "too warm", celsius, highestCelsius };
  if (isTooDamp) return { ...found, is: "too damp", humidityPercent, dampestPercent };
  return { ...found, is: "dew", celsius, dewPoint: dew.dewPoint, wanted: quarters.wanted };
}
