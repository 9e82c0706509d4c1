import { after, type Instant, type Minutes } from "../time/instant.ts";
import { type Candidate, setUpFor } from "./candidates.ts";
import { costOfLeaving, type WithoutIt } from "./cost-of-leaving.ts";
import type { ShopProblem } from "./make-problem.ts";
import type { HeldRow, IfLeft, NowAnswer, WorkRow } from "./now-answer.ts";
import type { Plan } from "./plan.ts";
import type { ShopFacts } from "./plan-shop.ts";
import type { Prepared } from "./prepare-dispatch.ts";
import type { HeldTogether } from "./sort-out.ts";
import { whyFirst } from "./why-first.ts";
import { lookAhead } from "./window-ahead.ts";

/** Everything found out about the shop, for making rows of. */
export interface Found {
  readonly facts: ShopFacts;
  readonly made: ShopProblem;
  readonly prepared: Prepared;
  readonly plan: Plan;
  readonly basis: NowAnswer["basis"];
  /** The maker's aim asks for another piece to be begun. */
  readonly wantsNew: boolean;
}

/**
 * Pieces that can be worked together now, as one row; `below` is the work that stands below it. What leaving it brings is
 * planned for when it is first asked: a screen tells it of one row of many.
 */
export function workRow(
  row: readonly Candidate[],
  below: readonly Candidate[],
  found: Found,
  withoutIt: () => WithoutIt,
): WorkRow {
  const { facts, prepared } = found;
  const first = firstOf(row);
  const setUp = setUpFor(first, row.length, facts);
  const shuts = earliest(row.map(({ state }) => shutOf(state)));
  const lead = setUp?.minutes ?? 0;
  const minutes = sumMinutes(row);
  const { task, coat, part } = first;
  let ifLeft: IfLeft | null = null;
  return {
    ...common(row),
    process: first.process,
    part,
    preparation: first.preparation,
    station: first.step.station,
    colour: first.colour,
    coat: first.coat?.name ?? null,
    setUp,
    opens: Math.max(...row.map(({ state }) => ("since" in state ? state.since : facts.context.now))),
    shuts,
    beginBy: shuts === null ? null : beginBy(first, setUp, shuts, facts),
    why: whyFirst(row, setUp, found, below),
    get ifLeft() {
      ifLeft ??= costOfLeaving(row, lead, facts, withoutIt());
      return ifLeft;
    },
    warning:
      coat === null || task === null || part === "preparation"
        ? null
        : lookAhead(prepared, task, lead + minutes, lead + minutes, coat),
  };
}

/**
 * The last moment at which the hands may turn to work that shuts: the set-up comes before it, and where the one that stands
 * keeps no longer than until then, another.
 *
 * Shuts 20:13, and mixing takes 5 min: begin by 20:08, though a cup stands ready that keeps till 18:30.
 */
function beginBy({ step }: Candidate, setUp: WorkRow["setUp"], shuts: Instant, facts: ShopFacts): Instant {
  const latest = after(shuts, -(setUp?.minutes ?? 0));
  if (setUp === null || step.setUp === null || !setUp.standing) return latest;
  const kept = keepsUntil(facts, step.station, setUp.what);
  return kept >= latest ? latest : Math.max(kept, after(shuts, -step.setUp.takes));
}

/** Until when what stands at a station keeps, once it is ready; Infinity: until another load. */
function keepsUntil({ standing }: ShopFacts, station: string, what: string): Instant {
  const stands = standing.find((one) => one.station === station && one.setUp.what === what);
  if (stands === undefined) return Number.POSITIVE_INFINITY;
  const { ready, keeps } = stands.setUp;
  if (stands.state.is !== "getting ready") return stands.state.until ?? Number.POSITIVE_INFINITY;
  return keeps.way === "load" ? Number.POSITIVE_INFINITY : after(ready, keeps.minutes);
}

/** Pieces held by the same thing until the same moment. */
export function heldRow({ candidates, because, also, until }: HeldTogether, facts: ShopFacts): HeldRow {
  const first = firstOf(candidates);
  const setUp = setUpFor(first, candidates.length, facts);
  return {
    ...common(candidates),
    setUp,
    because,
    ...(also === undefined || also.length === 0 ? {} : { also }),
    ...(first.preparation === null ? {} : { preparation: first.preparation }),
    until,
  };
}

function common(row: readonly Candidate[]) {
  const first = firstOf(row);
  return {
    tags: row.flatMap(({ tag }) => (tag === null ? [] : [tag])),
    name: row.length === 1 ? first.name : null,
    step: first.step.name,
    minutes: sumMinutes(row),
  };
}

function firstOf(row: readonly Candidate[]): Candidate {
  const [first] = row;
  if (first === undefined) throw new Error("a row without work");
  return first;
}

function sumMinutes(row: readonly Candidate[]): Minutes {
  return row.reduce((sum, { minutes }) => sum + minutes, 0);
}

function shutOf(state: Candidate["state"]): Instant | null {
  return state.is === "open" || state.is === "shut" ? state.shuts : null;
}

function earliest(moments: readonly (Instant | null)[]): Instant | null {
  const first = Math.min(...moments.map((moment) => moment ?? Number.POSITIVE_INFINITY));
  return first === Number.POSITIVE_INFINITY ? null : first;
}
