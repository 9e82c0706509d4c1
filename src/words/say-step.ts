import { ballastSize } from "../cure/ballast.ts";
import { mixFor, piecesOfCup, potLife } from "../cure/pot-life.ts";
import type { Coat, HandsOn } from "../process/coat.ts";
import type { Air } from "../process/quantity-form.ts";
import type { SetUp, Step } from "../process/step.ts";
import { sayCount } from "./say-list.ts";
import { sayPreparation } from "./say-state.ts";
import { sayWait } from "./say-time.ts";
import { sayCelsius, sayGrams, sayLength, sayReading } from "./say-units.ts";
import type { Speech } from "./speech.ts";

/** Hands-on minutes as a range with the likely one. `sayHandsOn(handsOn) === "5 to 12 min, likely 8"` */
export function sayHandsOn({ low, likely, high }: HandsOn): string {
  if (low === high) return sayWait(low);
  return high < 60
    ? `${low} to ${sayWait(high)}, likely ${likely}`
    : `${sayWait(low)} to ${sayWait(high)}, likely ${sayWait(likely)}`;
}

/** A set-up with what it costs and how long it keeps. `melt lead, 20 min; keeps 45 min from last use; 5 min to put away` */
export function saySetUp({ do: what, takes, keeps, putAway }: SetUp): string {
  const away = putAway > 0 ? `; ${sayWait(putAway)} to put away` : "";
  return `${what}, ${sayWait(takes)}; keeps ${sayKeeping(keeps)}${away}`;
}

function sayKeeping(keeps: SetUp["keeps"]): string {
  if (keeps.way === "load") return "until another load";
  if (keeps.way === "heat") return `${sayWait(keeps.minutes)} from last use`;
  return `${sayWait(keeps.minutes)} from mixing, for ${sayCount(keeps.serves, "piece")}`;
}

/**
 * The windows of a coat, a clause each.
 *
 * @example sayWindows(varnish) // ["4 h to 24 h", "from 24 h on, scuff 5 min first"]
 */
export function sayWindows({ windows }: Coat): string[] {
  return windows.map(({ opens, shuts, first }) => {
    const from = opens === "flash-off" ? "flash-off" : sayWait(opens);
    const span = shuts === null ? `from ${from} on` : `${from} to ${sayWait(shuts)}`;
    return `${span}${first === null ? "" : `, ${sayPreparation(first)} first`}`;
  });
}

/** The holes for the ballast and how much metal they take, of all pieces taken together; nothing for a step without. */
export function sayBallast({ ballast }: Step, speech: Speech, pieces = 1): string[] {
  if (ballast === null) return [];
  const { holes, acrossMillimetres, metal = "lead" } = ballast;
  const { least, most, deepMillimetres } = ballastSize(ballast);
  const [across, deep] = [sayLength(acrossMillimetres, speech), sayLength(deepMillimetres, speech)];
  const said = `${sayCount(holes, "hole")} ${across} across and ${deep} deep`;
  const all = pieces === 1 ? "" : `, ${sayGrams(least * pieces, most * pieces, speech)} for all ${pieces}`;
  return [`ballast: ${said}: ${sayGrams(least, most, speech)} of ${metal}${all}`];
}

/**
 * What to mix for pieces taken together, and how long the cup keeps in today's air; nothing for a coat that comes ready.
 *
 * @param air null: not known, and the cup keeps as its file says
 * @example "mix for 3: 3 ml resin and 1.5 ml hardener, 2 : 1 by volume"
 */
export function sayMix(coat: Coat, step: Step, pieces: number, air: Air | null, speech: Speech): string[] {
  if (coat.mix == null) return [];
  const measured = mixFor(coat.mix, pieces);
  const unit = coat.mix.by === "volume" ? "ml" : "g";
  const amounts =
    measured === null
      ? ""
      : ` for ${pieces}: ${sayAmount(measured.resin)} ${unit} resin and ${sayAmount(measured.hardener)} ${unit} hardener,`;
  const keeps = step.setUp?.keeps;
  const { resin, hardener, by } = coat.mix;
  const mix = `mix${amounts} ${resin} : ${hardener} by ${by}`;
  if (keeps?.way !== "mix" || air === null) return [mix];
  const today = potLife(coat, keeps.minutes, air);
  const serves = piecesOfCup(today, keeps.serves, Math.max(1, step.handsOn.likely));
  return [
    mix,
    `the cup keeps about ${sayWait(today)} at ${sayReading(air.celsius, speech)} (predicted; ${sayWait(keeps.minutes)} by its sheet): ${sayCount(serves, "piece")} at the most`,
  ];
}

/** To the tenth, of little to the hundredth: 0.7 and 0.3 would be no 2 to 1. */
function sayAmount(amount: number): string {
  const parts = amount < 2 ? 100 : 10;
  return String(Math.round(amount * parts) / parts);
}

/** What a coat is and how its next is laid, a line each: for the set-up sheet and `coat show`. */
export function sayCoatSheet(coat: Coat, speech: Speech): string[] {
  const { celsius, humidityPercent } = coat.sheetAir;
  const { lowestCelsius, highestCelsius, dampestPercent } = coat;
  const limits = [
    ...(lowestCelsius === null ? [] : [`not below ${sayCelsius(lowestCelsius, speech)}`]),
    ...(highestCelsius === undefined ? [] : [`not above ${sayCelsius(highestCelsius, speech)}`]),
    ...(dampestPercent === undefined ? [] : [`in no air of more than ${dampestPercent} %`]),
  ];
  return [
    `coat: ${coat.name}, cures by ${coat.curesBy}, times for ${sayCelsius(celsius, speech)} ${[`${humidityPercent} %`, ...limits].join(", ")}`,
    ...Object.entries(coat.sheet).map(([what, value]) => `${what}: ${value}`),
    ...sayWindows(coat).map((window) => `next coat: ${window}`),
    ...(coat.source === null ? [] : [`source: ${coat.source}`]),
  ];
}
