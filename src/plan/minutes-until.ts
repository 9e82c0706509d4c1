import { type Instant, MINUTE, type Minutes } from "../time/instant.ts";

/** Whole minutes from now until a moment, rounded up; negative when it has passed. */
export function minutesUntil(now: Instant, moment: Instant): Minutes {
  return Math.ceil((moment - now) / MINUTE);
}
