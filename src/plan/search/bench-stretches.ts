import type { Minutes } from "../../time/instant.ts";
import type { Bench } from "./bench.ts";

/** About how many minutes of bench time are planned at a time; a shorter session is planned whole. */
const STRETCH: Minutes = 480;

/** The minutes at which stretches of bench time end, all of about the same length and none longer than a session. */
export function stretchEnds({ calendar, horizon }: Bench): Minutes[] {
  const ends: Minutes[] = [];
  for (let session = 0; calendar.opening(session) < horizon; session++) {
    const opens = Math.max(0, calendar.opening(session));
    const minutes = Math.min(horizon, calendar.closing(session)) - opens;
    const parts = Math.max(1, Math.round(minutes / STRETCH));
    for (let part = 1; part <= parts; part++) ends.push(opens + Math.round((minutes * part) / parts));
  }
  return ends;
}
