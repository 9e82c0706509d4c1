import type { Minutes } from "../time/instant.ts";

/** A mend as typed in one line: what was done, and at its end the minutes it took. */
export interface TypedMend {
  readonly what: string;
  readonly minutes: Minutes;
}

/**
 * Reads a mend; null: the minutes are missing, or what was done is.
 *
 * @example readMend("level the run 10") // { what: "level the run", minutes: 10 }
 */
export function readMend(typed: string): TypedMend | null {
  const [, what, minutes] = /^(.*[^\s,]),?\s+(\d{1,3})\s*(?:m|min|minutes)?$/i.exec(typed.trim()) ?? [];
  return what === undefined ? null : { what, minutes: Number(minutes) };
}
