import type { Chance } from "../chance.ts";
import { type BenchPiece, type BenchTask, DECIDED } from "./bench.ts";
import { Drawing } from "./drawing.ts";
import { rankBy, varyRule } from "./first-orders.ts";
import { FitPieces } from "./fit-pieces.ts";
import type { Player } from "./play-order.ts";
import type { RuleSearch } from "./rule-search.ts";
import { ANY_NUMBER } from "./style.ts";

/** A way to change the order that stands. */
export interface Move {
  readonly name: string;
  /** Plays a changed order. @returns what it costs; Infinity: more than the ceiling, or there was nothing to change */
  play(ceiling: number): number;
}

/**
 * All ways to change the order that stands, in a fixed sequence.
 *
 * @param rules the dispatching rules tried so far
 */
export function makeMoves(player: Player, chance: Chance, rules: RuleSearch): Move[] {
  const drawing = new Drawing(player, chance, rules);
  const fit = new FitPieces(drawing);
  return [
    { name: "shift", play: (ceiling) => shiftTask(drawing, ceiling) },
    { name: "window", play: (ceiling) => takeOutWindow(drawing, ceiling) },
    { name: "pieces", play: (ceiling) => takeOutPieces(drawing, ceiling) },
    { name: "exchange", play: (ceiling) => exchangePieces(drawing, ceiling) },
    { name: "lead", play: (ceiling) => letPiecesLead(drawing, ceiling) },
    { name: "cut", play: (ceiling) => cutTime(drawing, ceiling) },
    { name: "decide", play: (ceiling) => decideTask(drawing, ceiling) },
    { name: "fit", play: (ceiling) => fit.play(ceiling) },
  ];
}

/** Moves one task to another place, as far as what it waits for and what waits for it let it go. */
function shiftTask({ player, chance }: Drawing, ceiling: number): number {
  const { order } = player;
  const from = Math.floor(chance() * order.length);
  const task = order[from] as BenchTask;
  const far = Math.exp(3.5 * chance());
  let to = from + Math.round((2 * chance() - 1) * far);
  for (const { on } of task.waits) if (on.position >= 0) to = Math.max(to, on.position + 1);
  for (const { task: next } of task.awaited) if (next.position >= 0) to = Math.min(to, next.position - 1);
  to = Math.min(order.length - 1, Math.max(0, to));
  if (to === from) return Number.POSITIVE_INFINITY;
  const trial = [...order];
  trial.splice(from, 1);
  trial.splice(to, 0, task);
  return player.try(trial, Math.min(from, to), Math.max(from, to) + 1, ceiling);
}

/** Takes out all work in a stretch of the order, and puts it in again in nearly the same order. */
function takeOutWindow(drawing: Drawing, ceiling: number): number {
  const { player, recreate, chance } = drawing;
  const { order } = player;
  const most = Math.min(order.length, 100);
  const width = Math.min(
    order.length,
    Math.floor(4 * Math.exp(chance() * Math.log(Math.max(1, most / 4)))) + 2,
  );
  const from = drawing.below(order.length - width + 1);
  const outs = order.slice(from, from + width);
  const far = 20 * Math.exp(4 * chance());
  drawing.rankByStart();
  for (const { index } of outs) recreate.rank[index] = (recreate.rank[index] as number) + drawing.around(far);
  return recreate.play(outs, Number.POSITIVE_INFINITY, ceiling, drawing.style({ gapsOnly: chance() < 0.3 }));
}

/** Takes out a few pieces, whole or from some task on, and puts them in again sooner or later than they stood. */
function takeOutPieces(drawing: Drawing, ceiling: number): number {
  const { recreate, chance } = drawing;
  drawing.rankByStart();
  const outs: BenchTask[] = [];
  let release = Number.POSITIVE_INFINITY;
  for (let count = 1 + drawing.below(4); count > 0; count--) {
    const piece = chance() < 0.4 ? drawing.latePiece() : drawing.piece();
    const late = drawing.finish(piece) - piece.due;
    const since = chance() < 0.5 ? 0 : (piece.tasks[drawing.below(piece.tasks.length)]?.start ?? 0);
    const first = Math.max(since, piece.tasks[0]?.start ?? 0);
    const hurry = late > 0 && chance() < 0.7 ? late * (0.2 + 1.3 * chance()) : 0;
    const isShift = hurry === 0 || chance() < 0.5;
    const sooner = hurry > 0 ? -hurry : 3000 * chance() * (chance() - 0.6);
    const span = Math.max(1, drawing.finish(piece) - first);
    if (since === 0) release = Math.min(release, Math.max(piece.release, isShift ? first + sooner : first));
    for (const task of piece.tasks) {
      if (task.running || task.start < since) continue;
      outs.push(task);
      recreate.rank[task.index] = task.start + (isShift ? sooner : (sooner * (task.start - first)) / span);
    }
  }
  const from = chance() < 0.5 ? Number.POSITIVE_INFINITY : release;
  return recreate.play(outs, from, ceiling, drawing.style({ gapsOnly: chance() < 0.3 }));
}

