import { expect, test } from "vitest";
import type { DashboardState, Effect } from "../../src/dashboard/state.ts";
import { update } from "../../src/dashboard/update.ts";
import { at } from "../fixtures/week-time.ts";
import {
  busyAnswer,
  evening,
  makeAnswer,
  makeFacts,
  makeHand,
  makeHeld,
  makePrepared,
  makeWork,
} from "./made-answer.ts";
import { makeState, press } from "./made-state.ts";

/** What one key asked for, without the moment: that is the key's own. */
function asked(effects: readonly Effect[]): unknown[] {
  return effects.map((effect) => {
    if (effect.do !== "perform") return effect;
    const { at: _, ...request } = effect.request;
    return request;
  });
}

// Rows of the busy evening, from the top: 11 in hand, 13, 14 and 15 to work, 16-18 and a new one held.
test.each([
  [["<enter>"], { act: "hang", tags: [11], step: null }],
  [["h"], { act: "hang", tags: [11], step: null }],
  [["l"], { act: "leave", tags: [11] }],
  [["<down>", "<enter>"], { act: "take", tags: [13], step: "last clear" }],
  [["j", "j", "t"], { act: "take", tags: [14], step: "first clear" }],
  [["<pageDown>", "k", "k", "t"], { act: "take", tags: [15], step: "eyes" }],
  // 11 is in hand, so it is asked which of the two is meant.
  [["<down>", "h", "1"], { act: "hang", tags: [11], step: null }],
  [["<down>", "h", "2"], { act: "hang", tags: [13], step: "last clear" }],
  [["1", "4", "t"], { act: "take", tags: [14], step: null }],
  [["1", "4", "<enter>"], { act: "take", tags: [14], step: null }],
  [["1", "1", "<enter>"], { act: "hang", tags: [11], step: null }],
  [["1", "4", "<backspace>", "6", "h"], { act: "hang", tags: [16], step: null }],
  [["<down>", "<down>", "r"], { act: "ready", station: "bench", what: "load clear", beginning: true }],
  [["1", "4", "r"], { act: "ready", station: "bench", what: "load clear", beginning: true }],
  [["p", "1"], { act: "put away", station: "bench" }],
  [["o", "t"], { act: "touch", tags: [11], found: "tacky" }],
  [["1", "2", "o", "h"], { act: "touch", tags: [12], found: "hard" }],
  [["u", "y"], { act: "undo", target: 40 }],
  [["n", "r", "u", "n", "<enter>"], { act: "note", tags: [11], text: "run" }],
  [["1", "4", "c", ..."red oxide", "<enter>"], { act: "take", tags: [14], step: null, colour: "red oxide" }],
  [["N", "c", "o", "l", "d", "<enter>"], { act: "note", tags: [], text: "cold" }],
] as const)("the keys %j ask for %j", (keys, request) => {
  const { effects } = press(makeState(), ...keys);
  expect(asked(effects)).toHaveLength(1);
  expect(asked(effects)[0]).toMatchObject(request);
});

test.each([
  [["1", "5", "r"], "No work of 15 now needs a set-up first."],
  [["9", "r"], "No work of 9 now needs a set-up first."],
  [["r"], "Mark a row of work that needs a set-up first."],
  [["1", "5", "p"], "Nothing stands ready."],
])("the keys %j, where there is nothing to do, are told so and forgotten", (keys, text) => {
  const { state, effects } = press(makeState(makeFacts({ ...busyAnswer(), prepared: [] })), ...keys);
  expect(effects).toEqual([]);
  expect(state).toMatchObject({ typed: "", message: { text } });
});

test("an Enter that was waiting as keys are first heard takes nothing; one a second later does", () => {
  const heard = update(makeState(), { is: "listening", now: evening }).state;
  const bounced = update(heard, { is: "key", key: { name: "enter" }, now: evening + 100 });
  expect(bounced.effects).toEqual([]);
  const meant = update(bounced.state, { is: "key", key: { name: "enter" }, now: evening + 1100 });
  expect(asked(meant.effects)).toMatchObject([{ act: "hang", tags: [11] }]);
});

