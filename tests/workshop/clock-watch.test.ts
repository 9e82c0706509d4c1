import { beforeEach, describe, expect, it } from "vitest";
import type { ActRecord } from "../../src/shop/shop.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { ClockWatch } from "../../src/workshop/clock-watch.ts";
import { handClock } from "./hand-clock.ts";

let machine: ReturnType<typeof handClock>;
let watch: ClockWatch;
let acts: ActRecord[];

beforeEach(() => {
  machine = handClock();
  acts = [];
  watch = new ClockWatch(machine.clock);
});

/** An act of one note, stamped by the machine's clock as it is. */
function write(): void {
  const seq = acts.length + 1;
  const { wall: at } = machine.clock;
  const event = {
    kind: "noted" as const,
    ...{ seq, act: seq, v: 1, at, recorded: at, by: "maker" as const, tag: 1, station: null, together: 1 },
    text: "a knot",
  };
  acts.push({ act: seq, at, by: "maker", tags: [1], stations: [], kinds: ["noted"], events: [event] });
}

function doubt() {
  const recorded = acts.map(({ at }) => at);
  const newestRecorded = recorded.length === 0 ? null : Math.max(...recorded);
  return watch.doubt({ acts, newest: acts.length, newestRecorded });
}

/** Somebody sets the machine's clock. */
function setBy(minutes: number): void {
  machine.clock.wall += minutes * MINUTE;
}

describe("watching the clock", () => {
  it("trusts a clock that only goes on, through a night of sleep too", () => {
    write();
    machine.pass(600);
    expect(doubt()).toBeNull();
  });

  it("says by how much the clock was moved while open, until the maker answers", () => {
    doubt();
    machine.pass(5);
    setBy(60);
    expect(doubt()).toEqual({ kind: "jumped", minutes: 60, wrote: null });
    expect(doubt()).toEqual({ kind: "jumped", minutes: 60, wrote: null });
    watch.settle();
    expect(doubt()).toBeNull();
    setBy(-90);
    expect(doubt()).toEqual({ kind: "jumped", minutes: -90, wrote: null });
  });

  it("doubts a clock that is behind what was already recorded", () => {
    write();
    setBy(-24 * 60);
    watch = new ClockWatch(machine.clock);
    expect(doubt()).toEqual({ kind: "behind", minutes: 1440, wrote: null });
  });
});

describe("what a clock that was wrong has written", () => {
  it("of one that ran slow: all since dryline was opened and before it was put on, too early", () => {
    write();
    doubt();
    machine.pass(5);
    write();
    write();
    doubt();
    setBy(120);
    machine.pass(0.1);
    // By the right clock, before anyone has answered.
    write();
    const wrote = { since: 2, until: 4, minutes: -120 };
    expect(doubt()).toEqual({ kind: "jumped", minutes: 120, wrote });
  });

  it("of one that ran slow since before dryline was opened: from where the recorded times step back", () => {
    write();
    machine.pass(30);
    write();
    setBy(-120);
    machine.pass(200);
    // 200 min later and 2 h slow it shows 80 min after the last: no trace.
    write();
    setBy(-300);
    // And five hours slower still: it steps back here.
    write();
    machine.pass(400);
    watch = new ClockWatch(machine.clock);
    doubt();
    write();
    setBy(300);
    expect(doubt()).toMatchObject({ kind: "jumped", wrote: { since: 4, until: null, minutes: -300 } });
  });

  it("of one that ran ahead: all since dryline was opened, and before that what is ahead of now", () => {
    setBy(60);
    write();
    write();
    machine.pass(5);
    watch = new ClockWatch(machine.clock);
    doubt();
    write();
    doubt();
    setBy(-60);
    // The first two are 55 min ahead of now.
    expect(doubt()).toEqual({ kind: "jumped", minutes: -60, wrote: { since: 1, until: null, minutes: 60 } });
  });

  it("of one set wrong while open and set right again: only what came between", () => {
    write();
    doubt();
    setBy(-45);
    expect(doubt()).toMatchObject({ kind: "jumped", minutes: -45 });
    write();
    machine.pass(10);
    setBy(45);
    write();
    expect(doubt()).toEqual({ kind: "back", minutes: -45, wrote: { since: 2, until: 3, minutes: -45 } });
    watch.settle();
    expect(doubt()).toBeNull();
  });

  it("is nothing where it was set wrong and right again with nothing written between", () => {
    write();
    doubt();
    setBy(-45);
    doubt();
    setBy(45);
    expect(doubt()).toBeNull();
  });

  it("is rounded so that nothing set right by it lies ahead of now", () => {
    doubt();
    write();
    setBy(10.5);
    // 10 min 30 s too early: set forward by 10.
    expect(doubt()).toMatchObject({ minutes: 10, wrote: { minutes: -10 } });
    watch.settle();
    setBy(-10.5);
    // Stamped 10 min 30 s ahead: set back by 11.
    write();
    expect(doubt()).toMatchObject({ minutes: -11 });
  });
});
