import type { Minutes } from "../../time/instant.ts";
import { eachDay } from "../fit-minutes.ts";
import { LOOK, type PlanWindow, type Problem, SHORTEST_PART, type Task } from "../problem.ts";
import { apartTables, type InAir, standingApart } from "./apart-tables.ts";
import type { Circle, CircleHold, CircleLag, CircleSetUp, CircleTask } from "./circle.ts";
import { longestOf, shortestOf } from "./lags-of-day.ts";

const DAY: Minutes = 1_440;

/** What a task of a circle stands for. */
export interface CircleWork {
  /** The task of the problem. */
  readonly task: number;
  /** A look is short and attended; a preparation is what a window asks for first. */
  readonly part: "step" | "look" | "preparation";
  /** Which of several parts that the task is split into for its length, from 1; null: it is whole. */
  readonly split: number | null;
}

export interface ProblemCircle {
  readonly circle: Circle;
  /** By task of the circle. */
  readonly work: readonly CircleWork[];
}

/**
 * A planning problem of pieces that come round, as a circle: every task once a period. Waits are taken at their longest
 * and windows at their shortest over the day, for a rotation is the same each time; air unfit for a coat on the first
 * day is so on each (minute 0 of the problem is that of the circle). Of the windows of a wait those that
 * ask for no preparation count; where all do, and for the tasks in `prepared`, the preparation becomes a task.
 */
export function circleOfProblem(
  problem: Problem,
  period: Minutes,
  sessions: Circle["sessions"],
  prepared: ReadonlySet<number> = new Set(),
): ProblemCircle {
  const longest = Math.max(...sessions.map(({ opens, closes }) => closes - opens));
  const making = new Making({ problem, period, longest, prepared });
  for (const [index, task] of problem.tasks.entries()) making.add(index, task);
  const { work, tasks, lags, air } = making;
  const setUps = problem.setUps.map((setUp, number): CircleSetUp => {
    return { ...setUp, apartFrom: standingApart(problem, air, number) };
  });
  const { apart, apartFromSetUp } = apartTables(problem, air);
  return {
    circle: {
      period,
      hands: problem.hands,
      sessions,
      tasks,
      lags,
      apart,
      apartFromSetUp,
      setUps,
      holds: making.holds(),
      room: problem.places.map(({ hooks }) => hooks),
      pieces: problem.pieces.map((_, piece) => making.spanOf(piece)),
    },
    work,
  };
}

interface MakingAsk {
  readonly problem: Problem;
  readonly period: Minutes;
  /** Minutes of the longest session. */
  readonly longest: Minutes;
  readonly prepared: ReadonlySet<number>;
}

class Making {
  readonly work: CircleWork[] = [];
  readonly tasks: CircleTask[] = [];
  readonly lags: CircleLag[] = [];
  readonly air: InAir[] = [];
  readonly #hung: { hook: NonNullable<Task["hook"]>; task: number; next: number }[] = [];
  readonly #problem: Problem;
  readonly #period: Minutes;
  readonly #longest: Minutes;
  readonly #prepared: ReadonlySet<number>;
  readonly #first = new Map<number, number>();
  readonly #last = new Map<number, number>();

  constructor({ problem, period, longest, prepared }: MakingAsk) {
    this.#problem = problem;
    this.#period = period;
    this.#prepared = prepared;
    this.#longest = longest;
  }

  add(index: number, task: Task): void {
    const parts = this.#split(task);
    const minutes = Math.ceil(task.minutes / parts);
    for (let part = 1; part <= parts; part++) {
      const own = Math.min(minutes, task.minutes - (part - 1) * minutes);
      const number = this.#push(index, "step", parts === 1 ? null : part, own, task);
      if (part === 1) this.#first.set(index, number);
      else this.#lag(number - 1, number, minutes, null);
      this.#last.set(index, number);
    }
    for (const wait of task.waits) this.#wait(index, task, wait);
    for (const look of task.looks) this.#look(index, look);
    this.#hook(index, task);
  }