test("an act is dated by the moment of its key", () => {
  const [effect] = press(makeState(), "h").effects;
  // Keys of these tests come a second apart.
  expect(effect).toMatchObject({ request: { at: evening + 1000 } });
});

test.each([
  [["q"], { do: "quit" }],
  [["w"], { do: "week" }],
  [["s"], { do: "sheet", tags: [11], step: null }],
  [["<down>", "s"], { do: "sheet", tags: [13], step: "last clear" }],
  [["1", "5", "s"], { do: "sheet", tags: [15], step: null }],
  [["v"], { do: "place", tags: [11] }],
  [["1", "5", "e"], { do: "measure", tags: [15], step: null }],
  [["1", "5", "v"], { do: "place", tags: [15] }],
  [
    ["1", "4", "m", ..."level 1", "0", "<enter>"],
    { do: "mend", tags: [14], mend: { what: "level", minutes: 10 } },
  ],
  [["a", "2"], { do: "tag", process: "turned walker", name: null }],
] as const)("the keys %j do %j", (keys, effect) => {
  expect(press(makeState(), ...keys).effects).toEqual([effect]);
});

test.each([
  [["1", "4", "<escape>"]],
  [["o", "<escape>"]],
  [["o", "x"]],
  [["u", "n"]],
  [["a", "9"]],
  [["n", "<enter>"]],
  [["n", "x", "<escape>"]],
  [["!"]],
  [["Z"]],
  [["m", ..."level the run", "<enter>"]],
  [["m", "<enter>"]],
  [["m", ..."level 10", "<escape>"]],
] as const)("the keys %j ask for nothing", (keys) => {
  expect(press(makeState(), ...keys).effects).toEqual([]);
});

test("Enter on the row of a new piece tags one of its process, and its name is asked", () => {
  const row = makeWork({ tags: [], name: null, step: "shape", process: "carved walker" });
  const facts = makeFacts(makeAnswer({ work: [row] }));
  expect(press(makeState(facts), "<enter>").effects).toEqual([
    { do: "tag", process: "carved walker", name: null },
  ]);
});

test("Enter with nothing to mark asks which process a new piece is of", () => {
  const { state, effects } = press(makeState(makeFacts(makeAnswer())), "<enter>");
  expect(effects).toEqual([]);
  expect(state.overlay).toMatchObject({
    is: "choose",
    choices: [{ label: "1  carved walker" }, { label: "2  turned walker" }],
  });
});

test("Enter on work held for a measurement asks for it; the value typed is written down", () => {
  const because = {
    code: "measure first" as const,
    because: "wood moisture of 3 is not measured, at most 10 %",
    until: null,
    tags: [3],
    remedy: "measure the wood moisture",
  };
  const held = makeHeld({ tags: [3], step: "pour the ballast", because });
  const { state, effects } = press(makeState(makeFacts(makeAnswer({ held: [held] }))), "<enter>");
  expect(effects).toEqual([{ do: "measure", tags: [3], step: "pour the ballast" }]);
  const purpose = { for: "measure", tags: [3], what: "wood moisture", unit: "%" } as const;
  const overlay = { is: "type", title: "wood moisture of 3", typed: "", purpose } as const;
  expect(asked(press({ ...state, overlay }, ..."8,5 %", "<enter>").effects)).toEqual([
    { act: "measure", tags: [3], what: "wood moisture", value: 8.5, unit: "%" },
  ]);
});

