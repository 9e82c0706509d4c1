import { usualMinutes } from "../learned/usual-minutes.ts";
import { makeProblem } from "../plan/make-problem.ts";
import { readShop } from "../plan/plan-shop.ts";
import type { Problem } from "../plan/problem.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import type { SafetyRules } from "../safety/rules.ts";
import { foldShop } from "../shop/fold.ts";
import type { BenchHours } from "../time/bench-hours.ts";
import { after, type Instant, type Minutes } from "../time/instant.ts";
import { sessionsBetween } from "../time/sessions.ts";
import type { Zone } from "../time/zone.ts";

/** A bench to be played on: when it is open, and the hooks of its places (a place left out is never full). */
export interface Bench {
  readonly from: Instant;
  readonly zone: Zone;
  readonly hours: BenchHours;
  readonly rules: SafetyRules;
  readonly hooks: Readonly<Record<string, number>>;
}

/**
 * An empty shop as a problem with one new piece of a process, made as for the real shop, its sessions as far as
 * `lasts`. More such pieces are added in play.
 */
export function shopFor(definition: ProcessDefinition, bench: Bench, lasts: Minutes): Problem {
  const { from, zone, hours, rules } = bench;
  const facts = readShop(emptyShop(), {
    now: from,
    zone,
    hours,
    rules,
    usualMinutes: (_, step) => usualMinutes(step, []),
    newPiece: { hash: "", definition },
  });
  const sessions = sessionsBetween(hours, zone, from, after(from, lasts));
  const places = new Map(Object.entries(bench.hooks).map(([name, hooks]) => [name, { hooks }]));
  return makeProblem({ ...facts, sessions, places }, true).problem;
}

function emptyShop() {
  return foldShop({
    newest: 0,
    newestRecorded: null,
    nextTag: 1,
    events: [],
    definitions: {},
    setAside: [],
  });
}
