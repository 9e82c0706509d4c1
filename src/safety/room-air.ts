import { coatTimes, dustFreeAt } from "../cure/coat-times.ts";
import { FACTOR_RANGE } from "../cure/touch-fit.ts";
import type { Tag } from "../journal/event.ts";
import type { Emission } from "../process/coat.ts";
import type { Step } from "../process/step.ts";
import { handsOf } from "../shop/hands.ts";
import { coatOf, laidBy } from "../shop/laid-coat.ts";
import type { Moment } from "../shop/moment.ts";
import { lastHang, workOf } from "../shop/passes.ts";
import { preparationsBefore } from "../shop/preparations-before.ts";
import { wetMinutes } from "../shop/sheet-windows.ts";
import type { InHand, Piece, Settings, Shop, StepWork } from "../shop/shop.ts";
import { stageMoment } from "../shop/stage-moment.ts";
import { findStep } from "../shop/steps.ts";
import { isForgotten, usualHang } from "../shop/usual-hang.ts";
import { after, type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { lastsInRoom, roomOf } from "./rooms.ts";
import { WET_COAT } from "./task.ts";

/** Something in the air of a room, and where it comes from. */
export interface InTheAir {
  readonly what: string;
  readonly room: string;
  /** When it ends by the clock; null: not before somebody does something. */
  readonly until: Instant | null;
  readonly from:
    | { readonly kind: "in hand" | "hung" | "wet"; readonly tag: Tag }
    | { readonly kind: "set-up"; readonly station: string; readonly setUp: string };
}

/**
 * Everything that is in the air of the rooms at a moment. In the room of its station is what work and set-ups give off,
 * and stays for a while after; what a coat gives off goes on where the piece hangs, and there a coat is wet.
 *
 * @param leaves pieces in hand to be taken as put down at this moment: what lasts longer than their work is then still there
 */
export function roomAir(shop: Shop, at: Moment, leaves: readonly Tag[] = []): readonly InTheAir[] {
  const air: InTheAir[] = [];
  // Asked once a task, over every piece: what has long cleared is passed over before anything is made of it.
  const add: Add = (what, until, from, where) => {
    if (until === null || until > at.now) air.push({ what, room: roomOf(settings, where), until, from });
  };
  const { settings } = shop;
  for (const piece of shop.pieces.values()) {
    addHand(add, piece, at, leaves.includes(piece.tag), settings);
    const isHere = piece.end === null || piece.end.how === "finished";
    for (const [name, work] of piece.work) {
      const step = findStep(piece, name);
      if (step === undefined) continue;
      addHang(add, piece, step, work, settings);
      addPreparation(add, piece, step, work, settings);
      if (isHere && step.coat !== null) addWetCoat(add, piece, step, at.now);
    }
  }
  for (const { station, setUp } of shop.stations.values()) {
    for (const what of setUp?.givesOff ?? []) {
      add(what, null, { kind: "set-up", station, setUp: setUp?.what ?? "" }, station);
    }
  }
  return air;
}

/** `where`: the station or place it is given off at. */
type Add = (what: string, until: Instant | null, from: InTheAir["from"], where: string | null) => void;

/** Work in hand; one forgotten in an earlier session counts as hung as late as it can have been. */
function addHand(add: Add, piece: Piece, at: Moment, isLeft: boolean, settings: Settings): void {
  const { running, lying } = handsOf(piece);
  for (const hand of lying) addLeft(add, piece, hand, settings);
  const step = running === null ? undefined : findStep(piece, running.step);
  if (running === null || step === undefined) return;
  const from = { kind: "in hand", tag: piece.tag } as const;
  const ended = isForgotten(piece, running, at) ? usualHang(running, 0, at).latest : null;
  const lasting = (minutes: Minutes) => {
    // What ends with the work ends as it is put down; the minutes of what lasts longer count from then, not from now.
    if (isLeft && minutes === 0) return at.now;
    return ended === null ? null : after(ended, minutes);
  };
  const given = givenByHand(piece, step, running.part);
  const room = roomOf(settings, step.station);
  for (const { what, lasts } of given) {
    add(what, lasting(lastsInRoom(settings, room, what, minutesOf(lasts))), from, step.station);
  }
  const coat = running.part === "step" ? coatOf(piece, step) : null;
  if (coat !== null)
    add(WET_COAT, lasting(dustFreeAt(coatTimes(coat, 0, null)) / MINUTE), from, step.station);
}

/** Work put down half-done: what it gave off lasts as long as if it were done. */
function addLeft(add: Add, piece: Piece, { step: name, part, leftAt }: InHand, settings: Settings): void {
  const step = findStep(piece, name);
  if (step === undefined || leftAt === null) return;
  const room = roomOf(settings, step.station);
  for (const { what, lasts } of givenByHand(piece, step, part)) {
    const until = after(leftAt, lastsInRoom(settings, room, what, minutesOf(lasts)));
    add(what, until, { kind: "hung", tag: piece.tag }, step.station);
  }
}

/**
 * What the newest pass gives off for some time after, one taken back and one of an ended piece too: in the room it was
 * worked in, and in that where the piece hangs.
 */
function addHang(add: Add, piece: Piece, step: Step, { hangs }: StepWork, settings: Settings): void {
  const hungAt = hangs.at(-1)?.hungAt;
  if (hungAt === undefined) return;
  const room = roomOf(settings, step.station);
  const hangsIn = piece.place === null ? room : roomOf(settings, piece.place);
  const from = { kind: "hung", tag: piece.tag } as const;
  for (const { what, lasts } of ofStep(piece, step)) {
    const minutes = minutesOf(lasts);
    add(what, after(hungAt, lastsInRoom(settings, room, what, minutes)), from, step.station);
    if (hangsIn !== room)
      add(what, after(hungAt, lastsInRoom(settings, hangsIn, what, minutes)), from, piece.place);
  }
}

function addPreparation(
  add: Add,
  piece: Piece,
  step: Step,
  { prepared }: StepWork,
  settings: Settings,
): void {
  if (prepared === null) return;
  const room = roomOf(settings, step.station);
  for (const { what, lasts } of ofPreparations(piece, step)) {
    const until = after(prepared.at, lastsInRoom(settings, room, what, minutesOf(lasts)));
    add(what, until, { kind: "hung", tag: piece.tag }, step.station);
  }
}

function addWetCoat(add: Add, piece: Piece, step: Step, now: Instant): void {
  if (hasLongDried(piece, step, now)) return;
  const laid = laidBy(piece, step);
  if (laid === null) return;
  const bySheet = dustFreeAt(laid.times);
  const felt = bySheet > now ? stageMoment(laid, "dust-free", now) : bySheet;
  // Tacky is past dust-free, and dust settles whatever is to be felt first: then the sheet alone says.
  const until = typeof felt === "number" ? Math.min(felt, bySheet) : bySheet;
  add(
    WET_COAT,
    Number.isFinite(until) ? until : null,
    { kind: "wet", tag: piece.tag },
    piece.place ?? step.station,
  );
}

/**
 * Whether the last day alone has made a coat dust-free, were its can the slowest there is: so have nearly all coats that
 * ever hung, and what is looked up for this is looked up for newer coats too.
 */
function hasLongDried(piece: Piece, step: Step, now: Instant): boolean {
  const coat = coatOf(piece, step);
  const hang = lastHang(workOf(piece, step.name));
  if (coat === null || hang === null) return true;
  const needed = wetMinutes(coat, hang.flashOff) * FACTOR_RANGE.most;
  return piece.air.spent(coat, Math.max(hang.hungAt, after(now, -24 * 60)), now) >= needed;
}

function givenByHand(piece: Piece, step: Step, part: InHand["part"]): readonly Emission[] {
  return part === "step" ? ofStep(piece, step) : ofPreparations(piece, step);
}

/** What a step gives off of itself and by its coat. */
function ofStep(piece: Piece, step: Step): readonly Emission[] {
  return [...step.givesOff, ...(coatOf(piece, step)?.givesOff ?? [])];
}

/** What the preparations give off that the coats under a step may ask for. */
function ofPreparations(piece: Piece, step: Step): readonly Emission[] {
  return preparationsBefore(piece, step.name).flatMap(({ givesOff }) => givesOff);
}

/** Minutes after the work's end; what lasts while a set-up stands is the set-up's to say. */
function minutesOf(lasts: Emission["lasts"]): Minutes {
  return lasts === "while set up" ? 0 : lasts;
}
