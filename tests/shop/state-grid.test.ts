/**
 * What may happen when, as facts: every kind of event of a piece against every state its step can be in. `fits` means
 * the fact is kept (an override is a fact too); words mean it is set aside, and the piece stays as it was.
 */
import { describe, expect, test } from "vitest";
import type { EventBody } from "../../src/journal/event.ts";
import { stepState } from "../../src/shop/step-state.ts";
import { Diary } from "../fixtures/diary.ts";
import { inARow, makeProcess, makeStep, varnish } from "../fixtures/walker.ts";
import { moment } from "../fixtures/week-time.ts";

const definition = makeProcess(
  "grid",
  inARow([
    makeStep("carve", 20),
    makeStep("seal", 5, { coat: "varnish" }),
    makeStep("coat", 5, { coat: "varnish" }),
    makeStep("test", 5),
  ]),
  [varnish],
);

/** The step "coat" of piece 1 brought into each state; the moment at which it is so. */
const states: Record<
  string,
  { readonly bring: (diary: Diary) => void; readonly when: string; readonly is: string }
> = {
  blocked: { bring: () => undefined, when: "Mon 12:00", is: "blocked" },
  drying: { bring: sealed, when: "Mon 12:00", is: "drying" },
  open: { bring: sealed, when: "Mon 15:00", is: "open" },
  shut: { bring: sealed, when: "Tue 12:00", is: "shut" },
  "in hand": {
    bring: (diary) => {
      sealed(diary);
      diary.take(1, "coat", "Mon 14:55");
    },
    when: "Mon 15:00",
    is: "in hand",
  },
  left: {
    bring: (diary) => {
      sealed(diary);
      diary.take(1, "coat", "Mon 14:50");
      diary.leave(1, "coat", "Mon 14:55");
    },
    when: "Mon 15:00",
    is: "left",
  },
  done: { bring: coated, when: "Mon 15:00", is: "done" },
  finished: {
    bring: (diary) => {
      coated(diary);
      diary.hang(1, "test", "Mon 14:50");
    },
    when: "Mon 15:00",
    is: "ended",
  },
  scrapped: {
    bring: (diary) => {
      coated(diary);
      diary.say(1, { kind: "scrapped", why: "split" }, "Mon 14:50");
    },
    when: "Mon 15:00",
    is: "ended",
  },
};

function sealed(diary: Diary): void {
  diary.hang(1, "carve", "Mon 9:00");
  diary.hang(1, "seal", "Mon 10:00");
}

function coated(diary: Diary): void {
  sealed(diary);
  diary.hang(1, "coat", "Mon 14:30");
}

const hung = {
  place: null,
  colour: null,
  another: false,
  flashOff: null,
  result: null,
  guessed: false,
  overrides: [],
};
const pass = { step: "coat", pass: 1, part: "step" } as const;

const events: Record<string, EventBody> = {
  take: { kind: "taken", ...pass, colour: null, another: false, overrides: [] },
  hang: { kind: "hung", ...pass, ...hung },
  "hang preparation": { kind: "hung", ...pass, ...hung, part: "preparation" },
  leave: { kind: "left", ...pass },
  touch: { kind: "touched", step: "seal", pass: 1, found: "dry" },
  move: { kind: "moved", place: "warm box" },
  mend: { kind: "mended", what: "level", minutes: 5, goOnFrom: "coat" },
  scrap: { kind: "scrapped", why: "split" },
  sell: { kind: "gone", how: "sold", price: 2800, to: null },
  note: { kind: "noted", text: "a fine one" },
  price: { kind: "changed", price: 3000 },
  skip: { kind: "routed", change: { do: "skip", step: "coat" }, why: null },
  measure: { kind: "measured", what: "weight", value: 31, unit: "g" },
  "tag again": {
    kind: "tagged",
    process: "hash",
    name: "again",
    scheme: [],
    due: null,
    price: null,
    for: null,
    hung: null,
  },
};

