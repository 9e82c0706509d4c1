import type { Refusal, RefusalCode } from "../acts/refusal.ts";
import { plainText } from "./plain-text.ts";
import { REFUSALS_OF_SAFETY } from "./refusals-of-safety.ts";
import { REFUSALS_OF_STATE } from "./refusals-of-state.ts";
import { REFUSALS_OF_WORDS } from "./refusals-of-words.ts";
import { capital } from "./say-list.ts";
import type { Speech } from "./speech.ts";

/** How refusals of the codes `C` are said, one sentence each without its full stop. */
export type Refusals<C extends RefusalCode> = {
  readonly [K in C]: (refusal: Extract<Refusal, { code: K }>, speech: Speech) => string;
};

// Naming all codes here makes a new code that nobody can say a type error.
const REFUSALS: Refusals<RefusalCode> = { ...REFUSALS_OF_WORDS, ...REFUSALS_OF_STATE, ...REFUSALS_OF_SAFETY };

/**
 * A "no" in one sentence: what is so, and what can be done.
 *
 * @example sayRefusal(refusal, speech) // "14 first clear opens 23:04: wait, or go on anyway with a reason."
 */
export function sayRefusal(refusal: Refusal, speech: Speech): string {
  const say = REFUSALS[refusal.code] as (refusal: Refusal, speech: Speech) => string;
  return capital(plainText(`${say(refusal, speech)}.`));
}
