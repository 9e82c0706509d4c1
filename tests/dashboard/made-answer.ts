import type { Facts } from "../../src/dashboard/state.ts";
import type {
  BenchNow,
  HandRow,
  HeldRow,
  NowAnswer,
  PreparedRow,
  WaitingRow,
  WorkRow,
} from "../../src/plan/now-answer.ts";
import { sessionsBetween } from "../../src/time/sessions.ts";
import { at, dublin, eveningHours } from "../fixtures/week-time.ts";

/** Monday 18:42 of the week of the tests, unless a test says another moment. */
export const evening = at("Mon 18:42");

const DAY = 24 * 60 * 60_000;

export function makeWork(changes: Partial<WorkRow> = {}): WorkRow {
  return {
    tags: [14],
    name: "smelt walker",
    process: "walker",
    step: "first clear",
    part: "step",
    preparation: null,
    station: "bench",
    colour: null,
    coat: "varnish",
    minutes: 8,
    setUp: null,
    opens: at("Mon 18:00"),
    shuts: at("Mon 19:40"),
    beginBy: at("Mon 19:34"),
    why: { because: "shuts tonight", at: at("Mon 19:40") },
    ifLeft: {
      preparation: { do: "scuff", handsOn: { low: 5, likely: 5, high: 5 }, givesOff: [], cautions: [] },
      preparationFrom: at("Mon 19:40"),
      mend: false,
      shut: [{ tag: 14, at: at("Mon 19:40") }],
      finishNow: at("Thu 19:02"),
      finishLeft: at("Fri 19:10"),
      others: null,
    },
    warning: null,
    ...changes,
  };
}

export function makeWaiting(tag: number, changes: Partial<WaitingRow> = {}): WaitingRow {
  return {
    tag,
    name: "frog back",
    step: "second seal",
    stage: "dust-free",
    progress: 0.31,
    since: at("Mon 17:00"),
    opens: at("Mon 23:04"),
    shuts: at("Tue 19:04"),
    hard: at("Tue 07:04"),
    state: "drying",
    because: null,
    place: "rack",
    otherEnd: null,
    ...changes,
  };
}

export function makeHand(changes: Partial<HandRow> = {}): HandRow {
  return {
    tags: [11],
    step: "seal",
    part: "step",
    station: "bench",
    since: at("Mon 18:38"),
    usualMinutes: 6,
    left: false,
    forgotten: null,
    cautions: ["solvent vapour"],
    warning: null,
    ...changes,
  };
}

export function makeHeld(changes: Partial<HeldRow> = {}): HeldRow {
  return {
    tags: [16, 17, 18],
    name: null,
    step: "pour the ballast",
    minutes: 18,
    setUp: { what: "melt lead", minutes: 20, standing: false },
    because: {
      code: "keep apart",
      because: "solvent vapour of 11",
      until: at("Mon 19:20"),
      remedy: null,
      tags: [11],
    },
    until: at("Mon 19:20"),
    ...changes,
  };
}

export function makePrepared(changes: Partial<PreparedRow> = {}): PreparedRow {
  return {
    station: "bench",
    setUp: "mix resin",
    state: "ready",
    ready: at("Mon 18:23"),
    until: at("Mon 18:53"),
    putAwayMinutes: 2,
    ...changes,
  };
}

export function makeBench(changes: Partial<BenchNow> = {}): BenchNow {
  return {
    closes: at("Mon 21:00"),
    minutesLeft: 138,
    opensNext: at("Tue 18:00"),
    putAway: 0,
    assumedHours: false,
    ...changes,
  };
}

/** An answer with nothing in it but what a test puts there. */
export function makeAnswer(changes: Partial<NowAnswer> = {}): NowAnswer {
  return {
    at: evening,
    basis: "dispatch",
    plan: { is: "none", gap: null },
    work: [],
    inHand: [],
    waiting: [],
    held: [],
    prepared: [],
    air: null,
    cold: [],
    bench: makeBench(),
    ...changes,
  };
}

/** An evening with some of everything: one in hand, three to work, two held, six out, a cup mixed. */
export function busyAnswer(): NowAnswer {
  return makeAnswer({
    inHand: [makeHand()],
    work: [
      makeWork({
        tags: [13],
        name: "perch walker",
        step: "last clear",
        coat: "bar-top resin",
        setUp: { what: "mix resin", minutes: 0, standing: true },
        beginBy: at("Mon 18:53"),
      }),
      makeWork({ setUp: { what: "load clear", minutes: 6, standing: false } }),
      makeWork({ tags: [15], name: "two-tone dace", step: "eyes", coat: null, minutes: 10, beginBy: null }),
    ],
    held: [
      makeHeld(),
      makeHeld({ tags: [], name: null, step: "shape", minutes: 45, setUp: null, until: at("Mon 19:25") }),
    ],
    waiting: [
      makeWaiting(11, { name: "craw", state: "in hand", step: "seal", stage: null }),
      makeWaiting(12),
      makeWaiting(13, { name: "perch walker", state: "open", opens: at("Mon 18:00"), shuts: null }),
      makeWaiting(14, {
        name: "smelt walker",
        state: "open",
        opens: at("Mon 18:00"),
        shuts: at("Mon 19:40"),
      }),
      makeWaiting(15, { name: "two-tone dace", state: "shut", opens: null, shuts: at("Mon 18:10") }),
      makeWaiting(16, { name: "old hollow", state: "not begun", since: null, opens: null, shuts: null }),
    ],
    prepared: [makePrepared()],
  });
}

/** Facts round an answer, as the workshop would have given them. */
export function makeFacts(answer: NowAnswer, changes: Partial<Facts> = {}): Facts {
  return {
    answer,
    speech: { zone: dublin, now: answer.at, clock24: true },
    sessions: sessionsBetween(eveningHours, dublin, answer.at - 4 * DAY, answer.at + 4 * DAY),
    week: "since Mon: 3 finished, aim 5",
    newestAct: { act: 40, words: "11 taken 18:38, seal" },
    fileProblems: [],
    processes: ["carved walker", "turned walker"],
    cautions: { "solvent vapour": "solvent vapour: open the window, no flame" },
    ...changes,
  };
}
