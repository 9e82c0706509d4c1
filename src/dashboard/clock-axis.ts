import type { Session } from "../time/bench-hours.ts";
import { instantOf, localTime } from "../time/civil.ts";
import type { Instant, Minutes } from "../time/instant.ts";
import { MINUTE } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";
import { sayWeekday } from "../words/say-time.ts";

/** The span of time the shared clock shows: cell 0 begins at `from`, each cell is `minutesPerCell` long. */
export interface Axis {
  readonly from: Instant;
  readonly minutesPerCell: Minutes;
  readonly cells: number;
}

/** Minutes a cell may stand for, so that hours fall on cells. */
const SCALES = [5, 10, 15, 20, 30, 60] as const;
/** How far ahead should be seen: tonight, the night and tomorrow's bench hours. */
const AHEAD = 30 * 60;

/** The finest scale on which `cells` reach a day and a night ahead, with now a tenth of the way in. */
export function axisFor(now: Instant, cells: number): Axis {
  const scale = SCALES.find((minutes) => minutes * cells * 0.9 >= AHEAD) ?? 60;
  const cell = scale * MINUTE;
  return {
    from: Math.floor(now / cell) * cell - Math.floor(cells / 10) * cell,
    minutesPerCell: scale,
    cells,
  };
}

/** The cell a moment falls in; below 0 or past the end where it is out of sight. */
export function cellOf(axis: Axis, at: Instant): number {
  return Math.floor((at - axis.from) / (axis.minutesPerCell * MINUTE));
}

/** Hours of the day over their cells, the weekday at midnight: `18  20  22  Wed  2`. */
export function hourMarks(axis: Axis, zone: Zone): string {
  const cells = Array<string>(axis.cells).fill(" ");
  const every = axis.minutesPerCell * 5 <= 60 ? 60 : axis.minutesPerCell * 5 <= 120 ? 120 : 240;
  const end = axis.from + axis.cells * axis.minutesPerCell * MINUTE;
  let { date } = localTime(zone, axis.from);
  for (let free = 0; ; ) {
    for (let minute = 0; minute < 1440; minute += every) {
      const at = instantOf(zone, date, minute);
      if (at >= end) return cells.join("");
      const label = minute === 0 ? sayWeekday(localTime(zone, at).weekday) : String(minute / 60);
      const cell = cellOf(axis, at);
      if (at < axis.from || cell < free || cell + label.length > axis.cells) continue;
      [...label].forEach((char, index) => {
        cells[cell + index] = char;
      });
      free = cell + label.length + 1;
    }
    const tomorrow = instantOf(zone, date, 1440 + 120);
    date = localTime(zone, tomorrow).date;
  }
}

/** Bench hours as `'` over their cells, and now as `|`. */
export function benchMarks(axis: Axis, sessions: readonly Session[], now: Instant): string {
  const cells = Array<string>(axis.cells).fill(" ");
  for (const { opens, closes } of sessions) {
    const last = Math.min(cellOf(axis, closes - 1), axis.cells - 1);
    for (let cell = Math.max(cellOf(axis, opens), 0); cell <= last; cell++) cells[cell] = "'";
  }
  const at = cellOf(axis, now);
  if (at >= 0 && at < axis.cells) cells[at] = "|";
  return cells.join("");
}
