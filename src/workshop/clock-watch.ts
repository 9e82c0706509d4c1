import type { Seq } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import type { Instant, Minutes } from "../time/instant.ts";
import { MINUTE } from "../time/instant.ts";
import type { Clock } from "./clock.ts";

/**
 * What is wrong with the clock. `behind`: now is before the newest recorded moment. `jumped`: it was set while open.
 * `back`: it was set while open and then set back, and something was written meanwhile.
 */
export interface ClockDoubt {
  readonly kind: "behind" | "jumped" | "back";
  /** Minutes the clock was behind, or was moved; moved back is negative. Never more than would set an event ahead of now. */
  readonly minutes: Minutes;
  /** What a clock that was wrong has stamped, as far as known; null: nothing, or (behind) all that is ahead of now. */
  readonly wrote: WrongStamps | null;
}

/** Events from `since` to before `until` (null: to the newest) were stamped so many minutes too late, or too early if negative. */
interface WrongStamps {
  readonly since: Seq;
  readonly until: Seq | null;
  readonly minutes: Minutes;
}

/** What the watch wants to know of the shop. */
type Written = Pick<Shop, "newest" | "newestRecorded" | "acts">;

/** Wall and steady time may part by this much before anyone is troubled: slewing and rounding stay below it. */
const PARTING = MINUTE;

/**
 * Watches one clock while the program is open. Ask it at every tick; it says the same doubt until `settle`, or until
 * the clock is what it was.
 */
export class ClockWatch {
  readonly #clock: Clock;
  #wall: Instant;
  #steady: number;
  /** The newest event when the watch began: what follows was stamped by the clock it knows. */
  #began: Seq | null = null;
  /** When wall and steady time last agreed. */
  #agreed: { readonly seq: Seq; readonly wall: Instant } | null = null;
  /** By how much they parted since, in milliseconds. */
  #parted = 0;

  constructor(clock: Clock) {
    this.#clock = clock;
    this.#wall = clock.now();
    this.#steady = clock.steady();
  }

  /** What is wrong now, given what the journal holds. */
  doubt(written: Written): ClockDoubt | null {
    const now = this.#clock.now();
    const began = this.#began ?? written.newest;
    const agreed = this.#agreed ?? { seq: written.newest, wall: now };
    this.#began = began;
    const parted = now - this.#wall - (this.#clock.steady() - this.#steady);
    if (Math.abs(parted) > PARTING) {
      this.#parted = parted;
      this.#agreed = agreed;
      const since = Math.min(began + 1, firstDoubtful(written, parted, now) ?? began + 1);
      const late = minutesLate(-parted);
      return { kind: "jumped", minutes: -late, wrote: stamps(since, late, before(written, agreed, parted)) };
    }
    if (this.#parted !== 0) {
      const meanwhile = this.#stampedMeanwhile(written, agreed);
      if (meanwhile !== null) {
        return { kind: "back", minutes: meanwhile.minutes, wrote: meanwhile };
      }
      this.#parted = 0;
    }
    this.#agreed = { seq: written.newest, wall: now };
    const { newestRecorded } = written;
    if (newestRecorded === null || newestRecorded <= now) return null;
    return { kind: "behind", minutes: Math.ceil((newestRecorded - now) / MINUTE), wrote: null };
  }

  /** The maker has answered: the clock is right as it is now. */
  settle(): void {
    this.#wall = this.#clock.now();
    this.#steady = this.#clock.steady();
    this.#began = null;
    this.#agreed = null;
    this.#parted = 0;
  }

  /** What was written while the clock was wrong for a while; null: nothing. */
  #stampedMeanwhile(written: Written, agreed: { readonly seq: Seq; readonly wall: Instant }) {
    const late = eventsOf(written).filter(({ seq }) => seq > agreed.seq);
    const wrong = late.filter((event) => isAfterJump(event, agreed.wall, this.#parted));
    const [first] = wrong;
    const last = wrong.at(-1);
    if (first === undefined || last === undefined) return null;
    const until = late.find(({ seq }) => seq > last.seq)?.seq ?? null;
    return { since: first.seq, until, minutes: minutesLate(this.#parted) };
  }
}

/** The events before a jump, as the first after it. */
function before(written: Written, agreed: { readonly seq: Seq; readonly wall: Instant }, parted: number) {
  const events = eventsOf(written);
  const after = events.find((event) => event.seq > agreed.seq && isAfterJump(event, agreed.wall, parted));
  return {
    events: after === undefined ? events : events.filter(({ seq }) => seq < after.seq),
    until: after?.seq ?? null,
  };
}

function stamps(
  since: Seq,
  minutes: Minutes,
  { events, until }: ReturnType<typeof before>,
): WrongStamps | null {
  const first = events.find(({ seq }) => seq >= since);
  return first === undefined ? null : { since: first.seq, until, minutes };
}

/** Stamped by the clock as it was after the jump: nearer to there than to where it was when it last agreed. */
function isAfterJump(
  { recorded }: { readonly recorded: Instant },
  agreedWall: Instant,
  parted: number,
): boolean {
  const middle = agreedWall + parted / 2;
  return parted > 0 ? recorded > middle : recorded < middle;
}

/**
 * The first event that a wrong clock must have stamped, whoever watched: one ahead of now if it ran ahead, or one
 * recorded before its forerunner if it ran behind. Null: none shows it.
 */
function firstDoubtful(written: Written, parted: number, now: Instant): Seq | null {
  const events = eventsOf(written);
  if (parted < 0) return events.find(({ recorded }) => recorded > now)?.seq ?? null;
  return events.findLast((event, index) => event.recorded < (events[index - 1]?.recorded ?? 0))?.seq ?? null;
}

function eventsOf({ acts }: Written) {
  return acts.flatMap(({ events }) => events);
}

/** Rounded so that what is set right by it is not ahead of now. */
function minutesLate(milliseconds: number): Minutes {
  return Math.ceil(milliseconds / MINUTE);
}
