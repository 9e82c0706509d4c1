import { at } from "../plan/at.ts";
import { openingAfter, shutAfter } from "../plan/lag.ts";
import type { PlanPiece, Problem, Standing, Task, Wait } from "../plan/problem.ts";
import type { Minutes } from "../time/instant.ts";
import type { PlayPiece, PlayStanding, PlayState, PlayTask } from "./play-state.ts";
import { shiftLag, shiftWindow } from "./shift-lag.ts";

/** What is asked of a policy: the shop as it stands, as a problem whose minute 0 is now. */
export interface Moment {
  readonly now: Minutes;
  readonly problem: Problem;
  /** By task of the problem: its number in play. */
  readonly tasks: readonly number[];
  /** By piece of the problem: its number in play. */
  readonly pieces: readonly number[];
}

/**
 * The shop as the maker knows it now. How a wait really goes shows at its sheet's own opening, when the coat is
 * touched; until then the sheet counts.
 */
export function problemNow(state: PlayState): Moment {
  const { shop, now } = state;
  const numbers: number[] = [];
  const tasks: Task[] = [];
  const pieces: PlanPiece[] = [];
  const names: number[] = [];
  for (const piece of state.unfinished) {
    addTasks(state, piece, pieces.length, tasks, numbers);
    pieces.push(pieceNow(piece, now));
    names.push(piece.number);
  }
  for (const piece of state.pieces) {
    if (piece.tasksLeft > 0 || hookNow(piece, now) === null) continue;
    pieces.push(pieceNow(piece, now));
    names.push(piece.number);
  }
  const problem: Problem = {
    ...shop,
    origin: shop.origin + now * 60_000,
    sessions: sessionsAhead(state),
    stations: shop.stations.map(({ name }, index) => ({
      name,
      standing: standingNow(at(state.standing, index), now),
    })),
    air: state.air.flatMap(({ what, until }) => (until > now ? [{ what, until: until - now }] : [])),
    looks: state.looks.flatMap((look) => (look >= now ? [look - now] : [])),
    pieces,
    tasks,
  };
  return { now, problem, tasks: numbers, pieces: names };
}

function sessionsAhead({ shop, session, now }: PlayState): Problem["sessions"] {
  const ahead: Problem["sessions"][number][] = [];
  for (let index = session; index < shop.sessions.length; index++) {
    const { opens, closes } = at(shop.sessions, index);
    if (opens >= now + shop.horizon) break;
    ahead.push({ opens: opens - now, closes: closes - now });
  }
  return ahead;
}

function pieceNow(piece: PlayPiece, now: Minutes): PlanPiece {
  const { release, due, begun } = piece.piece;
  return {
    ...piece.piece,
    release: release - now,
    due: due === null ? null : due - now,
    begun: begun || piece.began !== null,
    hook: hookNow(piece, now),
  };
}

function hookNow({ hook }: PlayPiece, now: Minutes): PlanPiece["hook"] {
  if (hook === null) return null;
  const until = (now < hook.expected ? hook.expected : hook.until) - now;
  return until > 0 ? { place: hook.place, until } : null;
}

function standingNow(standing: PlayStanding, now: Minutes): Standing | null | "any" {
  if (standing === null || standing === "any") return standing;
  const { ready, lastUsed } = standing;
  return { ...standing, ready: ready - now, lastUsed: lastUsed === null ? null : lastUsed - now };
}

