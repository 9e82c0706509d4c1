import type { Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import { givenOff } from "../given-off.ts";
import { listOf } from "../list-of.ts";
import { type Gives, LOOK, type PlanWindow, type Problem, type Task } from "../problem.ts";
import type {
  Bench,
  BenchHook,
  BenchPiece,
  BenchPlace,
  BenchSetUp,
  BenchSlot,
  BenchStation,
  BenchWindow,
} from "./bench.ts";
import { AirKinds, clearAtBeginning, numberNeeds, spreadApart } from "./bench-air.ts";
import { Calendar, NEVER } from "./calendar.ts";
import { layBench, layPiece, layStation, layTask, linkWait, type TaskFacts } from "./lay-bench.ts";

/** Before tails are measured. */
const NO_SESSIONS = new Int32Array(0);

/**
 * Makes a problem ready for many plays over it.
 *
 * @throws RangeError when a number in the problem names nothing
 */
export function makeBench(problem: Problem): Bench {
  const apart = spreadApart(problem);
  const calendar = new Calendar(problem.sessions);
  const setUps = listOf(problem.setUps, makeSetUp);
  const stations = listOf(problem.stations, (station, index) => makeStation(station, index, setUps));
  const pieces = listOf(problem.pieces, (piece, index) =>
    layPiece({ ...piece, due: piece.due ?? NEVER, index }),
  );
  const slots: BenchSlot[] = [];
  const places = listOf(problem.places, ({ hooks }, index) => makePlace(problem, index, hooks, slots));
  const longest = problem.sessions.reduce((most, { opens, closes }) => Math.max(most, closes - opens), 0);
  const airs = new AirKinds();
  const tasks = listOf(problem.tasks, (task, index) => {
    const piece = at(pieces, task.piece);
    const isTooLong = leastRoom(problem, task) > longest;
    const release = isTooLong ? NEVER : Math.max(task.release ?? NEVER, piece.release);
    const gives = givenOff(problem, task, (what) => (apart[what]?.length ?? 0) > 0);
    const station = task.station === null ? null : at(stations, task.station);
    const setUp = task.setUp === null ? null : at(setUps, task.setUp);
    const facts = factsOf(task, index, release, gives, airs.numberOf(gives));
    return layTask(facts, { piece, station, setUp, hook: hookOf(task, places) });
  });
  for (let index = 0; index < tasks.length; index++) {
    const { waits } = at(problem.tasks, index);
    for (let place = 0; place < waits.length; place++) {
      const { on, windows } = at(waits, place);
      linkWait(at(tasks, index), at(tasks, on), listOf(windows, makeWindow));
    }
  }
  for (const [index, { hook }] of problem.pieces.entries()) {
    if (hook !== null) takeHook(at(places, hook.place), at(pieces, index), hook.until);
  }
  return layBench({
    calendar,
    horizon: problem.horizon,
    prices: problem.prices,
    mostOut: problem.mostOut,
    tasks,
    pieces,
    stations,
    places,
    slots,
    setUps,
    apart,
    clearAt: clearAtBeginning(problem, apart),
    keepsOut: airs.keepsOut(apart),
    airs: airs.count,
    needs: numberNeeds(tasks),
    hands: new Array<number>(Math.max(1, problem.hands)).fill(0),
    looks: problem.looks,
    longestLook: 2 * tasks.reduce((most, { watched, minutes }) => Math.max(most, watched + minutes), 0),
    putsAway: problem.setUps.some(({ putAway }) => putAway > 0),
    setUpsGive: problem.setUps.some(({ gives }) => gives.length > 0),
  });
}

/** What a problem says of a task; tails and the need of clear air are found out later. */
function factsOf(
  { minutes, mayStop, unfit, running, ended, looks }: Task,
  index: number,
  release: Minutes,
  gives: readonly Gives[],
  airKind: number,
): TaskFacts {
  return {
    index,
    minutes,
    release,
    mayStop,
    unfit: unfit ?? [],
    running,
    ended,
    looks,
    watched: looks.reduce((last, look) => Math.max(last, look + LOOK), 0),
    gives,
    fills: gives.flatMap(({ what, fromSetUp }) => (fromSetUp ? [what] : [])),
    fillsLater: gives.flatMap(({ what, fromSetUp }) => (fromSetUp ? [] : [what])),
    airKind,
    need: 0,
    holds: gives.reduce((most, { lasts }) => Math.max(most, lasts), 0),
    tail: 0,
    leastFinish: NO_SESSIONS,
    usualRest: 0,
    restLog: 0,
  };
}

/** Field by field: what is made by spreading may be of a shape of its own, each time, to the engine. */
function makeWindow({ opens, shuts, preparation }: PlanWindow): BenchWindow {
  return {
    opens,
    shuts,
    preparation,
    lead: preparation === null ? 0 : preparation.minutes + preparation.settles,
  };
}

function makeSetUp({ minutes, keeps, putAway, gives }: Problem["setUps"][number], index: number): BenchSetUp {
  return {
    index,
    minutes,
    way: keeps.way,
    keeps: keeps.way === "load" ? NEVER : keeps.minutes,
    serves: keeps.way === "mix" ? Math.min(keeps.serves, NEVER) : NEVER,
    putAway,
    gives,
  };
}

function makeStation(
  { standing }: Problem["stations"][number],
  index: number,
  setUps: readonly BenchSetUp[],
): BenchStation {
  const stands = standing === null || standing === "any" ? null : standing;
  const setUp = stands === null ? null : at(setUps, stands.setUp);
  return layStation({
    index,
    standing: setUp,
    any: standing === "any",
    ready: stands?.ready ?? 0,
    lastUsed: stands?.lastUsed ?? stands?.ready ?? 0,
    served: stands?.served ?? 0,
    owes: setUp?.putAway ?? 0,
  });
}

/** More may hang there now than there are hooks: that is a fact, and each has its slot. */
function makePlace({ pieces }: Problem, place: number, hooks: number, slots: BenchSlot[]): BenchPlace {
  const hanging = pieces.filter(({ hook }) => hook?.place === place).length;
  const own = Array.from({ length: Math.max(hooks, hanging) }, (_, more) => ({
    index: slots.length + more,
    until: 0,
    piece: null,
  }));
  slots.push(...own);
  return { hooks, slots: own };
}

function takeHook({ slots }: BenchPlace, piece: BenchPiece, until: number): void {
  const slot = slots.find((one) => one.until === 0);
  if (slot === undefined) return;
  slot.until = until;
  slot.piece = piece;
  piece.hook = slot;
}

function hookOf({ hook }: Task, places: readonly BenchPlace[]): BenchHook | null {
  return hook === null
    ? null
    : { place: at(places, hook.place), until: hook.until, stays: hook.stays === true };
}

/** Shortest stretch of bench time in which the task can be done with its set-up made, and put away after. */
function leastRoom(problem: Problem, task: Task): number {
  if (task.mayStop || task.running || task.ended !== null) return 0;
  const setUp = task.setUp === null ? null : at(problem.setUps, task.setUp);
  // What is loaded may have been loaded the day before.
  const made = setUp === null || setUp.keeps.way === "load" ? 0 : setUp.minutes;
  return task.minutes + made + (setUp?.putAway ?? 0);
}
