import type { Minutes } from "../../time/instant.ts";
import type { Bench } from "./bench.ts";

/**
 * The minutes at which stretches of bench time end, all of about the same length and none longer than a session.
 *
 * @param about how many minutes of bench time a stretch is; a shorter session is one
 */
export function stretchEnds({ calendar, horizon }: Bench, about: Minutes): Minutes[] {
  const ends: Minutes[] = [];
  for (let session = 0; calendar.opening(session) < horizon; session++) {
    const opens = Math.max(0, calendar.opening(session));
    const minutes = Math.min(horizon, calendar.closing(session)) - opens;
    const parts = Math.max(1, Math.round(minutes / about));
    for (let part = 1; part <= parts; part++) ends.push(opens + Math.round((minutes * part) / parts));
  }
  return ends;
}