test("Enter on work whose pot takes 20 minutes lights the pot first; with the pot standing it takes the work", () => {
  const setUp = { what: "melt lead", minutes: 20, standing: false };
  const row = makeWork({ tags: [16], step: "pour the ballast", station: "lead pot", setUp });
  const cold = press(makeState(makeFacts(makeAnswer({ work: [row] }))), "<enter>");
  expect(asked(cold.effects)).toMatchObject([{ act: "ready", station: "lead pot", what: "melt lead" }]);
  const hot = { ...row, setUp: { ...setUp, minutes: 0, standing: true } };
  const taken = press(makeState(makeFacts(makeAnswer({ work: [hot] }))), "<enter>");
  expect(asked(taken.effects)).toMatchObject([{ act: "take", tags: [16] }]);
});

test("an Enter that bounces within 0.4 s acts once, and a later one acts again", () => {
  const state = makeState();
  const enterAfter = (from: DashboardState, milliseconds: number) =>
    update(from, { is: "key", key: { name: "enter" }, now: evening + milliseconds });
  const first = enterAfter(state, 1000);
  const bounced = enterAfter(first.state, 1300);
  const meant = enterAfter(bounced.state, 1800);
  expect([first, bounced, meant].map(({ effects }) => effects.length)).toEqual([1, 0, 1]);
});

test("what stands ready alone is put away once it is said, not by a slip of one key", () => {
  const facts = makeFacts(
    makeAnswer({ prepared: [makePrepared({ station: "lead pot", setUp: "melt lead" })] }),
  );
  const slip = press(makeState(facts), "p");
  expect(asked(slip.effects)).toEqual([]);
  expect(slip.state.overlay).toMatchObject({
    title: "Put away what?",
    choices: [{ label: "1  melt lead at the lead pot" }],
  });
  expect(asked(press(slip.state, "<enter>").effects)).toEqual([{ act: "put away", station: "lead pot" }]);
  expect(asked(press(slip.state, "n").effects)).toEqual([]);
});

test("with two things standing ready, putting away asks which", () => {
  const pot = makePrepared({ station: "lead pot", setUp: "melt lead" });
  const facts = makeFacts(makeAnswer({ prepared: [makePrepared(), pot] }));
  const { effects } = press(makeState(facts), "p", "2");
  expect(asked(effects)).toEqual([{ act: "put away", station: "lead pot" }]);
});

test("a forgotten step is asked about at the next key, once, and the key does nothing else", () => {
  const forgotten = { usual: at("Mon 18:46"), latest: at("Mon 21:00") };
  const facts = makeFacts(makeAnswer({ inHand: [makeHand({ forgotten })], work: [makeWork()] }));
  const asking = press(makeState(facts), "t");
  expect(asking.effects).toEqual([]);
  expect(asking.state.overlay).toMatchObject({
    title: "11 seal in hand since 18:38: hung 18:46, as usual?",
  });
  expect(asked(press(asking.state, "y").effects)).toMatchObject([{ act: "hang", tags: [11], asUsual: true }]);
  const refused = press(asking.state, "<escape>", "t");
  expect(asked(refused.effects)).toMatchObject([{ act: "take", tags: [11] }]);
});

test("a key with nothing marked and nothing typed says what to do", () => {
  const { state, effects } = press(makeState(makeFacts(makeAnswer())), "t");
  expect(effects).toEqual([]);
  expect(state.message?.text).toBe("Mark a row or type a tag first.");
});

test("undo with nothing to undo says so", () => {
  const { state } = press(makeState(makeFacts(busyAnswer(), { newestAct: null })), "u");
  expect(state.message?.text).toBe("Nothing to undo.");
});

test("a mend without its minutes says what is missing and keeps what was typed", () => {
  const { state } = press(makeState(), "m", ..."level the run", "<enter>");
  expect(state.overlay).toMatchObject({
    is: "type",
    title: "End with the minutes it took, as 10",
    typed: "level the run",
  });
  expect(press(state, ..." 10 min", "<enter>").effects).toEqual([
    { do: "mend", tags: [11], mend: { what: "level the run", minutes: 10 } },
  ]);
});
