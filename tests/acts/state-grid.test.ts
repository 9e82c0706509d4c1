import { describe, expect, test } from "vitest";
import { at } from "../fixtures/week-time.ts";
import { type Answer, Bench, refusalOf, told } from "./bench.ts";

/**
 * "What may happen when": every act on a piece in every state its step can be in. The piece is a walker, sealed on
 * Monday at 18:00 (its second seal opens 22:00, shuts Tuesday 18:00, then asks for a scuff), or near its end.
 */
const states = {
  blocked: () => ({ bench: sealed("Mon 18:30"), step: "colours" }),
  drying: () => ({ bench: sealed("Mon 18:30"), step: "second seal" }),
  open: () => ({ bench: sealed("Mon 22:30"), step: "second seal" }),
  shut: () => ({ bench: sealed("Tue 19:00"), step: "second seal" }),
  "in hand": () => ({ bench: inHand("hangers"), step: "hangers" }),
  "a coat in hand": () => ({ bench: inHand("second seal"), step: "second seal" }),
  left: () => {
    const bench = inHand("hangers");
    bench.leave(1);
    return { bench, step: "hangers" };
  },
  done: () => ({ bench: sealed("Mon 18:30"), step: "seal" }),
  finished: () => ({ bench: finished(), step: "water test" }),
  scrapped: () => {
    const bench = sealed("Mon 18:30");
    bench.scrap(1);
    return { bench, step: "second seal" };
  },
} satisfies Record<string, () => { bench: Bench; step: string }>;

function tagged(): Bench {
  const bench = new Bench("last Sat 9:00");
  bench.tag();
  return bench;
}

function sealed(now: string): Bench {
  const bench = tagged();
  bench.workUpTo(1, "second seal", "Mon 18:00");
  bench.at("Mon 18:01").putAway("lead pot");
  return bench.at(now);
}

function inHand(step: string): Bench {
  const bench = tagged();
  bench.workUpTo(1, step, "Mon 18:00");
  bench.at("Tue 18:00").hours = {
    weekly: [],
    days: { "2026-03-24": [{ opens: 0, closes: 1440 }] },
    away: [],
  };
  // A day after its resin the hangers go on; the seal of Monday shuts this minute and is taken in time.
  bench.take(1, { anyway: { reason: "in time by my watch" } });
  bench.clock += 60_000;
  return bench;
}

function finished(): Bench {
  const bench = tagged();
  bench.workUpTo(1, "water test", "Mon 18:00");
  bench.at("Tue 18:10").hang(1, { result: "passes" });
  return bench.at("Tue 18:30");
}

type State = keyof typeof states;
type Act = (bench: Bench, step: string) => Answer;

const acts: Record<string, Act> = {
  take: (bench, step) => bench.take(1, { step, ticked: [] }),
  "take anyway": (bench, step) => bench.take(1, { step, ticked: [], anyway: { reason: "it is warm" } }),
  hang: (bench, step) => bench.hang(1, { step, result: step === "water test" ? "passes" : null }),
  "hang anyway": (bench, step) =>
    bench.hang(1, { step, result: step === "water test" ? "passes" : null, anyway: { reason: "it is so" } }),
  leave: (bench) => bench.leave(1),
  touch: (bench) => bench.touch(1, "dry"),
  move: (bench) => bench.move(1, "warm box"),
  mend: (bench, step) => bench.mend(1, step),
  scrap: (bench) => bench.scrap(1),
  note: (bench) => bench.note(1),
  rename: (bench) => bench.change(1, { name: "perch" }),
  price: (bench) => bench.change(1, { price: 2800 }),
  skip: (bench) => bench.route(1, { do: "skip", step: "water test" }),
};

