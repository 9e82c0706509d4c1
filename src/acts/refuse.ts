import type { Instant } from "../time/instant.ts";
import type { Refusal, RefusalCode } from "./refusal.ts";

/** A "no", as every function of this room hands it on. */
export type Refused = { readonly refusal: Refusal };

type Without<T> = T extends unknown ? Omit<T, "exit" | "until"> : never;

/** Codes whose words name something that is not there, or that say too little: exit code 2. All others are 3. */
const WRONG_WORDS: ReadonlySet<RefusalCode> = new Set<RefusalCode>([
  "no such tag",
  "no such step",
  "no such station",
  "no such set-up",
  "no such answer",
  "no such act",
  "several steps fit",
  "in the future",
  "unfit value",
]);

/**
 * Makes a refusal of its facts.
 *
 * @param until when the same request will be allowed, where the clock alone decides
 */
export function refuse(facts: Without<Refusal>, until: Instant | null = null): Refused {
  return { refusal: { ...facts, exit: WRONG_WORDS.has(facts.code) ? 2 : 3, until } as Refusal };
}

/** True for a "no". `isRefused(refuse({ code: "nothing to undo" })) === true` */
export function isRefused<T extends object | string>(answer: T | Refused): answer is Refused {
  return typeof answer === "object" && "refusal" in answer;
}
