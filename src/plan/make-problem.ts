import type { Tag } from "../journal/event.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import { stepsInOrder } from "../process/order.ts";
import { instantOf } from "../time/civil.ts";
import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";
import { Routes } from "./made-of-route.ts";
import { type MadeTask, makeTasks } from "./make-tasks.ts";
import { minutesUntil } from "./minutes-until.ts";
import { Names } from "./names.ts";
import type { PieceFacts, ShopFacts } from "./plan-shop.ts";
import type { PlanPiece, Problem, Task } from "./problem.ts";
import { usualPrices } from "./score.ts";
import type { PieceToPlan } from "./task-of-step.ts";

/** A shop as a problem, with what its numbers stand for. */
export interface ShopProblem {
  readonly problem: Problem;
  /** By piece number. */
  readonly pieces: readonly MadePiece[];
}

interface MadePiece {
  /** Null: a new piece, not tagged yet. */
  readonly tag: Tag | null;
  readonly process: string;
  readonly tasks: readonly MadeTask[];
}

/** A piece that is not tagged yet and is planned as if it were. */
export interface AddedPiece {
  readonly definition: ProcessDefinition;
  readonly due: Instant | null;
  /** Not begun before this minute from now. */
  readonly release: Minutes;
  /** Begun only while fewer are out than the aim says; else as soon as it suits. */
  readonly underLimit: boolean;
}

/**
 * Turns the facts of a shop into a planning problem. Moments become whole minutes from now, rounded so that nothing is
 * begun too early nor in a window that has shut; what was done before now stays as far as later work counts from it.
 * Pieces stand in the order of their tags, then the new one, then those added.
 *
 * @param withNew plan a new piece, too, of the process a new one would be of
 */
export function makeProblem(
  facts: ShopFacts,
  withNew: boolean,
  added: readonly AddedPiece[] = [],
): ShopProblem {
  const { now, newPiece } = facts.context;
  const names = new Names(facts);
  const routes = new Routes();
  const tasks: Task[] = [];
  const made: MadePiece[] = [];
  const pieces: PlanPiece[] = [];
  const add = (toPlan: PieceToPlan, piece: PlanPiece): void => {
    const known = routes.of(toPlan.definition, toPlan.route);
    const making = {
      piece: toPlan,
      number: pieces.length,
      facts,
      names,
      made: known,
      tasks,
      last: new Map(),
    };
    pieces.push(piece);
    made.push({ tag: toPlan.tag, process: toPlan.definition.name, tasks: makeTasks(making) });
  };
  for (const piece of facts.pieces) add(toPlan(piece), planPiece(piece, facts, names));
  if (withNew && newPiece !== null) add(newToPlan(newPiece.definition), { ...plainPiece, underLimit: true });
  for (const { definition, due, release, underLimit } of added) {
    add(newToPlan(definition), {
      ...plainPiece,
      release,
      underLimit,
      due: due === null ? null : minutesUntil(now, due),
    });
  }
  for (const { place, until } of facts.endedHooks)
    pieces.push({ ...plainPiece, hook: hookAt(place, until, facts, names) });
  return {
    problem: {
      origin: now,
      horizon: facts.horizon,
      sessions: facts.sessions.map(({ opens, closes }) => ({
        opens: minutesUntil(now, opens),
        closes: Math.floor((closes - now) / MINUTE),
      })),
      hands: Math.max(1, facts.hands),
      stations: names.stations(),
      setUps: names.setUps,
      places: names.places,
      apart: names.apart,
      air: names.air(),
      looks: facts.pieces.flatMap(({ looks }) => looks.map((look) => minutesUntil(now, look))),
      mostOut: facts.aim?.out ?? null,
      prices: usualPrices,
      pieces,
      tasks,
    },
    pieces: made,
  };
}

const plainPiece: PlanPiece = {
  release: 0,
  due: null,
  weight: 1,
  cure: 0,
  begun: false,
  underLimit: false,
  hook: null,
};

function planPiece({ piece, hookUntil }: PieceFacts, facts: ShopFacts, names: Names): PlanPiece {
  const { now, zone } = facts.context;
  const { weight, due, place } = piece;
  const dueAt = due === null ? null : minutesUntil(now, instantOf(zone, due, 24 * 60));
  return {
    ...plainPiece,
    weight,
    // "This one first" without a date counts as due now: every minute of it is dear.
    due: dueAt ?? (weight > 1 ? 0 : null),
    begun: piece.begunAt !== null,
    hook: place === null || hookUntil === null ? null : hookAt(place, hookUntil, facts, names),
  };
}

/** A hook that only a touch can free counts as taken throughout. */
function hookAt(
  name: string,
  until: number,
  { context, horizon }: ShopFacts,
  names: Names,
): PlanPiece["hook"] {
  const place = names.place(name);
  return place === null ? null : { place, until: Math.min(horizon, minutesUntil(context.now, until)) };
}

function toPlan({ piece, steps }: PieceFacts): PieceToPlan {
  const { tag, definition, route, coats } = piece;
  return {
    tag,
    definition,
    route,
    coats,
    steps: steps.map((facts) => ({ step: facts.step, passes: facts.passes, facts })),
  };
}

function newToPlan(definition: PieceToPlan["definition"]): PieceToPlan {
  const route = stepsInOrder(definition.steps);
  const passes = [{ colour: null, minutes: null, flashOff: null }];
  return {
    tag: null,
    definition,
    route,
    coats: definition.coats,
    steps: route.map((step) => ({ step, passes, facts: null })),
  };
}
