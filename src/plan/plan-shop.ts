import { NO_PLACE } from "../cure/hanging-air.ts";
import { potLife } from "../cure/pot-life.ts";
import type { SchemePass, Tag } from "../journal/event.ts";
import type { Coat } from "../process/coat.ts";
import type { ProcessDefinition, ProcessHash } from "../process/definition.ts";
import type { SetUp, Step } from "../process/step.ts";
import { unfitStretches } from "../safety/air-for-coat.ts";
import { cautionsFor } from "../safety/cautions.ts";
import { holdsOn } from "../safety/fit-to-start.ts";
import type { Hold } from "../safety/hold.ts";
import { needState } from "../safety/needs.ts";
import { roomAir } from "../safety/room-air.ts";
import { lastsInRoom, roomOf } from "../safety/rooms.ts";
import type { SafetyRules } from "../safety/rules.ts";
import { WET_COAT } from "../safety/task.ts";
import { coatState } from "../shop/coat-state.ts";
import { type ColdAhead, coldAhead } from "../shop/cold-ahead.ts";
import { handsOf, minutesInHand } from "../shop/hands.ts";
import { hookNeededUntil } from "../shop/hook.ts";
import { coloursLeft, lastHang, nextPassNumber, passesLeft, workOf } from "../shop/passes.ts";
import { putDownFor } from "../shop/put-down.ts";
import { setUpState } from "../shop/set-up-state.ts";
import { setUpWords } from "../shop/set-up-words.ts";
import { aimAt, handsAt } from "../shop/settings-at.ts";
import {
  type InHand,
  OWN_ROOM,
  type Piece,
  type Settings,
  type Shop,
  type StandingSetUp,
} from "../shop/shop.ts";
import type { CoatState, StepState } from "../shop/states.ts";
import { stepState } from "../shop/step-state.ts";
import { usualHang, usualInHand } from "../shop/usual-hang.ts";
import { readWaiting, type Waiting } from "../shop/waiting.ts";
import type { BenchHours, Session } from "../time/bench-hours.ts";
import { localTime } from "../time/civil.ts";
import { after, type Instant, type Minutes } from "../time/instant.ts";
import { sessionsBetween } from "../time/sessions.ts";
import type { Zone } from "../time/zone.ts";
import type { AirThere, LagsOfCoat } from "./air-lags.ts";
import { horizonFrom } from "./horizon.ts";

export { ALIKE_AFTER } from "../cure/air-ahead.ts";
export type { ColdAhead, Hold, StepState, Waiting };
export type AirNow = NonNullable<ReturnType<Shop["air"]["at"]>>;
export {
  dryThroughMinutes,
  type SheetWindow,
  wetMinutes,
  windowsBetweenPasses,
  windowsUpon,
} from "../shop/sheet-windows.ts";
export { cautionsFor, setUpWords };

/** What a coat gives off by itself while it is wet. */
export const wetCoat = WET_COAT;

/** What is asked besides the shop itself. */
export interface NowContext {
  readonly now: Instant;
  readonly zone: Zone;
  readonly hours: BenchHours;
  readonly rules: SafetyRules;
  readonly usualMinutes: (process: string, step: Step) => Minutes;
  /** What a new piece would be; null: no process is known for it. */
  readonly newPiece: { readonly hash: ProcessHash; readonly definition: ProcessDefinition } | null;
}

/** How far ahead is planned. */
const HORIZON: Minutes = 14 * 24 * 60;