  holds(): CircleHold[] {
    return this.#hung.map(({ hook, task, next }) => ({
      of: hook.place,
      task,
      after: this.tasks[task]?.minutes ?? 0,
      minutes: longestOf(hook.until),
      freedBy: this.#first.get(next) ?? null,
    }));
  }

  /** Its first start, to the last end of its work. */
  spanOf(piece: number): Circle["pieces"][number] {
    const own = [...this.tasks.keys()].filter((at) => this.#pieceOf(at) === piece);
    const followed = new Set(this.lags.map(({ from }) => from));
    const following = new Set(this.lags.map(({ to }) => to));
    return {
      begins: own.filter((at) => !following.has(at)),
      ends: own
        .filter((at) => !followed.has(at))
        .map((task) => ({ task, minutes: this.tasks[task]?.minutes ?? 0 })),
    };
  }

  /** In how many parts a task is worked: more than one only where it is longer than every session. */
  #split({ mayStop, minutes }: Task): number {
    if (!mayStop || minutes <= this.#longest) return 1;
    const parts = Math.ceil(minutes / this.#longest);
    return minutes / parts >= SHORTEST_PART ? parts : 1;
  }

  #push(number: number, part: CircleWork["part"], split: number | null, minutes: Minutes, of: Task): number {
    const looks = part === "step" ? of.looks.map((look) => minutes + look + LOOK) : [];
    const setUp = part === "step" ? of.setUp : null;
    this.work.push({ task: number, part, split });
    const unfit = part === "step" ? eachDay(of.unfit ?? [], DAY, this.#period) : [];
    const task = { minutes, stays: Math.max(minutes, ...looks), setUp, fixed: null };
    this.tasks.push(unfit.length === 0 ? task : { ...task, unfit });
    this.air.push({
      piece: of.piece,
      minutes,
      look: part === "look",
      station: part === "step" ? of.station : null,
      setUp,
      gives: part === "step" ? of.gives : [],
    });
    return this.tasks.length - 1;
  }

  #wait(index: number, task: Task, { on, windows }: Task["waits"][number]): void {
    const before = this.#last.get(on);
    const begins = this.#first.get(index);
    if (before === undefined || begins === undefined) return;
    const open = windowsFor(windows, this.#prepared.has(index));
    const ended = this.tasks[before]?.minutes ?? 0;
    const [window] = open;
    if (window === undefined) return;
    const opens = ended + longestOf(window.opens);
    this.lags.push({
      from: before,
      to: begins,
      least: opens,
      most: shutOf(open.at(-1), ended),
      gaps: open.slice(1).map((next, index) => ({
        shuts: shutOf(open[index], ended) ?? opens,
        opens: ended + longestOf(next.opens),
      })),
    });
    if (window.preparation === null) return;
    const { minutes, settles, gives } = window.preparation;
    const first = this.#push(index, "preparation", null, minutes, { ...task, gives, looks: [] });
    this.air[first] = { ...(this.air[first] as InAir), gives };
    this.#lag(before, first, opens, null);
    this.#lag(first, begins, minutes + settles + (this.#setUpMinutes(task) ?? 0), this.#longest);
  }

  #look(index: number, look: Minutes): void {
    const of = this.#last.get(index);
    const task = this.#problem.tasks[index];
    if (of === undefined || task === undefined) return;
    const after = (this.tasks[of]?.minutes ?? 0) + look;
    const number = this.#push(index, "look", null, LOOK, task);
    this.#lag(of, number, after, after);
  }

  /** A hook is free when the next step of the piece begins, unless it stays taken. */
  #hook(index: number, { hook }: Task): void {
    const task = this.#last.get(index);
    if (hook === null || task === undefined) return;
    const next = hook.stays === true ? -1 : this.#nextAfter(index);
    this.#hung.push({ hook, task, next });
  }

  /** The next task of the piece in working order that waits for this one; -1: none. */
  #nextAfter(index: number): number {
    return this.#problem.tasks.findIndex(({ waits }) => waits.some(({ on }) => on === index));
  }

  #lag(from: number, to: number, least: Minutes, most: Minutes | null): void {
    this.lags.push({ from, to, least, most });
  }

  #setUpMinutes({ setUp }: Task): Minutes | null {
    return setUp === null ? null : (this.#problem.setUps[setUp]?.minutes ?? null);
  }

  #pieceOf(at: number): number | undefined {
    return this.#problem.tasks[this.work[at]?.task ?? -1]?.piece;
  }
}

/** All windows that ask for no preparation; or the first that asks for one, where that is meant or there are no others. */
function windowsFor(all: readonly PlanWindow[], prepared: boolean): readonly PlanWindow[] {
  const windows = all.filter(({ opens }) => Number.isFinite(longestOf(opens)));
  if (windows.length === 0 && all.length > 0)
    throw new RangeError("a wait that never ends comes round in no time");
  const plain = windows.filter(({ preparation }) => preparation === null);
  const asking = windows.filter(({ preparation }) => preparation !== null).slice(0, 1);
  return (prepared && asking.length > 0) || plain.length === 0 ? asking : plain;
}

/** The tasks that a later window would let be prepared, were the plain ones missed. */
export function preparedTasks({ tasks }: Problem): number[] {
  return [...tasks.keys()].filter((index) =>
    tasks[index]?.waits.some(({ windows }) => {
      const plain = windows.filter(({ preparation }) => preparation === null).length;
      return plain > 0 && plain < windows.length;
    }),
  );
}

/** Minutes from the start of a task that takes `ended` to the last at which a window after it is open; null: for ever. */
function shutOf(window: PlanWindow | undefined, ended: Minutes): Minutes | null {
  const shuts = window?.shuts ?? null;
  const shortest = shuts === null ? Number.POSITIVE_INFINITY : shortestOf(shuts);
  return Number.isFinite(shortest) ? ended + shortest : null;
}
