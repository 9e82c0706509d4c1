import { addDays, daysBetween, instantOf, localTime, weekdayOf } from "../time/civil.ts";
import type { CivilDate, Instant } from "../time/instant.ts";
import { MINUTE } from "../time/instant.ts";
import type { Zone } from "../time/zone.ts";
import { sayWeekday } from "../words/say-time.ts";
import { type Axis, cellOf, type Stretch } from "./clock-axis.ts";

/** Shut hours are told one by one where a cell is no longer than this, in minutes. */
const TOLD_SINGLY = 60;

/**
 * Hours of the day over their cells: `19  20  night Sat 9  10`. Where the bench opens on another day its weekday stands
 * before the hour; a stretch drawn short says what it is.
 */
export function hourMarks(axis: Axis, zone: Zone): string {
  const marks = new Marks(axis);
  const seen = seenOf(axis);
  let date = localTime(zone, axis.starts[0] ?? 0).date;
  for (const stretch of seen) {
    const time = localTime(zone, stretch.from);
    if (!stretch.open) {
      if (lengthOf(stretch) <= TOLD_SINGLY) date = markHours(marks, stretch, 4, zone) ?? date;
    } else if (cellOf(axis, stretch.from) >= 0) {
      markOpening(marks, stretch.from, time.date !== date, zone);
      date = time.date;
    }
  }
  for (const stretch of seen) {
    if (!stretch.open && lengthOf(stretch) > TOLD_SINGLY) marks.putWithin(stretch, sayShut(stretch, zone));
  }
  for (const stretch of seen) if (stretch.open) markHours(marks, stretch, 1, zone);
  return marks.text;
}

/** Bench hours as `'` over their cells, now as `|`, and `:` where hours begin to be drawn shorter, or as long again. */
export function benchMarks(axis: Axis, now: Instant): string {
  const open = seenOf(axis).filter((stretch) => stretch.open);
  const cells = axis.starts
    .slice(0, -1)
    .map((start): string => (open.some(({ from, until }) => from <= start && start < until) ? "'" : " "));
  for (const seam of seamsOf(axis)) if (cells[seam] !== undefined) cells[seam] = ":";
  const at = cellOf(axis, now);
  if (at >= 0 && at < cells.length) cells[at] = "|";
  return cells.join("");
}

/** The stretches that have a moment on the axis: it is made of some days more to either side. */
function seenOf({ starts, stretches }: Axis): readonly Stretch[] {
  const [first = 0] = starts;
  const last = starts.at(-1) ?? 0;
  return stretches.filter(({ from, until }) => until > first && from < last);
}

/** Cells from which on hours are drawn shorter than before, or as long again. */
function seamsOf({ stretches, minutesPerCell, ...axis }: Axis): ReadonlySet<number> {
  const isShort = (stretch: Stretch | undefined) =>
    stretch !== undefined && !stretch.open && lengthOf(stretch) > 1.5 * minutesPerCell;
  return new Set(
    stretches.flatMap((stretch, index) =>
      isShort(stretch) || isShort(stretches[index - 1])
        ? [cellOf({ stretches, minutesPerCell, ...axis }, stretch.from)]
        : [],
    ),
  );
}

/** Minutes of one of its cells. */
function lengthOf({ from, until, cells }: Stretch): number {
  return (until - from) / MINUTE / cells;
}

/** The hour at which the bench opens, after the weekday of a new day where there is room. */
function markOpening(marks: Marks, opens: Instant, newDay: boolean, zone: Zone): void {
  const { hour, minute, weekday } = localTime(zone, opens);
  const clock = minute === 0 ? `${hour}` : `${hour}:${String(minute).padStart(2, "0")}`;
  const day = newDay ? `${sayWeekday(weekday)} ` : "";
  if (!marks.putAt(opens, `${day}${clock}`, day.length)) marks.putAt(opens, clock);
}

/** `night`; with a whole day in it that day, `Sun`; with more of them how many, `6 d`; nothing within one day. */
function sayShut({ from, until }: Stretch, zone: Zone): string {
  const first = localTime(zone, from).date;
  const days = daysBetween(first, localTime(zone, until).date);
  if (days < 2) return days === 1 ? "night" : "";
  return days === 2 ? sayWeekday(weekdayOf(addDays(first, 1))) : `${days - 1} d`;
}

/** Each hour of a stretch that has room, midnight by its weekday. @returns the date of the last midnight told */
function markHours(marks: Marks, { from, until }: Stretch, every: number, zone: Zone): CivilDate | null {
  let told: CivilDate | null = null;
  const last = localTime(zone, until).date;
  for (let { date } = localTime(zone, from); date <= last; date = addDays(date, 1)) {
    for (let hour = 0; hour < 24; hour += every) {
      const at = instantOf(zone, date, hour * 60);
      // The hour of an opening has the first right to the cells before it.
      if (at < from || at >= until || (every > 1 && marks.isNear(at, until))) continue;
      const put = marks.putAt(at, hour === 0 ? sayWeekday(weekdayOf(date)) : String(hour));
      if (put && hour === 0) told = date;
    }
  }
  return told;
}

/** A line of marks over an axis; what would touch another mark is left out. */
class Marks {
  readonly #axis: Axis;
  readonly #cells: string[];

  constructor(axis: Axis) {
    this.#axis = axis;
    this.#cells = Array<string>(Math.max(0, axis.starts.length - 1)).fill(" ");
  }

  get text(): string {
    return this.#cells.join("");
  }

  /** @returns whether there was room */
  #put(cell: number, text: string): boolean {
    const around = this.#cells.slice(Math.max(0, cell - 1), cell + text.length + 1);
    if (cell < 0 || cell + text.length > this.#cells.length || around.some((char) => char !== " "))
      return false;
    [...text].forEach((char, index) => {
      this.#cells[cell + index] = char;
    });
    return true;
  }

  isNear(at: Instant, other: Instant): boolean {
    return cellOf(this.#axis, other) - cellOf(this.#axis, at) < 3;
  }

  /** Over the cell that begins at a moment, some characters before it; one that falls within a cell is left out. */
  putAt(at: Instant, text: string, before = 0): boolean {
    const cell = cellOf(this.#axis, at);
    return cell >= 0 && this.#axis.starts[cell] === at && this.#put(cell - before, text);
  }

  /** Anywhere within a stretch, as near its middle as there is room. */
  putWithin({ from, until }: Stretch, text: string): void {
    const first = Math.max(0, cellOf(this.#axis, from));
    const last = Math.min(this.#cells.length, cellOf(this.#axis, until));
    const middle = Math.floor((first + last - text.length) / 2);
    if (text === "") return;
    for (let away = 0; away <= last - first; away++) {
      for (const cell of [middle - away, middle + away]) {
        if (cell >= first && cell + text.length <= last && this.#put(cell, text)) return;
      }
    }
  }
}