/** The shop as planning needs it: what was asked of the rooms below, once. */
export interface ShopFacts {
  readonly context: NowContext;
  readonly horizon: Minutes;
  /** Bench sessions of the horizon; the first may be running. */
  readonly sessions: readonly Session[];
  readonly hands: number;
  readonly assumedHours: boolean;
  readonly aim: Settings["aims"][number] | null;
  readonly places: Settings["places"];
  /** Neither finished, scrapped nor gone, by tag. */
  readonly pieces: readonly PieceFacts[];
  /** Hooks still held by pieces that are finished. */
  readonly endedHooks: readonly { readonly place: string; readonly until: Instant }[];
  readonly standing: readonly StandingFacts[];
  readonly air: ReturnType<typeof roomAir>;
  readonly rooms: RoomFacts;
  readonly airNow: AirNow | null;
  readonly cold: readonly ColdAhead[];
  /** Stretches of the horizon in which a coat that is to hang at a place is not to be laid, as far as is expected. */
  readonly unfitFor: ReturnType<typeof unfitStretches>;
  /** How long a set-up keeps that is made today: a cup of resin as the air now lets it. */
  readonly keepsToday: (keeps: SetUp["keeps"], coat: Coat | null) => SetUp["keeps"];
  /** How coats dry at a place from now on; null: as their sheets say, for its air is not known. */
  readonly airAt: (place: string) => AirThere | null;
  /** What has been reckoned of how coats will dry: a memory of air-lags.ts alone. */
  readonly lags: Map<Coat, Map<string | null, LagsOfCoat>>;
  /** Pieces in hand that are put down when work on these begins. */
  readonly putsDown: (tags: readonly Tag[]) => readonly Tag[];
  /** What stands in the way of starting work now. */
  readonly holdsOn: (work: WorkToStart) => readonly Hold[];
}

/** The rooms of the shop, and how long what is given off stays in them. */
interface RoomFacts {
  readonly names: readonly string[];
  /** The room of a station or place. */
  readonly of: (where: string | null) => string;
  /** Minutes after work at a station or place for which something given off there must be reckoned with. */
  readonly lasts: (where: string, what: string, lasts: Minutes) => Minutes;
}

/** Work about to be started, as safety looks at it. */
type WorkToStart = Parameters<typeof holdsOn>[0];

export interface PieceFacts {
  readonly piece: Piece;
  /** Steps not done, in working order. */
  readonly steps: readonly StepFacts[];
  readonly coat: CoatState | null;
  readonly lastHung: Instant | null;
  /** Looks still to come at what hangs. */
  readonly looks: readonly Instant[];
  /** When it no longer needs the hook it hangs on; null: on no hook. */
  readonly hookUntil: Instant | null;
}

export interface StepFacts {
  readonly step: Step;
  readonly state: StepState;
  readonly passes: readonly PassFacts[];
  /** The number the first of them will have in the journal. */
  readonly nextPass: number;
  /** When it may begin, by opening, with the steps whose coats say so; null: steps before it are not done. */
  readonly wait: Waiting | null;
  /** What those of the steps before it that are done still ask for, where others are not. */
  readonly waitOnDone: () => Waiting;
  readonly needsMet: boolean;
  readonly hand: HandFacts | null;
  readonly cautions: readonly string[];
}

export type PassFacts = Pick<SchemePass, "minutes" | "flashOff"> & { readonly colour: string | null };

/** A step in hand, or lying half-done. */
interface HandFacts {
  readonly hand: InHand;
  /** Minutes this piece has had of it. */
  readonly spent: Minutes;
  readonly usual: Minutes;
  /** Never said done: both ends of when it can have been hung. */
  readonly forgotten: { readonly usual: Instant; readonly latest: Instant } | null;
}

export interface StandingFacts {
  readonly station: string;
  readonly setUp: StandingSetUp;
  readonly state: ReturnType<typeof setUpState>;
}

/** Asks the shop, once, for all that planning needs to know of so many minutes ahead, and of days shut before them. */
export function readShop(shop: Shop, context: NowContext, least: Minutes = HORIZON): ShopFacts {
  const { now, zone, hours } = context;
  const horizon = horizonFrom(hours, zone, now, least);
  const today = localTime(zone, now).date;
  const pieces = [...shop.pieces.values()].sort((a, b) => a.tag - b.tag);
  const air = roomAir(shop, context);
  return {
    context,
    horizon,
    sessions: sessionsBetween(hours, zone, now, after(now, horizon)),
    hands: handsAt(shop.settings, today),
    assumedHours: shop.settings.hours === null,
    aim: aimAt(shop.settings, today),
    places: shop.settings.places,
    pieces: pieces.filter(({ end }) => end === null).map((piece) => readPiece(piece, shop.air, context)),
    endedHooks: pieces.flatMap((piece) => {
      const until = piece.end !== null && piece.place !== null ? hookNeededUntil(piece, now) : null;
      return until === null || piece.place === null ? [] : [{ place: piece.place, until }];
    }),
    standing: [...shop.stations.values()].flatMap(({ station, setUp }) =>
      setUp === null ? [] : [{ station, setUp, state: setUpState(setUp, now) }],
    ),
    air,
    rooms: readRooms(shop.settings),
    airNow: shop.air.at(NO_PLACE, now),
    cold: coldAhead(shop, now),
    lags: new Map(),
    unfitFor: unfitStretches(shop, now, horizon),
    keepsToday: (keeps, coat) => keepsIn(shop.air.at(NO_PLACE, now), keeps, coat),
    airAt: (place) =>
      shop.air.at(place, now) && {
        isSteady: (coat) => shop.air.isSteadyFrom(coat, place, now),
        reachEach: (coat, minutes, moments) => shop.air.reachEach(coat, place, minutes, moments),
      },
    putsDown: (tags) => putsDown(tags, shop, context),
    // Asked of every task: with 20 pieces, looking through all of them each time took a tenth of a cold start.
    holdsOn: (work) =>
      holdsOn(work, shop, context.rules, context, work.leaves.length === 0 ? air : undefined),
  };
}

