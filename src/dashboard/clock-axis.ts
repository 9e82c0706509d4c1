import type { Session } from "../time/bench-hours.ts";
import type { Instant, Minutes } from "../time/instant.ts";
import { MINUTE } from "../time/instant.ts";

/** A run of cells that are alike: the bench open, or shut. */
export interface Stretch {
  readonly from: Instant;
  readonly until: Instant;
  readonly open: boolean;
  /** Cells it is drawn in; those beyond the axis are not seen. */
  readonly cells: number;
}

/** The span of time the shared clock shows. Hours in which the bench is shut take fewer cells: little is done in them. */
export interface Axis {
  /** When each cell begins, and at the end when the last one ends. */
  readonly starts: readonly Instant[];
  /** In order, the first and last perhaps seen in part. */
  readonly stretches: readonly Stretch[];
  readonly minutesPerCell: Minutes;
}

/** Minutes an open cell may stand for, so that hours fall on cells. */
const SCALES = [5, 10, 15, 20, 30, 60] as const;
/** Cells of a night or of days the bench is shut. */
const NIGHT = 10;
/** Minutes a cell of a shut bench stands for where its hours are drawn whole: around now, and after all sessions. */
const SHUT_CELL: Minutes = 60;

/**
 * The finest scale on which `cells` reach the end of the next bench session, or of the one after that which runs now.
 * Now stands a tenth of the way in.
 */
export function axisFor(now: Instant, cells: number, sessions: readonly Session[]): Axis {
  const past = Math.floor(cells / 10);
  const ahead = sessions.filter(({ closes }) => closes > now);
  const running = ahead[0] !== undefined && ahead[0].opens <= now;
  const goal = ahead[running ? 1 : 0]?.closes ?? now;
  const undrawn = stretchesOf(now, sessions, cells);
  let axis: Axis = { starts: [now], stretches: [], minutesPerCell: 60 };
  for (const scale of SCALES) {
    axis = makeAxis(now, cells, past, undrawn, scale);
    if ((axis.starts.at(-1) ?? now) >= goal) break;
  }
  return axis;
}

/** The cell a moment falls in; -1 before the first, the number of cells past the last. */
export function cellOf({ starts }: Axis, at: Instant): number {
  let [low, high] = [0, starts.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((starts[middle] ?? 0) <= at) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

function makeAxis(
  now: Instant,
  cells: number,
  past: number,
  undrawn: readonly Undrawn[],
  scale: Minutes,
): Axis {
  const stretches = undrawn.map((one) => ({ ...one, cells: cellsOf(one, scale) }));
  const starts: Instant[] = [];
  for (const { from, until, open, cells: count } of stretches) {
    const length = open ? scale * MINUTE : (until - from) / count;
    for (let cell = 0; cell < count; cell++)
      starts.push(from + Math.round((cell * length) / MINUTE) * MINUTE);
  }
  const first = Math.max(0, starts.findLastIndex((start) => start <= now) - past);
  return { starts: starts.slice(first, first + cells + 1), stretches, minutesPerCell: scale };
}

/** A stretch before it is known in how many cells it is drawn. `whole`: no hour of it is drawn shorter than others. */
type Undrawn = Omit<Stretch, "cells"> & { readonly whole: boolean };

/** Open and shut by turns, from before now till long after; a shut stretch around now is whole for as long as is seen. */
function stretchesOf(now: Instant, sessions: readonly Session[], cells: number): Undrawn[] {
  const hour = SHUT_CELL * MINUTE;
  const thisHour = Math.floor(now / hour) * hour;
  const seen = Math.floor(cells / 2) * hour;
  // What is left over is worth drawing shorter only if it is long.
  const least = NIGHT * hour;
  const found: Undrawn[] = [];
  let from = Math.min(sessions[0]?.opens ?? now, thisHour) - 24 * hour;
  const shut = (until: Instant) => {
    const around = from <= now && now < until;
    const cuts = [thisHour - seen, thisHour + seen].filter(
      (cut) => cut - from > least && until - cut > least,
    );
    for (const cut of around ? [...cuts, until] : [until]) {
      if (cut > from)
        found.push({ from, until: cut, open: false, whole: around && from <= now && now < cut });
      from = Math.max(from, cut);
    }
  };
  for (const { opens, closes } of sessions) {
    shut(opens);
    found.push({ from: opens, until: closes, open: true, whole: true });
    from = closes;
  }
  const end = Math.max(from, now) + (cells + 1) * hour;
  return [...found, { from, until: end, open: false, whole: true }];
}

function cellsOf({ from, until, open, whole }: Undrawn, scale: Minutes): number {
  const minutes = (until - from) / MINUTE;
  const plain = Math.ceil(minutes / (open ? scale : Math.max(scale, whole ? SHUT_CELL : 0)));
  return whole ? plain : Math.min(NIGHT, plain);
}
