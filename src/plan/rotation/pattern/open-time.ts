import type { Minutes } from "../../../time/instant.ts";
import type { Circle } from "../circle.ts";

/** The minutes of a circle at which the bench is open, numbered on end as slots: within a session both count alike. */
export class OpenTime {
  readonly period: Minutes;
  readonly size: number;
  /** By slot, its minute and its session. */
  readonly minuteOf: Int32Array;
  readonly sessionOf: Int16Array;
  /** By minute (and the end of the last), how many slots come before it. */
  readonly slotsBefore: Int32Array;
  /** By session, its first slot and the one after its last. */
  readonly spans: readonly { readonly opens: number; readonly closes: number }[];

  constructor({ period, sessions }: Circle) {
    this.period = period;
    this.size = sessions.reduce((sum, { opens, closes }) => sum + closes - opens, 0);
    this.minuteOf = new Int32Array(this.size);
    this.sessionOf = new Int16Array(this.size);
    this.slotsBefore = new Int32Array(period + 1);
    const spans: { opens: number; closes: number }[] = [];
    let slot = 0;
    let minute = 0;
    for (const [session, { opens, closes }] of sessions.entries()) {
      for (; minute < opens; minute++) this.slotsBefore[minute] = slot;
      spans.push({ opens: slot, closes: slot + closes - opens });
      for (; minute < closes; minute++, slot++) {
        this.slotsBefore[minute] = slot;
        this.minuteOf[slot] = minute;
        this.sessionOf[slot] = session;
      }
    }
    this.slotsBefore.fill(slot, minute);
    this.spans = spans;
  }

  /** The session of a minute at which the bench is open. */
  sessionAt(minute: Minutes): number {
    return this.sessionOf[this.slotsBefore[minute] as number] as number;
  }

  isOpen(minute: Minutes): boolean {
    return (this.slotsBefore[minute + 1] as number) > (this.slotsBefore[minute] as number);
  }

  /** Marks the slots of the minutes from one to before another, round the circle. */
  mark(slots: Uint8Array, from: Minutes, until: Minutes): void {
    const { period, slotsBefore } = this;
    if (until - from >= period) {
      slots.fill(1);
      return;
    }
    const begin = from - period * Math.floor(from / period);
    const end = begin + until - from;
    slots.fill(1, slotsBefore[begin], slotsBefore[Math.min(end, period)]);
    if (end > period) slots.fill(1, 0, slotsBefore[end - period]);
  }
}
