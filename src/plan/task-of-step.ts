import type { Tag } from "../journal/event.ts";
import type { Coat, Emission, HandsOn } from "../process/coat.ts";
import type { ProcessDefinition } from "../process/definition.ts";
import type { Step } from "../process/step.ts";
import type { Minutes } from "../time/instant.ts";
import { lagsIn } from "./air-lags.ts";
import type { MadeOfRoute } from "./made-of-route.ts";
import type { Names } from "./names.ts";
import {
  type PassFacts,
  type ShopFacts,
  type StepFacts,
  wetCoat,
  wetMinutes,
  windowsUpon,
} from "./plan-shop.ts";
import type { Gives, Task } from "./problem.ts";

/** A piece on its way into a problem: tagged, or (tag null) one that may be. */
export interface PieceToPlan {
  readonly tag: Tag | null;
  readonly definition: ProcessDefinition;
  readonly route: readonly Step[];
  readonly coats: Readonly<Record<string, Coat>>;
  /** Steps not done, in working order. */
  readonly steps: readonly StepToPlan[];
}

export interface StepToPlan {
  readonly step: Step;
  /** Those still to come. */
  readonly passes: readonly PassFacts[];
  /** How it stands; null: of a piece that is not tagged yet. */
  readonly facts: StepFacts | null;
}

/** What making the tasks of one piece needs and fills. */
export interface Making {
  readonly piece: PieceToPlan;
  /** The piece's number in the problem. */
  readonly number: number;
  readonly facts: ShopFacts;
  readonly names: Names;
  /** What was made for pieces of the same route before. */
  readonly made: MadeOfRoute;
  readonly tasks: Task[];
  /** By step: the task of its newest pass so far. */
  readonly last: Map<string, { readonly task: number; readonly flashOff: Minutes | null }>;
}

/** Whole minutes that work is reckoned with: at least one. */
export function usualOf({ likely }: HandsOn): Minutes {
  return Math.max(1, Math.ceil(likely));
}

/** The coat a step lays; null: none. */
export function coatFor({ coats }: Pick<PieceToPlan, "coats">, { coat }: Pick<Step, "coat">): Coat | null {
  return coat !== null && Object.hasOwn(coats, coat) ? (coats[coat] ?? null) : null;
}

/** Minutes of one pass of a step: as the scheme says, else as usual. */
function minutesOf(making: Pick<Making, "piece" | "facts">, step: Step, pass: PassFacts): Minutes {
  const { definition } = making.piece;
  return Math.max(1, Math.ceil(pass.minutes ?? making.facts.context.usualMinutes(definition.name, step)));
}

/** One pass of a step as a task that nothing is known of yet. */
export function taskOfStep(making: Making, step: Step, pass: PassFacts): Task {
  const { number, made } = making;
  const word = `${pass.colour}\n${pass.minutes}\n${pass.flashOff}`;
  return { ...made.tasks.make(step, word, () => makeTask(making, step, pass)), piece: number };
}

function makeTask(making: Making, step: Step, pass: PassFacts): Task {
  const { piece, number, names } = making;
  const coat = coatFor(piece, step);
  return {
    piece: number,
    minutes: minutesOf(making, step, pass),
    station: names.station(step.station),
    setUp: names.setUp(step, pass.colour, coat),
    release: 0,
    waits: [],
    mayStop: step.mayStop,
    hook: hookOf(making, step, coat, pass),
    gives: givenOff(making, step, coat, pass),
    looks: step.look,
    running: false,
    ended: null,
  };
}

/** The hook it takes: until the time or the stage its step names, else until dry-hard, else for the step's wait. */
function hookOf({ names, facts }: Making, step: Step, coat: Coat | null, pass: PassFacts): Task["hook"] {
  const place = step.place === null ? null : names.place(step.place);
  if (place === null) return null;
  if (step.until !== null && "minutes" in step.until) return { place, until: step.until.minutes };
  if (coat === null) return { place, until: step.wait };
  const stage = step.until?.stage ?? "dry-hard";
  const [fit] = windowsUpon(coat, { coat: null, waitsFor: stage }, pass.flashOff);
  return { place, until: lagsIn(facts, coat, step.place).opens(fit?.opens ?? 0, 0) };
}

function givenOff(making: Making, step: Step, coat: Coat | null, pass: PassFacts): readonly Gives[] {
  const wet = { what: wetCoat, lasts: coat === null ? 0 : Math.ceil(wetMinutes(coat, pass.flashOff)) };
  const given = [...step.givesOff, ...(coat?.givesOff ?? []), ...(coat === null ? [] : [wet])];
  return emissions(making, given, step.station, step.place ?? step.station);
}

/**
 * What work gives off: in the room of its station, and from its end on where the piece hangs, too. A wet coat is only where
 * the piece is. What lasts while a set-up stands is the set-up's.
 */
export function emissions(
  { names, facts }: Pick<Making, "names" | "facts">,
  given: readonly Emission[],
  station: string,
  place: string,
): Gives[] {
  return given.flatMap(({ what, lasts }) => {
    if (lasts === "while set up") return [];
    const [here, there] = [names.emission(what, station), names.emission(what, place)];
    if (here === null || there === null) return [];
    const stays = { what: there, lasts: facts.rooms.lasts(place, what, lasts), fromSetUp: false };
    if (here === there) return [stays];
    const left = what === wetCoat ? 0 : facts.rooms.lasts(station, what, lasts);
    return [{ what: here, lasts: left, fromSetUp: false }, stays];
  });
}
