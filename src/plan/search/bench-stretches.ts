import type { Minutes } from "../../time/instant.ts";
import type { Bench } from "./bench.ts";

/** About how many minutes of bench time are planned at a time; a shorter session is planned whole. */
const STRETCH: Minutes = 480;

/** The bench hours in stretches of about the same length, none longer than a session. */
export class BenchStretches {
  /** The minutes at which they begin, and those at which they end. */
  readonly begins: Minutes[] = [];
  readonly ends: Minutes[] = [];

  constructor({ calendar, horizon }: Bench) {
    for (let session = 0; calendar.opening(session) < horizon; session++) {
      const opens = Math.max(0, calendar.opening(session));
      const minutes = Math.min(horizon, calendar.closing(session)) - opens;
      const parts = Math.max(1, Math.round(minutes / STRETCH));
      for (let part = 0; part < parts; part++) {
        this.begins.push(opens + Math.round((minutes * part) / parts));
        this.ends.push(opens + Math.round((minutes * (part + 1)) / parts));
      }
    }
  }

  /** When the last stretch began that has begun by a minute; before all: the first. */
  beginBefore(minute: Minutes): Minutes {
    let low = 0;
    let high = this.begins.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((this.begins[middle] as Minutes) <= minute) low = middle;
      else high = middle - 1;
    }
    return this.begins[low] ?? 0;
  }
}
