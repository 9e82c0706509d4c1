import type { Minutes } from "../../time/instant.ts";
import type { PlanSession } from "../problem.ts";

/** Later than anything: a whole number, as the engine keeps small whole numbers faster than Infinity. */
export const NEVER: Minutes = 1_000_000_000;

/** Bench hours by number, made for many questions about moments. */
export class Calendar {
  readonly opens: readonly Minutes[];
  readonly closes: readonly Minutes[];
  /** By stretch of `#every` minutes: the first session that closes after the stretch begins. */
  readonly #first: number[] = [];
  readonly #every: Minutes;

  constructor(sessions: readonly PlanSession[]) {
    // One more that never comes stands behind the last, so that looking further needs no special case.
    this.opens = [...sessions.map(({ opens }) => opens), NEVER];
    this.closes = [...sessions.map(({ closes }) => closes), 2 * NEVER];
    const last = sessions.at(-1)?.closes ?? 0;
    this.#every = Math.max(60, Math.ceil(last / 1024));
    let session = 0;
    for (let from = 0; from <= last; from += this.#every) {
      while ((this.closes[session] as number) <= from) session++;
      this.#first.push(session);
    }
  }

  /** Number of the session that is open at a minute, or opens next; that of the one that never comes, after all. */
  at(minute: Minutes): number {
    let session = this.#first[Math.floor(minute / this.#every)] ?? (minute < 0 ? 0 : this.opens.length - 1);
    while ((this.closes[session] as number) <= minute) session++;
    return session;
  }

  /** @returns NEVER: it never opens again */
  opening(session: number): Minutes {
    return this.opens[session] ?? NEVER;
  }

  closing(session: number): Minutes {
    return this.closes[session] ?? 2 * NEVER;
  }

  /** For how many minutes the bench is open from now until a minute. */
  openBefore(until: Minutes): Minutes {
    let open = 0;
    for (let session = 0; this.opening(session) < until; session++) {
      open += Math.min(until, this.closing(session)) - Math.max(0, this.opening(session));
    }
    return open;
  }

  /**
   * The first minute from `from` on at which work may start that has `lead` minutes of bench time before it and `need`
   * from its start on, all in one session.
   */
  meeting(from: Minutes, lead: Minutes, need: Minutes): Minutes {
    for (let session = this.at(from); ; session++) {
      const opens = this.opening(session);
      if (opens >= NEVER) return NEVER;
      const start = Math.max(from, opens + lead);
      if (start + need <= this.closing(session)) return start;
    }
  }
}
