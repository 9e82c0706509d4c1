import { MINUTE, type Minutes } from "../time/instant.ts";
import { sessionNow } from "./bench-time.ts";
import type { Candidate } from "./candidates.ts";
import type { ShopProblem } from "./make-problem.ts";
import type { Plan } from "./plan.ts";
import type { ShopFacts } from "./plan-shop.ts";

/** A row of work that may be left for the rest of the bench session, by the numbers of a problem. */
export interface LeftWork {
  /** What it is called from one answer to the next. */
  readonly key: string;
  readonly tasks: readonly number[];
  readonly pieces: readonly number[];
  /** It is not begun before this minute: the end of the bench session. */
  readonly until: Minutes;
}

/** A row as work to be left; nothing of it may be in the problem. */
export function leftWork(row: readonly Candidate[], facts: ShopFacts, { pieces }: ShopProblem): LeftWork {
  const { now } = facts.context;
  const found = row.flatMap(({ tag, step }) => {
    const piece = pieces.findIndex((one) => one.tag === tag);
    const task = pieces[piece]?.tasks.find((made) => made.step === step.name && made.pass === 0)?.task;
    return task === undefined ? [] : [{ piece, task }];
  });
  return {
    key: keyOfRow(row),
    tasks: found.map(({ task }) => task),
    pieces: found.map(({ piece }) => piece),
    until: Math.floor(((sessionNow(facts)?.closes ?? now) - now) / MINUTE),
  };
}

/** Whether a plan leaves the work until then by itself: then leaving it costs nothing. */
export function isLeftAnyway({ tasks, until }: Pick<LeftWork, "tasks" | "until">, { visits }: Plan): boolean {
  return visits.every(({ task, start, setUp }) => start - setUp >= until || !tasks.includes(task));
}

/** What a row is called, whatever problem it stands in. */
export function keyOfRow(row: readonly Candidate[]): string {
  return [row[0]?.step.name, row[0]?.part, ...row.map(({ tag }) => tag ?? "new")].join("\n");
}