function keepsIn(air: AirNow | null, keeps: SetUp["keeps"], coat: Coat | null): SetUp["keeps"] {
  if (air === null || coat === null || keeps.way !== "mix") return keeps;
  return { ...keeps, minutes: Math.max(1, potLife(coat, keeps.minutes, air)) };
}

function readRooms(settings: Settings): RoomFacts {
  const of = (where: string | null) => roomOf(settings, where);
  return {
    names: [...new Set([OWN_ROOM, ...settings.rooms.keys(), ...settings.roomOf.values()])],
    of,
    lasts: (where, what, lasts) => lastsInRoom(settings, of(where), what, lasts),
  };
}

function putsDown(tags: readonly Tag[], shop: Shop, context: NowContext): readonly Tag[] {
  const working = tags.flatMap((tag) => shop.pieces.get(tag) ?? []);
  return putDownFor(working, shop, context).leaving.flatMap((group) => group.map(({ piece }) => piece.tag));
}

function readPiece(piece: Piece, air: Shop["air"], context: NowContext): PieceFacts {
  const hangs = [...piece.work.values()].flatMap((work) => lastHang(work)?.hungAt ?? []);
  return {
    piece,
    steps: piece.route.flatMap((step) => readStep(piece, step, air, context)),
    coat: coatState(piece, context.now),
    lastHung: hangs.length === 0 ? null : Math.max(...hangs),
    looks: piece.route.flatMap((step) => {
      const hung = step.look.length === 0 ? null : lastHang(workOf(piece, step.name));
      return hung === null
        ? []
        : step.look.map((look) => after(hung.hungAt, look)).filter((look) => look > context.now);
    }),
    hookUntil: piece.place === null ? null : hookNeededUntil(piece, context.now),
  };
}

function readStep(piece: Piece, step: Step, air: Shop["air"], context: NowContext): StepFacts[] {
  const state = stepState(piece, step.name, context);
  if (state.is === "done" || state.is === "ended") return [];
  const waitOnDone = () => readWaiting(piece, step, context.now);
  return [
    {
      step,
      state,
      passes: passesOf(piece, step),
      nextPass: nextPassNumber(workOf(piece, step.name)),
      wait: state.is === "blocked" ? null : waitOnDone(),
      waitOnDone,
      needsMet: step.needs.every((need) => needState(need, piece, air).is === "met"),
      hand: state.is === "in hand" || state.is === "left" ? readHand(piece, step, state, context) : null,
      cautions: cautionsFor(step, piece, "step"),
    },
  ];
}

function readHand(
  piece: Piece,
  step: Step,
  state: Extract<StepState, { is: "in hand" | "left" }>,
  context: NowContext,
): HandFacts | null {
  const { running, lying } = handsOf(piece);
  const hand = [running, ...lying].find((one) => one?.step === step.name);
  if (!hand) return null;
  const usual = usualInHand(piece, step, hand, context.usualMinutes);
  return {
    hand,
    spent: minutesInHand(hand, context.now),
    usual,
    forgotten: state.is === "in hand" && state.forgotten ? usualHang(hand, usual, context) : null,
  };
}

function passesOf(piece: Piece, step: Step): readonly PassFacts[] {
  const colours = coloursLeft(piece, step);
  if (colours.length > 0) return colours;
  return passesLeft(piece, step) > 0 ? [{ colour: null, minutes: null, flashOff: null }] : [];
}