const fits = "fits";
const blocked = '"seal" must come before "coat"';
const done = '"coat" is done';
const notInHand = '"coat" is not in hand';
const begun = '"coat" is begun';
const noCoat = '"seal" has no pass 1 to touch';
const finished = "it is finished";
const scrapped = "it is scrapped";

/** One row a kind of event; columns in the order of `states`. */
const grid: Record<string, readonly string[]> = {
  take: [blocked, fits, fits, fits, '"coat" is in hand', fits, done, finished, scrapped],
  hang: [blocked, fits, fits, fits, fits, fits, done, finished, scrapped],
  "hang preparation": [blocked, fits, fits, fits, fits, fits, done, finished, scrapped],
  leave: [notInHand, notInHand, notInHand, notInHand, fits, notInHand, notInHand, notInHand, notInHand],
  touch: [noCoat, fits, fits, fits, fits, fits, fits, fits, fits],
  move: [fits, fits, fits, fits, fits, fits, fits, fits, fits],
  mend: [fits, fits, fits, fits, fits, fits, fits, fits, scrapped],
  scrap: [fits, fits, fits, fits, fits, fits, fits, fits, scrapped],
  sell: [fits, fits, fits, fits, fits, fits, fits, fits, scrapped],
  note: [fits, fits, fits, fits, fits, fits, fits, fits, fits],
  price: [fits, fits, fits, fits, fits, fits, fits, fits, fits],
  skip: [fits, fits, fits, fits, begun, begun, begun, finished, scrapped],
  measure: [fits, fits, fits, fits, fits, fits, fits, fits, fits],
  "tag again": Array.from({ length: 9 }, () => "it was tagged before"),
};

const cells = Object.entries(grid).flatMap(([event, row]) =>
  Object.keys(states).map((state, column) => ({ event, state, expected: row[column] ?? "" })),
);

describe("every event against every state", () => {
  test("the grid has a cell for each", () => {
    expect(cells).toHaveLength(Object.keys(events).length * Object.keys(states).length);
    expect(cells.filter(({ expected }) => expected === "")).toEqual([]);
  });

  test.each(cells)("$event when $state: $expected", ({ event, state, expected }) => {
    const setting = states[state];
    const body = events[event];
    if (setting === undefined || body === undefined) throw new Error("the grid names what is not there");
    const diary = new Diary(definition);
    diary.tag(1, "Mon 8:00");
    setting.bring(diary);
    const before = diary.piece(1);
    expect(stepState(before, "coat", moment(setting.when)).is).toBe(setting.is);
    const seq = diary.say(1, body, setting.when);
    const { setAside } = diary.shop();
    if (expected === fits) {
      expect(setAside).toEqual([]);
      expect(diary.piece(1)).not.toEqual({ ...before, lastSeq: seq });
    } else {
      expect(setAside).toEqual([{ seq, why: `${seq} (${body.kind} of 1) fits nothing: ${expected}` }]);
      expect(diary.piece(1)).toEqual({ ...before, lastSeq: seq });
    }
  });
});

test("what the state becomes: taken in hand, left, hung done, mended open again, undone as before", () => {
  const diary = new Diary(definition);
  diary.tag(1, "Mon 8:00");
  sealed(diary);
  const is = (when: string) => stepState(diary.piece(1), "coat", moment(when)).is;
  const trail = [is("Mon 15:00")];
  diary.take(1, "coat", "Mon 15:00");
  trail.push(is("Mon 15:01"));
  const hang = diary.hang(1, "coat", "Mon 15:05");
  trail.push(is("Mon 15:05"));
  diary.undo(hang, "Mon 15:06");
  trail.push(is("Mon 15:06"));
  diary.hang(1, "coat", "Mon 15:07");
  diary.mend(1, "wipe it off", 5, "coat", "Mon 15:15");
  trail.push(is("Mon 15:15"));
  expect(trail).toEqual(["open", "in hand", "done", "in hand", "open"]);
});
