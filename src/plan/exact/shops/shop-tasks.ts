import type { Visit } from "../../plan.ts";
import type { Problem, Task } from "../../problem.ts";
import { isOne, isZero, type ModelDraft } from "../conflict/model-draft.ts";

/** The variables of a task: when hands-on begins with what is set up, when the task starts, whether it is set up for it. */
export interface TaskTimes {
  readonly task: number;
  readonly about: Task;
  readonly begin: number;
  /** The same variable as `begin` where nothing can be set up. */
  readonly start: number;
  readonly made: number | null;
  /** It stands where a plan has it. */
  readonly isFixed: boolean;
}

/**
 * Adds the variables of all tasks that are not done.
 *
 * @param kept visits of a plan that stay as they are, by task
 */
export function addTasks(
  draft: ModelDraft,
  problem: Problem,
  kept: ReadonlyMap<number, Visit>,
): readonly TaskTimes[] {
  const open = problem.tasks.flatMap((about, task) => (about.ended === null ? [{ task, about }] : []));
  // All begins first: they are what the search puts in order.
  const begins = open.map(({ task, about }) => addBegin(draft, problem, about, kept.get(task)));
  return open.map(({ task, about }, place) => {
    const begin = begins[place] as number;
    const isFixed = kept.has(task) || about.running;
    return { task, about, begin, isFixed, ...addStart(draft, problem, about, begin, kept.get(task)) };
  });
}

function addBegin(draft: ModelDraft, problem: Problem, task: Task, kept: Visit | undefined): number {
  if (kept !== undefined) return draft.add(kept.start - kept.setUp, kept.start - kept.setUp);
  if (task.running) return draft.add(0, 0);
  const { sessions, pieces, horizon } = problem;
  const release = Math.max(task.release ?? 0, pieces[task.piece]?.release ?? 0);
  const lastEnd = Math.min(horizon, sessions.at(-1)?.closes ?? 0);
  return draft.add(Math.max(0, release, sessions[0]?.opens ?? 0), lastEnd - task.minutes);
}

function addStart(
  draft: ModelDraft,
  { setUps }: Problem,
  { setUp, running }: Task,
  begin: number,
  kept: Visit | undefined,
): { start: number; made: number | null } {
  const minutes = setUps[setUp ?? -1]?.minutes ?? 0;
  if (minutes === 0) return { start: begin, made: null };
  // What it works with was set up for it, and stands for those that come after.
  if (running) return { start: begin, made: draft.add(1, 1) };
  if (kept !== undefined) {
    const made = kept.setUp > 0 ? 1 : 0;
    return { start: draft.add(kept.start, kept.start), made: draft.add(made, made) };
  }
  const start = draft.add(draft.least(begin), draft.most(begin));
  const made = draft.add(0, 1);
  draft.keep(begin, start, 0);
  draft.keep(start, begin, -minutes);
  draft.keep(begin, start, minutes, isOne(made));
  draft.keep(start, begin, 0, isZero(made));
  return { start, made };
}

/** A task, its set-up before and its looks after lie in one session: it ends by a closing, or begins after the opening next. */
export function addSessions(
  draft: ModelDraft,
  { sessions }: Problem,
  { about, begin, start, isFixed }: TaskTimes,
): void {
  if (isFixed) return;
  const lasts = about.minutes + Math.max(0, ...about.looks.map((look) => look + 1));
  for (const [place, { closes }] of sessions.entries()) {
    const opens = sessions[place + 1]?.opens ?? Number.POSITIVE_INFINITY;
    // The latest start in the bench session; a begin after it has the next opening before it.
    const latest = closes - lasts;
    if (latest < draft.least(begin))
      draft.narrow(begin, Math.min(opens, draft.most(begin) + 1), draft.most(begin));
    else if (opens > draft.most(begin)) draft.narrow(start, 0, latest);
    else draft.either({ side: 2 * begin, value: opens }, { side: 2 * start + 1, value: -latest });
    if (opens > draft.most(begin)) break;
  }
  draft.narrow(start, draft.least(begin), draft.most(start));
}

/** Hands-on ends before each stretch of air unfit for it, or begins after it. */
export function addUnfit(draft: ModelDraft, { about, start, isFixed }: TaskTimes): void {
  if (isFixed) return;
  for (const [from, until] of about.unfit ?? []) {
    const latest = from - about.minutes;
    const most = draft.most(start);
    if (latest < draft.least(start)) draft.narrow(start, Math.min(until, most + 1), most);
    else if (until > most) draft.narrow(start, draft.least(start), latest);
    else draft.either({ side: 2 * start, value: until }, { side: 2 * start + 1, value: -latest });
  }
}
