import type { Minutes } from "../../time/instant.ts";
import {
  type Bench,
  type BenchPiece,
  type BenchStation,
  type BenchTask,
  type BenchWait,
  DECIDED,
} from "./bench.ts";
import { NEVER } from "./calendar.ts";

// Whatever a play works on is made here and nowhere else, field by field: so all of it is alike to the engine.

/** What a problem says of a task, the same on every bench of it but for its release. */
export type TaskFacts = Pick<
  BenchTask,
  | "index"
  | "minutes"
  | "release"
  | "mayStop"
  | "unfit"
  | "running"
  | "ended"
  | "looks"
  | "watched"
  | "gives"
  | "fills"
  | "fillsLater"
  | "airKind"
  | "need"
  | "holds"
  | "tail"
  | "leastFinish"
  | "usualRest"
  | "restLog"
>;

/** Where on its bench a task is worked. */
type TaskPlace = Pick<BenchTask, "piece" | "station" | "setUp" | "hook">;

/** Lays a task on a bench, as it is before any play. */
export function layTask(facts: TaskFacts, { piece, station, setUp, hook }: TaskPlace): BenchTask {
  const { minutes, ended } = facts;
  const end = ended ?? NEVER;
  const task: BenchTask = {
    index: facts.index,
    piece,
    station,
    setUp,
    minutes,
    release: facts.release,
    mayStop: facts.mayStop,
    unfit: facts.unfit,
    running: facts.running,
    ended,
    looks: facts.looks,
    watched: facts.watched,
    waits: [],
    awaited: [],
    strict: [],
    hook,
    plain: true,
    shuts: false,
    gives: facts.gives,
    fills: facts.fills,
    fillsLater: facts.fillsLater,
    airKind: facts.airKind,
    need: facts.need,
    holds: facts.holds,
    tail: facts.tail,
    leastFinish: facts.leastFinish,
    usualRest: facts.usualRest,
    restLog: facts.restLog,
    rest: minutes,
    split: false,
    begin: end,
    setUpMinutes: 0,
    start: end,
    end,
    left: 0,
    windows: [],
    parts: [],
    position: -1,
    lifted: 0,
    decided: DECIDED.nothing,
  };
  if (ended === null) piece.tasks.push(task);
  return task;
}

/** Lets one task wait for another, with these windows. */
export function linkWait(task: BenchTask, on: BenchTask, windows: BenchWait["windows"]): void {
  const wait: BenchWait = { task, on, windows };
  (task.waits as BenchWait[]).push(wait);
  (on.awaited as BenchWait[]).push(wait);
  if (windows.at(-1)?.shuts !== null) (on.strict as BenchWait[]).push(wait);
  const [first] = windows;
  if (windows.length !== 1 || first === undefined || first.lead > 0) task.plain = false;
  else task.windows.push(first);
  if (windows.some(({ shuts }) => shuts !== null)) task.shuts = true;
}

type PieceFacts = Pick<BenchPiece, "index" | "release" | "due" | "weight" | "cure" | "underLimit" | "begun">;

/** A piece as it is before any play, on no hook. */
export function layPiece(facts: PieceFacts): BenchPiece {
  const { index, release, due, weight, cure, underLimit, begun } = facts;
  return {
    index,
    release,
    due,
    weight,
    weightLog: Math.log(Math.max(weight, 0.1)),
    cure,
    underLimit,
    tasks: [],
    begun,
    free: 0,
    left: 0,
    finish: NEVER,
    leastFinish: 0,
    hook: null,
  };
}

type StationFacts = Pick<
  BenchStation,
  "index" | "standing" | "any" | "ready" | "lastUsed" | "served" | "owes"
>;

/** A station as it is before any play. */
export function layStation(facts: StationFacts): BenchStation {
  const { index, standing, any, ready, lastUsed, served, owes } = facts;
  return {
    index,
    standing,
    any,
    ready,
    lastUsed,
    served,
    session: 0,
    busyUntil: 0,
    owes,
    maker: null,
    user: null,
  };
}

type Unplayed = Omit<
  Bench,
  "looks" | "looksBefore" | "clock" | "looksAsked" | "cost" | "extra" | "missed" | "missedBy"
> & { readonly looks: readonly Minutes[] };

/** A bench as it is before any play. */
export function layBench(facts: Unplayed): Bench {
  return {
    calendar: facts.calendar,
    horizon: facts.horizon,
    prices: facts.prices,
    mostOut: facts.mostOut,
    tasks: facts.tasks,
    pieces: facts.pieces,
    stations: facts.stations,
    places: facts.places,
    slots: facts.slots,
    setUps: facts.setUps,
    apart: facts.apart,
    clearAt: [...facts.clearAt],
    keepsOut: facts.keepsOut,
    airs: facts.airs,
    needs: facts.needs,
    hands: [...facts.hands],
    looks: [...facts.looks],
    looksBefore: facts.looks.length,
    longestLook: facts.longestLook,
    putsAway: facts.putsAway,
    setUpsGive: facts.setUpsGive,
    clock: 0,
    looksAsked: facts.looks.length,
    cost: 0,
    extra: 0,
    missed: null,
    missedBy: 0,
  };
}
