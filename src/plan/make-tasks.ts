import type { Preparation } from "../process/coat.ts";
import type { Step } from "../process/step.ts";
import type { Minutes } from "../time/instant.ts";
import { coatsUnder, waitsOfLater, waitsOfOpen } from "./make-waits.ts";
import { minutesUntil } from "./minutes-until.ts";
import { cautionsFor, dryThroughMinutes, type PassFacts, type StepFacts, setUpWords } from "./plan-shop.ts";
import type { Task } from "./problem.ts";
import { coatFor, type Making, type StepToPlan, taskOfStep } from "./task-of-step.ts";

/** A task made of a step of a piece, with what its numbers in the problem stand for. */
export interface MadeTask {
  readonly task: number;
  readonly step: string;
  /** 0 for the pass that comes next; -1 for a coat laid before now, which is only worked again to mend it. */
  readonly pass: number;
  readonly station: string;
  readonly colour: string | null;
  /** The coat it lays; null: none. */
  readonly coat: string | null;
  /** Minutes from its end until that coat is dry-through; null: no coat, or its sheet does not say. */
  readonly dryThrough: Minutes | null;
  /** What must stand ready, in words; null: nothing. */
  readonly setUp: string | null;
  /** What a late window asks for first, `scuff`; null: no window does. */
  readonly preparation: string | null;
  readonly cautions: readonly string[];
  /** What its step wants to be measured and was not yet, or came out too high. */
  readonly measures: readonly string[];
  /** How the step stands; null: of a piece that is not tagged yet. */
  readonly facts: StepFacts | null;
}

const noPass: PassFacts = { colour: null, minutes: null, flashOff: null };

/** Adds the tasks of one piece to the problem: one for each pass still to come of each step not done. */
export function makeTasks(making: Making): MadeTask[] {
  const made: MadeTask[] = [];
  for (const step of making.piece.steps) {
    for (const [index, pass] of passesToWork(step).entries()) {
      const task = taskOfStep(making, step.step, pass);
      const open = index === 0 && step.facts?.wait ? step.facts : null;
      const { anchor, ...begins } =
        open === null ? waitsOfLater(making, step, task.gives) : waitsOfOpen(making, open, task.gives);
      if (anchor !== null) made.push(laidBefore(making, anchor));
      const stands = asItStands(open, task.minutes, making.facts.context.now);
      making.tasks.push({ ...task, ...begins, ...unfitOf(making, step.step), ...stands });
      made.push({ task: making.tasks.length - 1, pass: index, ...inWords(making, step, pass) });
      making.last.set(step.step.name, { task: making.tasks.length - 1, flashOff: pass.flashOff });
    }
  }
  return made;
}

/** When the air is unfit for the coat that a step lays. */
function unfitOf({ piece, facts }: Making, step: StepToPlan["step"]): Pick<Task, "unfit"> {
  const coat = coatFor(piece, step);
  const unfit = coat === null ? [] : facts.unfitFor(coat, step.place);
  return unfit.length === 0 ? {} : { unfit };
}

/** The coat below that a window of the next work counts from: a task that has ended. */
function laidBefore(making: Making, { task, step: name }: { readonly task: number; readonly step: string }) {
  const step = making.piece.route.find((one) => one.name === name);
  if (step === undefined) throw new RangeError(`no step "${name}" in the route`);
  return { task, pass: -1, ...inWords(making, { step, passes: [], facts: null }, noPass) };
}

/** What the numbers of a task stand for. */
function inWords(making: Making, { step, facts }: StepToPlan, { colour }: PassFacts) {
  const words = making.made.words.make(step, `${colour}`, () => wordsOf(making, step, colour));
  return {
    ...words,
    preparation: facts?.wait ? preparationIn(facts.wait.windows) : words.preparation,
    measures: facts?.needsMet ? [] : words.measures,
    facts,
  };
}

function wordsOf(making: Making, step: Step, colour: string | null) {
  const { piece } = making;
  const coat = coatFor(piece, step);
  const under = coatsUnder(making, step).map((laid) => coatFor(piece, laid));
  return {
    step: step.name,
    station: step.station,
    colour,
    coat: coat?.name ?? null,
    dryThrough: coat === null ? null : dryThroughMinutes(coat),
    setUp: step.setUp === null ? null : setUpWords(step.setUp, colour),
    preparation: preparationIn([coat, ...under].flatMap((each) => each?.windows ?? [])),
    cautions: cautionsFor(step, piece, "step"),
    measures: step.needs.map(({ what }) => what),
  };
}

function preparationIn(windows: readonly { readonly first: Preparation | null }[]): string | null {
  return windows.find(({ first }) => first !== null)?.first?.do ?? null;
}

/** The passes in the order they will be worked: the one in hand or half-done first. */
function passesToWork({ passes, facts }: StepToPlan): readonly PassFacts[] {
  const hand = facts?.hand?.hand ?? null;
  if (hand === null) return passes;
  const place = passes.findIndex(({ colour }) => colour === hand.colour);
  const inHand = passes[place] ?? { colour: hand.colour, minutes: null, flashOff: null };
  return [inHand, ...passes.filter((_, index) => index !== place)];
}

/** What is in hand runs on, what was forgotten counts as hung as usual, and what lies half-done has the rest to do. */
function asItStands(facts: StepFacts | null, minutes: Minutes, now: number): Partial<Task> {
  if (facts === null || facts.hand === null) return {};
  const { hand, spent, usual, forgotten } = facts.hand;
  const rest = Math.max(1, Math.ceil(usual - spent));
  if (facts.state.is === "left") return hand.part === "step" ? { minutes: rest } : {};
  if (forgotten === null) return { running: true, minutes: hand.part === "step" ? rest : rest + minutes };
  return hand.part === "step" ? { ended: Math.min(0, minutesUntil(now, forgotten.usual)) } : {};
}
