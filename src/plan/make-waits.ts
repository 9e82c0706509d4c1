import type { Preparation } from "../process/coat.ts";
import { coatsBefore } from "../process/order.ts";
import type { Step } from "../process/step.ts";
import { MINUTE, type Minutes } from "../time/instant.ts";
import { asSaid, type LagsOfCoat, lagsIn, lastBefore } from "./air-lags.ts";
import {
  type SheetWindow,
  type StepFacts,
  type Waiting,
  windowsBetweenPasses,
  windowsUpon,
} from "./plan-shop.ts";
import type { Gives, PlanWindow, Preparing, Task, Wait } from "./problem.ts";
import { coatFor, emissions, type Making, type StepToPlan, taskOfStep, usualOf } from "./task-of-step.ts";

/** Hands-on of levelling a coat whose last window was missed, before it is laid again (common practice, no source). */
const LEVELLING: Minutes = 10;

const noPass = { colour: null, minutes: null, flashOff: null };

/** When a task may begin: not before, and in the windows of others. */
interface Begins extends Pick<Task, "release" | "waits"> {
  /** The coat that lies there already, as a task that has ended; null: none is needed to say it. */
  readonly anchor: { readonly task: number; readonly step: string } | null;
}

/**
 * What the next pass of a step waits for whose steps before are done: the windows of the coats that lie there already,
 * which become windows after a task that has ended.
 */
export function waitsOfOpen(
  making: Making,
  { step, state, wait, needsMet }: StepFacts,
  gives: readonly Gives[],
): Begins {
  if (state.is === "in hand" || (state.is === "left" && state.part === "step"))
    return { release: 0, waits: [], anchor: null };
  const byTouch = state.is === "drying" && state.opens === null;
  if (wait === null || byTouch || !needsMet) return { release: null, waits: [], anchor: null };
  return waitsOnDone(making, step, wait, gives);
}

/** What work waits for of coats that lie there already and of waits that run. */
function waitsOnDone(making: Making, step: Step, wait: Waiting, gives: readonly Gives[]): Begins {
  const { now } = making.facts.context;
  const windows = wait.windows.map(({ opens, shuts, first }) => ({
    opens: Math.max(0, Math.ceil((opens - now) / MINUTE)),
    shuts: shuts === null || shuts === Number.POSITIVE_INFINITY ? null : lastBefore((shuts - now) / MINUTE),
    preparation: preparing(making, step.station, first, gives),
  }));
  // The coat below never comes so far in the air it hangs in, as far as can be seen.
  if (windows[0]?.opens === Number.POSITIVE_INFINITY) return { release: null, waits: [], anchor: null };
  const [only] = windows;
  if (only !== undefined && only.shuts === null && only.preparation === null)
    return { release: only.opens, waits: [], anchor: null };
  const anchor = addAnchor(making, step, wait.coats.at(-1));
  const mend = windows.at(-1)?.shuts === null ? null : LEVELLING;
  if (windows.length === 0) {
    // Every window has shut: one that shut as the coat was laid stands for them.
    const none = { opens: 0, shuts: 0, preparation: null };
    return { release: 0, waits: [{ on: anchor.task, windows: [none], mend: LEVELLING }], anchor };
  }
  return {
    release: 0,
    waits: [{ on: anchor.task, windows: windows.map((window) => from(anchor.ended, window)), mend }],
    anchor,
  };
}

/** A window said in minutes from now as one from the end of a task: problems know no other kind. */
function from(
  ended: Minutes,
  window: { opens: Minutes; shuts: Minutes | null; preparation: Preparing | null },
): PlanWindow {
  const { opens, shuts, preparation } = window;
  return { opens: opens - ended, shuts: shuts === null ? null : shuts - ended, preparation };
}

/** The coat below as a task that has ended, so that a window after it can be missed and the coat mended. */
function addAnchor(
  making: Making,
  step: Step,
  under: { readonly step: string; readonly laidAt: number } | undefined,
) {
  const laid = making.piece.route.find(({ name }) => name === under?.step) ?? step;
  const ago = under === undefined ? 0 : Math.floor((under.laidAt - making.facts.context.now) / MINUTE);
  const ended = Math.min(0, ago);
  making.tasks.push({ ...taskOfStep(making, laid, noPass), ended });
  return { task: making.tasks.length - 1, step: laid.name, ended };
}

