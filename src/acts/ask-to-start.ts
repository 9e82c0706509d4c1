import type { NewEvent, Override, Tag } from "../journal/event.ts";
import type { Coat } from "../process/coat.ts";
import type { Step } from "../process/step.ts";
import { cautionsFor, unreadCautions } from "../safety/cautions.ts";
import { holdsOn } from "../safety/fit-to-start.ts";
import type { Hold } from "../safety/hold.ts";
import type { Task } from "../safety/task.ts";
import type { Shop } from "../shop/shop.ts";
import { preparationAsked } from "../shop/step-wait.ts";
import type { Instant } from "../time/instant.ts";
import type { Work } from "./choose-work.ts";
import { contextAt, type DecideContext } from "./context.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";
import type { Anyway } from "./request.ts";
import { matchCautions, tickedEvents } from "./tick.ts";

/** What the maker says along with work that is to begin. */
interface Said {
  readonly at: Instant;
  readonly anyway: Anyway | null;
  readonly ticked: readonly string[];
}

/** That work may start: the readings to write down with it, and what was gone over with a reason. */
interface Start {
  readonly ticked: readonly NewEvent[];
  readonly overrides: readonly Override[];
}

/**
 * Asks safety whether works may start now: what must keep apart, hooks and measurements first, which a reason goes
 * over, then the cautions to be read, which it does not.
 *
 * @param leaves pieces in hand that the same act puts down
 */
export function askToStart(
  said: Said,
  works: readonly Work[],
  leaves: readonly Tag[],
  shop: Shop,
  context: DecideContext,
): Start | Refused {
  const steps = [...new Set(works.map(({ step }) => step))];
  const tasks = steps.map((step): Task => {
    const some = works.filter((work) => work.step === step);
    const preparations = some.map(({ piece, part }) =>
      part === "preparation" ? preparationAsked(piece, step, said.at) : null,
    );
    return {
      tags: some.map(({ piece }) => piece.tag),
      step,
      part: some[0]?.part ?? "step",
      preparation: preparations[0] ?? null,
      coats: some[0]?.piece.coats ?? {},
      leaves,
    };
  });
  return ask(said, tasks, shop, context);
}

/** The same for a set-up alone: the lead is read about before the pot is lit. */
export function askToSetUp(
  said: Said,
  step: Step,
  coats: Readonly<Record<string, Coat>>,
  shop: Shop,
  context: DecideContext,
): Start | Refused {
  return ask(said, [{ tags: [], step, part: "set-up", preparation: null, coats, leaves: [] }], shop, context);
}

function ask(said: Said, tasks: readonly Task[], shop: Shop, context: DecideContext): Start | Refused {
  const { rules } = context;
  const moment = contextAt(context, said.at);
  const tags = tasks.flatMap((task) => task.tags);
  const step = tasks[0]?.step.name ?? "";
  const holds = tasks.flatMap((task) => holdsOn(task, shop, rules, moment));
  if (holds.length > 0 && !said.anyway) {
    return refuse({ code: "held", tags, step, holds }, lastEnd(holds));
  }
  const read = matchCautions(said.ticked, shop, rules);
  if (isRefused(read)) return read;
  const cautions = tasks.flatMap((task) => {
    const names = cautionsFor(task.step, task, task.part, task.preparation);
    return unreadCautions(names, shop, rules, moment, task.step.station);
  });
  const unread = [...new Set(cautions)].filter((name) => !read.includes(name));
  if (unread.length > 0) return refuse({ code: "read the caution", cautions: unread, step, tags });
  const codes = new Set(holds.map(({ code }) => code));
  return {
    ticked: tickedEvents(read, said.at),
    overrides: [...codes].map((over) => ({ over, reason: said.anyway?.reason ?? "" })),
  };
}

/** When the last of the holds ends; null: one of them does not end by the clock. */
function lastEnd(holds: readonly Hold[]): Instant | null {
  const ends = holds.map(({ until }) => until);
  return ends.includes(null) ? null : Math.max(...ends.map((end) => end ?? 0));
}
