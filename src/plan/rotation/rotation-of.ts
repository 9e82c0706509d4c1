import type { ProcessDefinition } from "../../process/definition.ts";
import type { WeeklyHours } from "../../time/bench-hours.ts";
import type { Minutes } from "../../time/instant.ts";
import { at } from "../at.ts";
import type { ShopProblem } from "../make-problem.ts";
import type { NowContext, readShop } from "../plan-shop.ts";
import type { Problem } from "../problem.ts";
import { type BenchRound, benchRound } from "./bench-round.ts";
import { preparedTasks } from "./circle-of-problem.ts";
import { findChanges } from "./find-changes.ts";
import { noRotation } from "./no-rotation.ts";
import { PaceSolver } from "./pace-solver.ts";
import { fitPace, paceTable, quickest, tryPaces } from "./pace-table.ts";
import type { Impossible, Minder, NoRotation, Pace, RotationAnswer, Timetable } from "./rotation-answer.ts";
import { rotationProblem } from "./rotation-problem.ts";
import { typicalFacts } from "./typical-day.ts";
import { unfitHours } from "./unfit-hours.ts";

/** Pieces out that one bench has an eye on: common practice, no source. */
const USUAL_OUT = 6;

type Shop = Parameters<typeof readShop>[0];

export interface RotationAsk extends Minder {
  readonly definition: ProcessDefinition;
  /** The bench hours of a week, Monday first. */
  readonly weekly: WeeklyHours;
  /** Null: the quickest with so many out, or what is usual. */
  readonly pace: Pace | null;
  readonly out: number | null;
}

/**
 * The rotation of a process: for one piece a period proven least in span and so in pieces out, for several with its gap;
 * the quickest pace for each number out; what limits it, and what one change would give.
 */
export function rotationOf(shop: Shop, context: NowContext, ask: RotationAsk): RotationAnswer | NoRotation {
  const { definition, isOver } = ask;
  const round = benchRound(ask.weekly);
  if (round === null) return { because: "never open" };
  const facts = typicalFacts(shop, context, round.begins);
  const made = rotationProblem(facts, definition, 1);
  const none = noRotation({ facts, definition, made, round });
  if (none !== null) return none;
  const solver = new PaceSolver(facts, definition, round, ask);
  const asked = ask.pace === null ? null : fitPace(ask.pace, round);
  const tried = tryPaces(solver, round, isOver);
  const { rows: first, cut } = paceTable(solver, tried);
  const usual = ask.out === null ? usualPace(first, facts.aim, round) : quickest(first, ask.out, round);
  const pace = asked ?? (ask.out === null ? usual : quickerWith(solver, usual, ask.out));
  const timetable = solver.solve(pace, "whole");
  // Looking harder for one pace may have bettered others.
  const { rows } = paceTable(solver, withPace(tried, pace));
  const isTooMany = ask.out !== null && timetable.is === "timetable" && timetable.out > ask.out;
  return {
    process: definition.name,
    round,
    hands: made.problem.hands,
    work: workOf(made.problem),
    pace,
    table: rows,
    tableCut: cut,
    timetable,
    changes: isTooMany ? [] : findChanges(solver, pace, timetable),
    unfitAir: unfitHours(made, round),
    withoutPreparation: stepsUnprepared(made, timetable),
  };
}

/** Paces that rise, with one more among them. */
function withPace(tried: readonly Pace[], pace: Pace): readonly Pace[] {
  const more = tried.filter(({ pieces, days }) => pieces * pace.days > pace.pieces * days);
  const fewer = tried.filter(({ pieces, days }) => pieces * pace.days < pace.pieces * days);
  return [...fewer, pace, ...more];
}

/** Whole pieces more a week, as long as they can be had with no more out than said by looking harder. */
function quickerWith(solver: PaceSolver, pace: Pace, out: number): Pace {
  const more = { ...pace, pieces: pace.pieces + 1 };
  const isWeek = solver.round.every === "week" && pace.days === 7;
  const found = isWeek ? solver.solve(more, "whole") : null;
  return found?.is === "timetable" && found.out <= out ? quickerWith(solver, more, out) : pace;
}

/**
 * What the maker aims at; else one a day where days are alike and it can be; else the quickest with as many out as are
 * aimed at, or as are usual.
 */
function usualPace(
  rows: RotationAnswer["table"],
  aim: { readonly finishedPerWeek: number | null; readonly out: number | null } | null,
  round: BenchRound,
): Pace {
  if (aim?.finishedPerWeek) return fitPace({ pieces: aim.finishedPerWeek, days: 7 }, round);
  const daily = round.every === "day" ? rows.find(({ pace }) => pace.pieces === pace.days) : undefined;
  return daily?.pace ?? quickest(rows, aim?.out ?? USUAL_OUT, round);
}

function workOf({ tasks, setUps }: Problem): RotationAnswer["work"] {
  const sum = (all: readonly Minutes[]): Minutes => all.reduce((one, other) => one + other, 0);
  return {
    handsOn: sum(tasks.map(({ minutes }) => minutes)),
    looks: sum(tasks.map(({ looks }) => looks.length)),
    setUp: sum(tasks.map(({ setUp }) => (setUp === null ? 0 : at(setUps, setUp).minutes))),
  };
}

/** Steps that a later window would ask preparation for, and that the timetable never prepares. */
function stepsUnprepared(
  { problem, pieces }: ShopProblem,
  timetable: Timetable | Impossible,
): readonly string[] {
  const rows = timetable.is === "timetable" ? timetable.days.flatMap((day) => day.rows) : [];
  const prepared = rows.filter(({ part }) => part === "preparation").map(({ step }) => step);
  const could = preparedTasks(problem).map(
    (task) => at(pieces, 0).tasks.find((made) => made.task === task)?.step ?? "",
  );
  return [...new Set(could)].filter((step) => !prepared.includes(step));
}