/** The coats below a step that its windows and stages speak of. */
export function coatsUnder({ piece, made }: Making, step: Step): readonly Step[] {
  return made.under.make(step, "", () => coatsBefore(piece.route, step.name));
}

/** What a pass waits for whose steps before, or whose pass before, are tasks themselves; some of them may be done. */
export function waitsOfLater(
  making: Making,
  { step, facts }: Pick<StepToPlan, "step" | "facts">,
  gives: readonly Gives[],
): Begins {
  const { piece, last } = making;
  const before = last.get(step.name);
  /** What it waits for from the end of a task of a step; the same for every piece of the route. */
  const waitOn = (
    { task, flashOff }: { task: number; flashOff: Minutes | null },
    name: string,
    lasting: () => Lasting,
  ): Wait => {
    const { windows, mend } = making.made.windows.make(gives, `${name}\n${flashOff}`, () =>
      windowsOf(making, step, lasting(), gives),
    );
    return { on: task, windows, mend };
  };
  if (before !== undefined) {
    const wait = waitOn(before, step.name, () => {
      const coat = coatFor(piece, step);
      const windows = coat === null ? [plain(0)] : windowsBetweenPasses(coat, before.flashOff);
      return { windows, least: 0, lags: lagsIn(making.facts, coat, step.place) };
    });
    return { release: 0, waits: [wait], anchor: null };
  }
  const coats = coatsUnder(making, step);
  const waits: Wait[] = [];
  for (const name of step.after) {
    const done = last.get(name);
    if (done === undefined || coats.some((one) => one.name === name)) continue;
    const least = () => piece.route.find((one) => one.name === name)?.wait ?? 0;
    waits.push(waitOn(done, name, () => ({ windows: [plain(0)], least: least(), lags: asSaid })));
  }
  for (const under of coats) {
    const laid = last.get(under.name);
    const its = coatFor(piece, under);
    if (laid === undefined || its === null) continue;
    const wait = waitOn(laid, under.name, () => ({
      windows: windowsUpon(its, step, laid.flashOff),
      least: step.after.includes(under.name) ? under.wait : 0,
      lags: lagsIn(making.facts, its, under.place),
    }));
    waits.push(wait);
  }
  const areDone = step.after.some((name) => !last.has(name)) || coats.some(({ name }) => !last.has(name));
  if (facts === null || !areDone) return { release: 0, waits, anchor: null };
  const onDone = facts.waitOnDone();
  if (onDone.coats.some(({ notByClock }) => notByClock !== null))
    return { release: null, waits, anchor: null };
  const begins = waitsOnDone(making, step, onDone, gives);
  return { ...begins, waits: [...waits, ...begins.waits] };
}

const plain = (opens: Minutes): SheetWindow => ({ opens, shuts: null, first: null });

/** The windows of a wait by the sheet, the plain wait it lasts at least, and how its minutes pass. */
interface Lasting {
  readonly windows: readonly SheetWindow[];
  readonly least: Minutes;
  readonly lags: LagsOfCoat;
}

function windowsOf(
  making: Making,
  step: Step,
  { windows, least, lags }: Lasting,
  gives: readonly Gives[],
): Pick<Wait, "windows" | "mend"> {
  const open = windows.filter(({ shuts }) => shuts === null || shuts > least);
  const lasting = open.length > 0 ? open : [plain(least)];
  return {
    windows: lasting.map(({ opens, shuts, first }) => ({
      opens: lags.opens(opens, least),
      shuts: shuts === null ? null : lags.shuts(shuts),
      preparation: preparing(making, step.station, first, gives),
    })),
    mend: lasting.at(-1)?.shuts === null ? null : LEVELLING,
  };
}

function preparing(
  making: Making,
  station: string,
  first: Preparation | null,
  gives: readonly Gives[],
): Preparing | null {
  if (first === null) return null;
  const { names } = making;
  const own = emissions(making, first.givesOff, station, station);
  const stays = own.filter(({ what }) => gives.some((other) => names.keepApart(what, other.what)));
  return {
    minutes: usualOf(first.handsOn),
    settles: stays.reduce((most, { lasts }) => Math.max(most, lasts), 0),
    gives: own,
  };
}
