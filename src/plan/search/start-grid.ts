import type { Minutes } from "../../time/instant.ts";
import { openingAfter, shutAfter } from "../lag.ts";
import type { BenchTask, BenchWait } from "./bench.ts";
import { type Calendar, NEVER } from "./calendar.ts";

/** By start of a task: the first and the last start that the task after it may have. */
export interface Followers {
  readonly first: Int32Array;
  readonly last: Int32Array;
}

/** Some of the open minutes, by number: those at which tasks are taken to begin where not every minute is looked at. */
export class StartGrid {
  readonly minutes: readonly Minutes[];
  /** By start: for how long the bench was open before. */
  readonly openBefore: readonly Minutes[];
  /** For how long it is open in all. */
  readonly open: Minutes;
  readonly #closes: readonly Minutes[];
  readonly #every: Minutes;

  /**
   * @param until nothing begins from that minute on
   * @param every minutes from one start to the next
   */
  constructor(calendar: Calendar, until: Minutes, every: Minutes) {
    const minutes: Minutes[] = [];
    const openBefore: Minutes[] = [];
    const closings: Minutes[] = [];
    let open = 0;
    for (let session = 0; calendar.opening(session) < until; session++) {
      const opens = Math.max(0, calendar.opening(session));
      const closes = Math.min(until, calendar.closing(session));
      for (let minute = opens; minute < closes; minute += every) {
        minutes.push(minute);
        openBefore.push(open + minute - opens);
        closings.push(closes);
      }
      open += closes - opens;
    }
    this.minutes = minutes;
    this.openBefore = openBefore;
    this.open = open;
    this.#closes = closings;
    this.#every = every;
  }

  /** The first start from a minute on. */
  from(minute: Minutes): number {
    let low = 0;
    let high = this.minutes.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.minutes[middle] as Minutes) < minute) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** The last start of a window, of which the first is known: that one, too, if it shuts just before it. */
  lastIn(first: number, shut: Minutes): number {
    const last = this.from(shut + 1) - 1;
    const isJustMissed = last < first && (this.minutes[first] ?? NEVER) < shut + this.#every;
    return isJustMissed ? first : last;
  }

  /** By start: when a task ends that begins then; NEVER: it cannot. */
  endsOf({ minutes: need, release, mayStop, unfit }: BenchTask): Int32Array {
    const { minutes, openBefore } = this;
    const ends = new Int32Array(minutes.length).fill(NEVER);
    let span = 0;
    let last = 0;
    for (let start = this.from(release); start < minutes.length; start++) {
      const begin = minutes[start] as Minutes;
      let end = begin + need;
      if (mayStop) {
        const worked = (openBefore[start] as Minutes) + need;
        while (last + 1 < minutes.length && (openBefore[last + 1] as Minutes) < worked) last++;
        end = (minutes[last] as Minutes) + worked - (openBefore[last] as Minutes);
      }
      if (end > (this.#closes[mayStop ? last : start] as Minutes)) continue;
      while (span < unfit.length && (unfit[span]?.[1] as Minutes) <= begin) span++;
      const isFit = span === unfit.length || end <= (unfit[span]?.[0] as Minutes);
      if (isFit) ends[start] = end;
    }
    return ends;
  }

  /**
   * When the next task may begin, by when the one it follows does: from its first window on, whatever preparation others ask
   * for. What opens between two starts opens at the later one.
   *
   * @param wait null: whenever that one is done
   */
  followers(ends: Int32Array, wait: BenchWait | null): Followers {
    const { length } = this.minutes;
    const first = new Int32Array(length).fill(length);
    const last = new Int32Array(length).fill(length - 1);
    const opening = wait?.windows[0]?.opens ?? 0;
    const shutting = wait?.windows.at(-1)?.shuts ?? null;
    let from = 0;
    for (let start = 0; start < length; start++) {
      const end = ends[start] as Minutes;
      if (end >= NEVER) continue;
      const opens = openingAfter(opening, end);
      while (from < length && (this.minutes[from] as Minutes) < opens) from++;
      first[start] = from;
      if (shutting !== null) last[start] = this.lastIn(from, shutAfter(shutting, end));
    }
    return { first, last };
  }
}
