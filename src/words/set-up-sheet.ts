import { NO_PLACE } from "../cure/hanging-air.ts";
import type { Tag } from "../journal/event.ts";
import type { Coat } from "../process/coat.ts";
import type { Air } from "../process/quantity-form.ts";
import type { Step } from "../process/step.ts";
import type { SafetyRules } from "../safety/rules.ts";
import { lastHang, liveHangs, nextPass, workOf } from "../shop/passes.ts";
import { hoursOf } from "../shop/settings-at.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import { stepStates } from "../shop/step-state.ts";
import { plainText } from "./plain-text.ts";
import { sayCautionShort } from "./say-caution.ts";
import { sayHowSure } from "./say-how-sure.ts";
import { capital, sayList, sayTags } from "./say-list.ts";
import { sayBallast, sayCoatSheet, sayHandsOn, sayMix, saySetUp } from "./say-step.ts";
import { sayClock, sayWait } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/** Notes of a piece shown, the newest. */
const NOTES_SHOWN = 3;

/**
 * All that is needed to do a step of these pieces the same way again: station, set-up, mix, windows, passes, what to
 * measure and look for, cautions. A title, then a line each.
 *
 * @param step whose sheet; null: of the step each piece goes on with
 */
export function saySetUpSheet(
  tags: readonly Tag[],
  step: string | null,
  shop: Shop,
  rules: SafetyRules,
  speech: Speech,
): string[] {
  return sheetsOf(tags, step, shop, speech).flatMap(({ step: found, pieces }) =>
    [
      ...saySheet(found, pieces, rules, shop.air.at(NO_PLACE, speech.now), speech),
      ...pieces.flatMap((piece) => sayHowSure(piece, shop, speech)).map((line) => `  ${line}`),
    ].map(plainText),
  );
}

/** Of the same sheet only what is to be weighed or measured out for these pieces: ballast and mix. */
export function sayAmounts(tags: readonly Tag[], step: string, shop: Shop, speech: Speech): string[] {
  return sheetsOf(tags, step, shop, speech).flatMap(({ step: found, pieces }) =>
    amountsOf(found, pieces, shop.air.at(NO_PLACE, speech.now), speech).map(capital).map(plainText),
  );
}

/** Pieces by what they have a sheet of in common: a step of one version of a process. */
function sheetsOf(
  tags: readonly Tag[],
  step: string | null,
  shop: Shop,
  speech: Speech,
): readonly { readonly step: Step; readonly pieces: readonly Piece[] }[] {
  const sheets = new Map<string, { readonly step: Step; readonly pieces: Piece[] }>();
  for (const tag of tags) {
    const piece = shop.pieces.get(tag);
    const found = piece?.route.find(({ name }) => name === (step ?? stepToGoOnWith(piece, shop, speech)));
    if (piece === undefined || found === undefined) continue;
    const key = `${piece.hash} ${found.name}`;
    const sheet = sheets.get(key) ?? { step: found, pieces: [] };
    sheet.pieces.push(piece);
    sheets.set(key, sheet);
  }
  return [...sheets.values()];
}

function amountsOf(step: Step, pieces: readonly Piece[], air: Air | null, speech: Speech): string[] {
  const coat = step.coat === null ? undefined : pieces[0]?.coats[step.coat];
  return [
    ...sayBallast(step, speech, pieces.length),
    ...(coat === undefined ? [] : sayMix(coat, step, pieces.length, air, speech)),
  ];
}

/** The step in hand, else the first that can be worked, else the first that dries. */
function stepToGoOnWith(piece: Piece, shop: Shop, speech: Speech): string | null {
  const states = [
    ...stepStates(piece, { now: speech.now, zone: speech.zone, hours: hoursOf(shop.settings) }),
  ];
  for (const wanted of ["in hand", "left", "open", "shut", "drying"]) {
    const found = states.find(([, { is }]) => is === wanted);
    if (found !== undefined) return found[0];
  }
  return null;
}

/** One step of pieces of one process: the title, then what is the same for all, then what is each piece's own. */
function saySheet(
  step: Step,
  pieces: readonly Piece[],
  rules: SafetyRules,
  air: Air | null,
  speech: Speech,
): string[] {
  const [first] = pieces;
  const coat = step.coat === null ? undefined : first?.coats[step.coat];
  const lines = [
    `at the ${step.station}, ${sayHandsOn(step.handsOn)}${step.passes === "scheme" ? " a pass" : ""}`,
    ...(step.setUp === null ? [] : [`set up: ${saySetUp(step.setUp)}`]),
    ...(coat === undefined ? [] : sayCoatSheet(coat, speech)),
    ...Object.entries(step.sheet).map(([what, value]) => `${what}: ${value}`),
    ...amountsOf(step, pieces, air, speech),
    ...pieces.flatMap((piece) => [...sayPasses(step, piece, speech), ...sayNeeds(step, piece)]),
    ...pieces.flatMap((piece) => sayNotes(piece, speech)),
    ...(step.look.length === 0 ? [] : [`look after ${sayList(step.look.map(sayWait))}`]),
    ...sayCautions(step, coat, rules),
  ];
  return [
    `${capital(step.name)}, ${sayTags(pieces.map(({ tag }) => tag))}`,
    ...lines.map((line) => `  ${line}`),
  ];
}

/** The passes as sprayed, then those to come. */
function sayPasses(step: Step, piece: Piece, speech: Speech): string[] {
  if (step.passes === "one") return [];
  const work = workOf(piece, step.name);
  const sprayed = liveHangs(work).map(({ colour, minutes, flashOff, hungAt }) => {
    const took = minutes === null ? "" : `, ${sayWait(minutes)}`;
    const flashed = flashOff === null ? "" : `, flash-off ${sayWait(flashOff)}`;
    return `${piece.tag} sprayed ${colour ?? "no colour said"}${took}${flashed}, ${sayClock(hungAt, speech)}`;
  });
  const last = lastHang(work);
  const next = nextPass(piece, step);
  const coming = next === null ? [] : [`${piece.tag} next ${sayPass(next)}`];
  const unsaid =
    last === null && next === null ? [`${piece.tag} has no scheme: name the colour as you take it`] : [];
  return [...sprayed, ...coming, ...unsaid];
}

function sayPass({ colour, minutes, flashOff }: Piece["scheme"][number]): string {
  const took = minutes === null ? "" : `, ${sayWait(minutes)}`;
  return `${colour}${took}${flashOff === null ? "" : `, flash-off ${sayWait(flashOff)}`}`;
}

/** What must be measured before, beside what was. */
function sayNeeds(step: Step, piece: Piece): string[] {
  return step.needs.map(({ what, atMost, unit }) => {
    const found = piece.measured.get(what);
    const measured = found === undefined ? "not measured yet" : `measured ${found.value} ${found.unit}`;
    return `${piece.tag} ${what} at most ${atMost} ${unit}: ${measured}`;
  });
}

/** What was noted of a piece last. */
function sayNotes({ tag, notes }: Piece, speech: Speech): string[] {
  return notes.slice(-NOTES_SHOWN).map(({ at, text }) => `${tag} noted ${sayClock(at, speech)}, "${text}"`);
}

/** One line for each caution of the step, its set-up and its coat; the whole text is told when it is taken. */
function sayCautions(step: Step, coat: Coat | undefined, rules: SafetyRules): string[] {
  const names = new Set([...step.cautions, ...(step.setUp?.cautions ?? []), ...(coat?.cautions ?? [])]);
  return [...names].map((name) => {
    const caution = rules.cautions[name];
    return `mind: ${caution === undefined ? name : sayCautionShort(caution)}`;
  });
}