const read = "no: read the caution";
const grid: Record<keyof typeof acts, Record<State, string>> = {
  take: {
    blocked: "no: blocked",
    drying: "no: too early",
    open: read,
    shut: read,
    "in hand": "no: already in hand",
    "a coat in hand": "no: already in hand",
    left: "taken 1 hangers",
    done: "no: already done",
    finished: "no: ended",
    scrapped: "no: ended",
  },
  "take anyway": {
    blocked: "no: blocked",
    drying: read,
    open: read,
    shut: read,
    "in hand": "no: already in hand",
    "a coat in hand": "no: already in hand",
    left: "taken 1 hangers",
    done: "no: already done",
    finished: "no: ended",
    scrapped: "no: ended",
  },
  hang: {
    blocked: "no: blocked",
    drying: "no: too early",
    open: "hung 1 second seal",
    shut: "no: too late",
    "in hand": "hung 1 hangers",
    "a coat in hand": "hung 1 second seal",
    left: "hung 1 hangers",
    done: "no: already done",
    finished: "no: ended",
    scrapped: "no: ended",
  },
  "hang anyway": {
    blocked: "no: blocked",
    drying: "hung 1 second seal",
    open: "hung 1 second seal",
    shut: "hung 1 second seal",
    "in hand": "hung 1 hangers",
    "a coat in hand": "hung 1 second seal",
    left: "hung 1 hangers",
    done: "no: already done",
    finished: "no: ended",
    scrapped: "no: ended",
  },
  leave: {
    blocked: "no: not in hand",
    drying: "no: not in hand",
    open: "no: not in hand",
    shut: "no: not in hand",
    "in hand": "left 1 hangers",
    "a coat in hand": "no: coat half laid",
    left: "no: not in hand",
    done: "no: not in hand",
    finished: "no: ended",
    scrapped: "no: ended",
  },
  touch: {
    blocked: "touched 1 seal",
    drying: "touched 1 seal",
    open: "touched 1 seal",
    shut: "touched 1 seal",
    "in hand": "no: already in hand",
    "a coat in hand": "no: already in hand",
    left: "touched 1 last clear",
    done: "touched 1 seal",
    finished: "touched 1 last clear",
    scrapped: "touched 1 seal",
  },
  move: {
    blocked: "moved 1",
    drying: "moved 1",
    open: "moved 1",
    shut: "moved 1",
    "in hand": "no: already in hand",
    "a coat in hand": "no: already in hand",
    left: "moved 1",
    done: "moved 1",
    finished: "moved 1",
    scrapped: "moved 1",
  },
  mend: {
    blocked: "no: blocked",
    drying: "mended 1",
    open: "mended 1",
    shut: "mended 1",
    "in hand": "mended 1",
    "a coat in hand": "mended 1",
    left: "mended 1",
    done: "mended 1",
    finished: "mended 1",
    scrapped: "no: ended",
  },
  scrap: {
    blocked: "scrapped 1",
    drying: "scrapped 1",
    open: "scrapped 1",
    shut: "scrapped 1",
    "in hand": "scrapped 1",
    "a coat in hand": "scrapped 1",
    left: "scrapped 1",
    done: "scrapped 1",
    finished: "scrapped 1",
    scrapped: "no: ended",
  },
  note: everywhere("noted 1"),
  rename: { ...everywhere("changed 1"), finished: "no: ended", scrapped: "no: ended" },
  price: everywhere("changed 1"),
  skip: { ...everywhere("routed 1"), finished: "no: ended", scrapped: "no: ended" },
};

function everywhere(answer: string): Record<State, string> {
  return Object.fromEntries(Object.keys(states).map((state) => [state, answer])) as Record<State, string>;
}

const cells = Object.entries(grid).flatMap(([act, row]) =>
  Object.entries(row).map(([state, answer]) => ({ act, state: state as State, answer })),
);

describe("what may happen when", () => {
  test.each(cells)("$act, $state: $answer", ({ act, state, answer }) => {
    const { bench, step } = states[state]();
    expect(bench.state(1, step).is).toBe(expectedState(state));
    const written = bench.events.length;
    const told1 = told(acts[act]?.(bench, step) ?? { events: [] });
    expect(told1.at(-1)).toBe(answer);
    if (answer.startsWith("no:")) expect(bench.events.length).toBe(written);
    expect(bench.shop.setAside).toEqual([]);
  });

  test("every state and every act has its cell", () => {
    expect(cells.length).toBe(Object.keys(states).length * Object.keys(acts).length);
  });
});

/** A blocked step is the second seal's follower; a scrapped or finished piece has ended, whatever its step. */
function expectedState(state: State): string {
  if (state === "finished" || state === "scrapped") return "ended";
  return state === "a coat in hand" ? "in hand" : state;
}

describe("a refusal by state says what is so", () => {
  test("blocked names the step before", () => {
    const { bench, step } = states.blocked();
    expect(refusalOf(bench.take(1, { step }))).toMatchObject({
      code: "blocked",
      by: ["second seal"],
      until: null,
    });
  });

  test("drying says when it opens: sealed 18:00, open 4 h later", () => {
    const { bench } = states.drying();
    expect(refusalOf(bench.take(1))).toMatchObject({
      code: "too early",
      step: "second seal",
      until: at("Mon 22:00"),
    });
  });

  test("shut says since when and what to do first: a scuff from Tue 18:00", () => {
    const { bench } = states.shut();
    expect(refusalOf(bench.hang(1))).toMatchObject({
      code: "too late",
      since: at("Tue 18:00"),
      preparation: { do: "scuff" },
      mendFrom: "seal",
    });
  });

  test("in hand and done say since when", () => {
    const hand = states["in hand"]();
    expect(refusalOf(hand.bench.take(1))).toMatchObject({ since: at("Tue 18:00") });
    const done = states.done();
    expect(refusalOf(done.bench.take(1, { step: "seal" }))).toMatchObject({ at: at("Mon 18:00") });
  });
});