/** Takes out two pieces and puts each in where the other stood, late ones likelier. */
function exchangePieces(drawing: Drawing, ceiling: number): number {
  const { recreate, chance } = drawing;
  drawing.rankByStart();
  const one = chance() < 0.5 ? drawing.latePiece() : drawing.piece();
  const other = drawing.piece();
  if (one === other) return Number.POSITIVE_INFINITY;
  const outs: BenchTask[] = [];
  for (const [piece, place] of [
    [one, other],
    [other, one],
  ] as const) {
    const last = place.tasks.length - 1;
    for (const [number, task] of piece.tasks.entries()) {
      if (task.running) continue;
      const alike = place.tasks[Math.round((number * last) / Math.max(1, piece.tasks.length - 1))] ?? task;
      recreate.rank[task.index] = alike.start;
      outs.push(task);
    }
  }
  return recreate.play(outs, Number.POSITIVE_INFINITY, ceiling, drawing.style({}));
}

/** Lets a few pieces go first from some moment on; all other work fits in around them. */
function letPiecesLead(drawing: Drawing, ceiling: number): number {
  const { player, recreate, chance } = drawing;
  const { order } = player;
  const from = chance() < 0.3 ? 0 : drawing.below(order.length);
  const leads = new Set<BenchPiece>();
  for (let count = 1 + drawing.below(4, 2); count > 0; count--) {
    leads.add(chance() < 0.5 ? drawing.latePiece() : drawing.piece());
  }
  const outs = order.slice(from).filter(({ piece }) => !leads.has(piece));
  if (outs.length === 0) return Number.POSITIVE_INFINITY;
  const far = 3000 * chance() * chance();
  const byStart = chance() < 0.5;
  for (const piece of drawing.pieces) {
    const key = (byStart ? 0 : drawing.finish(piece)) + drawing.around(far);
    for (const task of piece.tasks) recreate.rank[task.index] = key + (byStart ? task.start : 0);
  }
  const mostInWork = chance() < 0.6 ? ANY_NUMBER : drawing.drawInWork();
  return recreate.play(
    outs,
    Number.POSITIVE_INFINITY,
    ceiling,
    drawing.style({ gapsOnly: true, mostInWork }),
  );
}

/**
 * Takes out everything after a moment and dispatches it anew: pieces in about the order in which they were finished
 * (or are due), with a limit on how many are in work.
 */
function cutTime(drawing: Drawing, ceiling: number): number {
  const { player, recreate, chance } = drawing;
  const { order } = player;
  const from = drawing.below(order.length * (chance() < 0.3 ? 0.3 : 1));
  if (chance() < 0.5) return cutByRule(drawing, from, ceiling);
  const targeted = chance() < 0.5;
  const far = targeted ? 200 * chance() : 3000 * chance() * chance();
  const byFinish = chance() < 0.7;
  for (const piece of drawing.pieces) {
    const key = (byFinish ? drawing.finish(piece) : piece.due) + drawing.around(1.5 * far);
    for (const task of piece.tasks) recreate.rank[task.index] = key;
  }
  if (targeted) {
    for (let count = 1 + drawing.below(3, 2); count > 0; count--) {
      const piece = chance() < 0.7 ? drawing.latePiece() : drawing.piece();
      const sooner =
        drawing.finish(piece) > piece.due ? (drawing.finish(piece) - piece.due) * (0.3 + 1.2 * chance()) : 0;
      const shift = sooner > 0 ? -sooner : drawing.around(5000);
      for (const task of piece.tasks)
        recreate.rank[task.index] = (recreate.rank[task.index] as number) + shift;
    }
  }
  const mostInWork = drawing.drawInWork();
  const style = drawing.style({ mostInWork });
  const cost = recreate.play(order.slice(from), Number.POSITIVE_INFINITY, ceiling, style);
  if (cost < player.cost) drawing.inWork = mostInWork;
  return cost;
}

/** The same by the rule that did best, varied a little. */
function cutByRule(
  { player, recreate, chance, bench, rules }: Drawing,
  from: number,
  ceiling: number,
): number {
  const varied = varyRule(rules.best, chance);
  const outs = player.order.slice(from);
  rankBy(varied, bench, recreate, outs);
  const cost = recreate.play(outs, Number.POSITIVE_INFINITY, ceiling, varied.style);
  if (cost < player.cost) rules.best = varied;
  return cost;
}

/**
 * Decides something about a task that the order does not say: that it shares a set-up which has to be kept for it, or
 * has its own, or meets its window without preparation; or takes such a decision back.
 */
function decideTask({ player, chance }: Drawing, ceiling: number): number {
  const { order } = player;
  const task = order[Math.floor(chance() * order.length)] as BenchTask;
  task.decided = task.decided === DECIDED.nothing ? decisionFor(task) : DECIDED.nothing;
  // A cup mixed though another is still good must be worth it.
  const most = task.decided === DECIDED.fresh ? Math.min(ceiling, player.cost - 1) : ceiling;
  const cost = player.try([...order], task.position, task.position + 1, most);
  return cost > most ? Number.POSITIVE_INFINITY : cost;
}

function decisionFor({ begin, setUpMinutes, start, setUp }: BenchTask): number {
  if (begin < start - setUpMinutes) return DECIDED.firm;
  if (setUp === null || setUp.way === "load") return DECIDED.nothing;
  if (setUpMinutes > 0) return DECIDED.shares;
  return setUp.way === "mix" ? DECIDED.fresh : DECIDED.nothing;
}
