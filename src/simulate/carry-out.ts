import { at } from "../plan/at.ts";
import { openingAfter } from "../plan/lag.ts";
import type { Visit } from "../plan/plan.ts";
import type { Gives } from "../plan/problem.ts";
import type { Minutes } from "../time/instant.ts";
import type { InHand, PlayPiece, PlayState, PlayTask } from "./play-state.ts";
import type { WorkNoise } from "./work-noise.ts";

/**
 * One stretch of the maker's time on one task: its preparations, then the work itself. Tasks and minutes are those of
 * play, as they are thought to go; what they really take, and how the wait after them goes, is the noise's.
 */
export type Act = readonly Visit[];

/**
 * Begins an act now: a pair of hands is on it until its end. What is begun is finished, though the bench should shut,
 * but for work that may stop.
 */
export function beginAct(state: PlayState, act: Act, noise: WorkNoise): void {
  let from = state.now;
  for (const [index, visit] of act.entries()) {
    const task = at(state.tasks, visit.task);
    const piece = at(state.pieces, task.task.piece);
    takeDown(piece, from);
    if (visit.part === "preparation") {
      const end = prepare(state, piece, task, visit, from, noise);
      const next = act[index + 1] ?? visit;
      from = end + Math.max(0, next.start - next.setUp - visit.end);
    } else work(state, piece, task, visit, from, noise);
  }
}

/** @returns when it really ends */
function prepare(
  state: PlayState,
  piece: PlayPiece,
  task: PlayTask,
  visit: Visit,
  start: Minutes,
  noise: WorkNoise,
): Minutes {
  const minutes = visit.end - visit.start;
  const end = start + really(minutes, noise("preparation", piece.number, task.step, task.turn));
  const asked = task.task.waits
    .flatMap(({ windows }) => windows)
    .find(({ preparation }) => preparation?.minutes === minutes);
  state.visits.push({ ...visit, start, end });
  giveOff(state, asked?.preparation?.gives ?? [], end, null);
  return end;
}

function work(
  state: PlayState,
  piece: PlayPiece,
  task: PlayTask,
  visit: Visit,
  begun: Minutes,
  noise: WorkNoise,
): void {
  if (visit.part === "mend") undoAfter(piece, task, visit);
  const factor = noise("hands", piece.number, task.step, task.turn);
  const planned = visit.end - visit.start;
  const start = begun + visit.setUp;
  const needed = really(task.rest, factor);
  const most = planned < task.rest ? planned : mostTonight(state, task, start);
  const end = start + Math.min(needed, most);
  const part = visit.part === "mend" ? "mend" : task.again ? "again" : "step";
  piece.began ??= begun;
  state.visits.push({ task: task.index, part, setUp: visit.setUp, start, end });
  occupyStation(state, task, visit.setUp, start, end);
  giveOff(state, givenBy(state, task), end, task.task.station);
  const left = needed <= most ? 0 : Math.max(1, task.rest - really(most, 1 / factor));
  state.inHand = [...state.inHand, { task, piece, expected: start + planned, end, left }];
}

/** Ends what was in hand until now. */
export function endAct(state: PlayState, done: InHand, noise: WorkNoise): void {
  state.inHand = state.inHand.filter((other) => other !== done);
  const { task, piece, left } = done;
  if (left === 0) complete(state, piece, task, done.end, noise);
  else {
    task.split = true;
    task.rest = left;
  }
}

/** How long it can be gone on with: work that may stop is left at closing. */
function mostTonight({ shop, session }: PlayState, { task, again }: PlayTask, start: Minutes): Minutes {
  const { opens, closes } = shop.sessions[session] ?? { opens: Infinity, closes: Infinity };
  return task.mayStop && !again && start >= opens && start < closes ? closes - start : Infinity;
}

/** Whole minutes that `minutes` turn out to be. */
function really(minutes: Minutes, factor: number): Minutes {
  return Math.max(1, Math.round(minutes * factor));
}

/** A piece in hand is on no hook. */
function takeDown(piece: PlayPiece, t: Minutes): void {
  if (piece.hook !== null && piece.hook.until > t) piece.hook = null;
}

/** A coat to be laid again: with the levelling, and all that followed it is to be done once more. */
function undoAfter(piece: PlayPiece, task: PlayTask, visit: Visit): void {
  undo(piece, task);
  task.rest = visit.end - visit.start;
  const below = [...task.followers];
  for (let next = below.pop(); next !== undefined; next = below.pop()) {
    if (next.end === null && !next.split) continue;
    undo(piece, next);
    next.again = true;
    below.push(...next.followers);
  }
}

function undo(piece: PlayPiece, task: PlayTask): void {
  if (task.end !== null) piece.tasksLeft++;
  task.end = null;
  task.split = false;
  task.rest = task.task.minutes;
}

function occupyStation(
  state: PlayState,
  { task }: PlayTask,
  made: Minutes,
  start: Minutes,
  end: Minutes,
): void {
  if (task.station === null || task.setUp === null) return;
  const standing = at(state.standing, task.station);
  const kept = made > 0 || standing === "any" ? null : standing;
  state.standing[task.station] = {
    setUp: task.setUp,
    ready: kept?.ready ?? start,
    lastUsed: end,
    served: (kept?.served ?? 0) + 1,
  };
}

/** What a task and its set-up put into the room; a set-up's lasts until it could be put away. */
function givenBy({ shop }: PlayState, { task }: PlayTask): readonly Gives[] {
  if (task.setUp === null) return task.gives;
  const { gives, putAway } = at(shop.setUps, task.setUp);
  return [...task.gives, ...gives.map((what) => ({ what, lasts: putAway, fromSetUp: true }))];
}

/** Fills the air; what stands at another station and must keep apart from it was put away before. */
function giveOff(state: PlayState, gives: readonly Gives[], end: Minutes, station: number | null): void {
  const { apart, setUps } = state.shop;
  state.air = state.air.filter(({ until }) => until > state.now);
  for (const { what, lasts } of gives) {
    state.air.push({ what, until: end + lasts });
    for (const [index, standing] of state.standing.entries()) {
      if (standing === null || standing === "any" || index === station) continue;
      const clash = at(setUps, standing.setUp).gives.some((other) =>
        apart.some(([a, b]) => (a === what && b === other) || (a === other && b === what)),
      );
      if (clash) state.standing[index] = null;
    }
  }
}

function complete(state: PlayState, piece: PlayPiece, task: PlayTask, end: Minutes, noise: WorkNoise): void {
  task.wait = noise("wait", piece.number, task.step, task.turn);
  task.end = end;
  task.split = false;
  task.turn++;
  state.looks = state.looks.filter((look) => look >= end);
  for (const look of task.task.looks) state.looks.push(end + look);
  const { hook } = task.task;
  if (hook !== null) {
    const expected = openingAfter(hook.until, end);
    piece.hook = { place: hook.place, expected, until: end + Math.round((expected - end) * task.wait) };
  }
  piece.tasksLeft--;
  if (piece.tasksLeft > 0) return;
  piece.finish = end + piece.piece.cure;
  state.unfinished = state.unfinished.filter((other) => other !== piece);
}