/** Tasks to do, and before them the coats done whose windows still count. */
function addTasks(
  state: PlayState,
  { tasks: own }: PlayPiece,
  piece: number,
  tasks: Task[],
  numbers: number[],
): void {
  const { now } = state;
  const local = new Map<number, number>();
  const counts = coatsThatCount(state, own);
  for (const played of own) {
    const { task, index, end } = played;
    if (end !== null && !counts.has(played)) continue;
    local.set(index, tasks.length);
    numbers.push(index);
    const release = task.release === null ? null : task.release - now;
    const as = {
      ...task,
      piece,
      release,
      hook: shiftHook(task.hook, now),
      running: false,
      ...unfitNow(task, now),
    };
    const hand = state.inHand.find((one) => one.task === played);
    if (end !== null) tasks.push({ ...as, waits: [], ended: end - now });
    else if (hand !== undefined)
      tasks.push({ ...as, waits: [], running: true, minutes: Math.max(1, hand.expected - now) });
    else tasks.push({ ...as, minutes: played.rest, ...waitsNow(state, played, local, release) });
  }
}

function shiftHook(hook: Task["hook"], now: Minutes): Task["hook"] {
  return hook === null || typeof hook.until === "number"
    ? hook
    : { ...hook, until: shiftLag(hook.until, now, openingAfter) };
}

function unfitNow({ unfit }: Task, now: Minutes): Pick<Task, "unfit"> {
  if (unfit === undefined) return {};
  return {
    unfit: unfit.flatMap(([from, until]) => (until > now ? [[from - now, until - now] as const] : [])),
  };
}

/** Done tasks with a window still to be met, and those done after them, which a mend would undo. */
function coatsThatCount(state: PlayState, own: readonly PlayTask[]): Set<PlayTask> {
  const counts = new Set<PlayTask>();
  for (const played of own) {
    if (played.end !== null || played.split) continue;
    for (const { on, windows } of played.task.waits) {
      if (windows.length > 1 || at(windows, 0).shuts !== null || at(windows, 0).preparation !== null) {
        const coat = at(state.tasks, on);
        if (coat.end !== null) addDone(counts, coat);
      }
    }
  }
  return counts;
}

function addDone(counts: Set<PlayTask>, coat: PlayTask): void {
  counts.add(coat);
  for (const next of coat.followers) if (next.end !== null && !counts.has(next)) addDone(counts, next);
}

/** Waits for work done become a release, or windows of the length they turned out to have. */
function waitsNow(
  state: PlayState,
  { task, split }: PlayTask,
  local: ReadonlyMap<number, number>,
  release: Minutes | null,
): Pick<Task, "waits" | "release"> {
  const { now } = state;
  if (split) return { waits: [], release };
  // Nobody sets up for a coat without touching it.
  const touched = now + (task.setUp === null ? 0 : at(state.shop.setUps, task.setUp).minutes);
  let earliest = release;
  const waits: Wait[] = [];
  for (const wait of task.waits) {
    const before = at(state.tasks, wait.on);
    const on = local.get(wait.on);
    if (before.end === null) waits.push({ ...wait, on: on ?? -1, windows: shiftWindows(wait, now) });
    else {
      const windows = windowsOf(wait, before, before.end, touched);
      if (on !== undefined) waits.push({ ...wait, on, windows });
      else if (earliest !== null)
        earliest = Math.max(earliest, before.end - now + openingAfter(at(windows, 0).opens, 0));
    }
  }
  return { waits, release: earliest };
}

function shiftWindows({ windows }: Wait, now: Minutes): Wait["windows"] {
  const fixed = windows.every(
    ({ opens, shuts }) => typeof opens === "number" && (shuts === null || typeof shuts === "number"),
  );
  return fixed ? windows : windows.map((window) => shiftWindow(window, now));
}

/** The windows after work done, in minutes from its end, as they are known to be when it is touched. */
function windowsOf({ windows }: Wait, { wait }: PlayTask, end: Minutes, touched: Minutes): Wait["windows"] {
  const shown = touched < openingAfter(at(windows, 0).opens, end) ? 1 : wait;
  return windows.map(({ opens, shuts, preparation }) => ({
    opens: Math.round((openingAfter(opens, end) - end) * shown),
    shuts: shuts === null ? null : Math.round((shutAfter(shuts, end) - end) * shown),
    preparation,
  }));
}
