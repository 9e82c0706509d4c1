import type { Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import type { ShopProblem } from "../make-problem.ts";
import type { Problem } from "../problem.ts";
import type { Circle } from "./circle.ts";
import { longestOf } from "./lags-of-day.ts";
import type { Change } from "./rotation-answer.ts";

/** What "longer open" means, and by how much a cure is shortened to see what it gives. */
const LONGER: Minutes = 60;
const SHORTER = 0.75;
/** Shorter waits than this are not worth a faster coat. */
const SHORTEST_CURE: Minutes = 60;

/** One thing otherwise: in the problem of one piece, and then in its circle. */
export interface SingleChange {
  readonly what: Change["what"];
  readonly change: (problem: Problem) => Problem;
  readonly bend: (circle: Circle) => Circle;
}

const asItIs = <T>(one: T): T => one;

/** All single changes worth trying for a process, the waits of its coats from the longest down. */
export function singleChanges({ problem, pieces }: ShopProblem): SingleChange[] {
  const changed = (what: Change["what"], change: SingleChange["change"]): SingleChange => {
    return { what, change, bend: asItIs };
  };
  const bent = (what: Change["what"], bend: SingleChange["bend"]): SingleChange => {
    return { what, change: asItIs, bend };
  };
  const inFitAir = (one: Problem): Problem => ({
    ...one,
    tasks: one.tasks.map((task) => ({ ...task, unfit: [] })),
  });
  return [
    bent({ kind: "hours", minutes: LONGER }, openLonger),
    changed({ kind: "hands" }, (one) => ({ ...one, hands: one.hands + 1 })),
    bent({ kind: "windows" }, withoutShuts),
    changed({ kind: "keep apart" }, (one) => ({ ...one, apart: [] })),
    ...(problem.tasks.some(({ unfit = [] }) => unfit.length > 0) ? [changed({ kind: "air" }, inFitAir)] : []),
    ...sharedStations(problem).map((station) => {
      const { name } = at(problem.stations, station);
      return changed({ kind: "station", station: name }, (one) => stationForEach(one, station));
    }),
    ...problem.places.map(({ name }, place) =>
      changed({ kind: "hook", place: name }, (one) => ({ ...one, places: oneHookMore(one.places, place) })),
    ),
    ...longWaits(problem, at(pieces, 0).tasks).map(({ task, minutes, step }) =>
      changed({ kind: "cure", step, minutes }, (one) => shortenWait(one, task)),
    ),
  ];
}

/** Every session closes later, at the latest when the next opens. */
function openLonger(circle: Circle): Circle {
  const sessions = circle.sessions.map(({ opens, closes }, index) => {
    const next = circle.sessions[index + 1]?.opens ?? circle.period;
    return { opens, closes: Math.min(closes + LONGER, next) };
  });
  return { ...circle, sessions };
}

/** A window once open stays open. */
function withoutShuts(circle: Circle): Circle {
  const lags = circle.lags.map(({ from, to, least, most }) => {
    // A look comes at its minute whatever windows do.
    return { from, to, least, most: most === least ? most : null };
  });
  return { ...circle, lags };
}

function oneHookMore(places: Problem["places"], place: number): Problem["places"] {
  return places.map((one, index) => (index === place ? { ...one, hooks: one.hooks + 1 } : one));
}

/** The stations at which different set-ups take turns. */
function sharedStations({ setUps, tasks }: Problem): number[] {
  const used = setUps.filter((_, number) => tasks.some(({ setUp }) => setUp === number));
  const stations = used.map(({ station }) => station);
  return [...new Set(stations.filter((station, index) => stations.indexOf(station) < index))];
}

/** Each set-up of a station has one of its own. */
function stationForEach(problem: Problem, station: number): Problem {
  const own = (setUp: number): number => problem.stations.length + setUp;
  return {
    ...problem,
    setUps: problem.setUps.map((one, number) =>
      one.station === station ? { ...one, station: own(number) } : one,
    ),
    tasks: problem.tasks.map((task) =>
      task.station === station && task.setUp !== null ? { ...task, station: own(task.setUp) } : task,
    ),
  };
}

/** Each task with a coat whose longest wait is worth shortening. */
function longWaits(
  { tasks }: Problem,
  made: readonly { readonly task: number; readonly step: string; readonly coat: string | null }[],
): { readonly task: number; readonly minutes: Minutes; readonly step: string }[] {
  const longest = new Map<number, Minutes>();
  for (const { on, windows } of tasks.flatMap(({ waits }) => waits)) {
    const opens = longestOf(windows[0]?.opens ?? 0);
    longest.set(on, Math.max(opens, longest.get(on) ?? 0));
  }
  return made
    .flatMap(({ task, step, coat }) => {
      const wait = longest.get(task) ?? 0;
      if (coat === null || wait < SHORTEST_CURE) return [];
      return [{ task, minutes: Math.round(wait * (1 - SHORTER)), step }];
    })
    .sort((one, other) => other.minutes - one.minutes);
}

/** All that waits for a task waits a quarter less than at its longest. */
function shortenWait(problem: Problem, of: number): Problem {
  const tasks = problem.tasks.map((task) => ({
    ...task,
    waits: task.waits.map((wait) => {
      if (wait.on !== of) return wait;
      const windows = wait.windows.map((window) => {
        return { ...window, opens: Math.round(longestOf(window.opens) * SHORTER) };
      });
      return { ...wait, windows };
    }),
  }));
  return { ...problem, tasks };
}
