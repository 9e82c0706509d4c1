import type { NowAnswer } from "../plan/now-answer.ts";
import type { Instant } from "../time/instant.ts";

/** Whether something an answer tells has opened, shut, cured or run out between its moment and now. */
export function hasTurned(answer: NowAnswer, now: Instant): boolean {
  const moments = [
    answer.bench.closes,
    answer.bench.opensNext,
    ...answer.waiting.flatMap(({ opens, shuts, hard }) => [opens, shuts, hard]),
    ...answer.held.map(({ until }) => until),
    ...answer.prepared.flatMap(({ ready, until }) => [ready, until]),
  ];
  return moments.some((at) => at !== null && at > answer.at && at <= now);
}
