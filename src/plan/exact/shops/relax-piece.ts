import { type PlanWindow, type Problem, SHORTEST_PART, type Task, type Wait } from "../../problem.ts";
import { longestLag, shortestLag } from "./lag-bounds.ts";

/**
 * A piece of a problem, alone, with all that could cost it more left out: every plan of the whole has in it a plan of
 * this that costs no more. No set-ups (others may have made them), looks, hooks or limit on how many are out; a window
 * that may be missed never shuts; of work that may be split only the shortest part must lie in one session.
 */
export function relaxPiece(problem: Problem, piece: number): Problem {
  const numbers = new Map<number, number>();
  const own = problem.tasks.filter((task, number) => {
    if (task.piece === piece) numbers.set(number, numbers.size);
    return task.piece === piece;
  });
  const tasks = own.map(
    (task): Task => ({
      ...task,
      piece: 0,
      minutes: task.minutes - laterParts(task),
      setUp: null,
      hook: null,
      mayStop: false,
      looks: [],
      waits: task.waits.filter(({ on }) => numbers.has(on)).map((wait) => relaxWait(wait, problem, numbers)),
    }),
  );
  return {
    ...problem,
    // Never two at once on one piece.
    hands: 1,
    stations: problem.stations.map((station) => ({ ...station, standing: null })),
    setUps: [],
    places: [],
    looks: [],
    mostOut: null,
    pieces: problem.pieces.slice(piece, piece + 1),
    tasks,
  };
}

/** What of a task may lie in later sessions than its beginning. */
function laterParts({ mayStop, minutes, running, ended }: Task): number {
  const isSplit = mayStop && minutes >= 2 * SHORTEST_PART && !running && ended === null;
  return isSplit ? minutes - SHORTEST_PART : 0;
}

function relaxWait(
  { on, windows, mend }: Wait,
  { tasks }: Problem,
  numbers: ReadonlyMap<number, number>,
): Wait {
  const before = tasks[on] as Task;
  const later = laterParts(before);
  const last = windows.at(-1)?.shuts ?? null;
  const shuts = mend === null && last !== null && later === 0 ? longestLag(last) : null;
  const window: PlanWindow = {
    opens: shortestLag(windows[0]?.opens ?? 0) + later,
    shuts,
    preparation: null,
  };
  return { on: numbers.get(on) ?? -1, windows: [window], mend: null };
}
