import { expect, test } from "vitest";
import { takeOf } from "../../src/dashboard/requests.ts";
import type { DashboardState } from "../../src/dashboard/state.ts";
import { update } from "../../src/dashboard/update.ts";
import { busyAnswer, evening, makeAnswer, makeFacts, makeHand, makeWork } from "./made-answer.ts";
import { makeState, picture, press } from "./made-state.ts";

const first = makeWork();
const second = makeWork({ tags: [15], name: "two-tone dace", step: "eyes" });

/** The same facts, read `seconds` after the evening's moment. */
function readAfter(state: DashboardState, answer = makeAnswer(), seconds = 2): DashboardState {
  const facts = makeFacts({ ...answer, at: evening + seconds * 1000 });
  return update(state, { is: "facts", facts }).state;
}

function order(state: DashboardState): string[] {
  return state.rows.map(({ row }) => row.tags.join());
}

test("rows keep their places for 3 s after a key, then go where they belong at the next tick", () => {
  const pressed = press(makeState(makeFacts(makeAnswer({ work: [first, second] }))), "j").state;
  // The key came at +1 s; the other order is read at +2 s, so that the hand rests till +4 s.
  const read = readAfter(pressed, makeAnswer({ work: [second, first] }), 2);
  expect(order(read)).toEqual(["14", "15"]);
  const soon = update(read, { is: "tick", now: evening + 3900 }).state;
  expect(order(soon)).toEqual(["14", "15"]);
  const rested = update(soon, { is: "tick", now: evening + 4000 }).state;
  expect(order(rested)).toEqual(["15", "14"]);
  expect(rested.mark).toBe(read.mark);
});

test("a row that comes new while the hand is on the keys stands last", () => {
  const pressed = press(makeState(makeFacts(makeAnswer({ work: [second] }))), "j").state;
  expect(order(readAfter(pressed, makeAnswer({ work: [first, second] })))).toEqual(["15", "14"]);
});

test("a clock that was set back does not hold the rows", () => {
  const pressed = press(makeState(makeFacts(makeAnswer({ work: [first, second] }))), "j").state;
  expect(order(readAfter(pressed, makeAnswer({ work: [second, first] }), -3600))).toEqual(["15", "14"]);
});

test("the mark stays with the work as it is taken in hand, so that the same key then hangs it", () => {
  const taken = press(makeState(makeFacts(makeAnswer({ work: [second, first] }))), "j", "t").state;
  const inHand = makeHand({ tags: [14], step: "first clear" });
  const read = readAfter(taken, makeAnswer({ inHand: [inHand], work: [second] }), 3);
  expect(press(read, "<enter>").effects).toMatchObject([{ request: { act: "hang", tags: [14] } }]);
});

test("work that lies half-done is one row, to go on with", () => {
  const left = makeHand({ tags: [14], step: "first clear", left: true });
  const state = makeState(makeFacts(makeAnswer({ inHand: [left], work: [first] })));
  expect(state.rows.map(({ is }) => is)).toEqual(["work"]);
  const lonely = makeState(makeFacts(makeAnswer({ inHand: [left], work: [second] })));
  expect(lonely.rows.map(({ is }) => is)).toEqual(["hand", "work"]);
});

test("the mark of a row that went away falls to the row at its place, at the end to the last", () => {
  const marked = press(makeState(makeFacts(makeAnswer({ work: [first, second] }))), "j").state;
  expect(readAfter(marked, makeAnswer({ work: [first] })).mark).toBe("14 first clear");
  expect(readAfter(marked, makeAnswer()).mark).toBe(null);
});

test("a tick in which nothing turned leaves the very same state: nothing is drawn", () => {
  const state = makeState();
  expect(update(state, { is: "tick", now: evening + 1000 }).state).toBe(state);
});

test("c reads on while lines of a caution are out of sight, and ticks it only at its end", () => {
  const request = {
    act: "take",
    at: 0,
    tags: [3],
    step: null,
    colour: null,
    anyway: null,
    ticked: [],
  } as const;
  const lines = Array.from({ length: 30 }, (_, index) => `line ${index + 1}`);
  const unread = { is: "unread", cautions: ["molten lead"], lines, request } as const;
  const { state } = update(makeState(), unread);
  // 24 lines less two of the head, a blank one and the three around the text leave 18 for 30.
  const once = press(state, "c");
  expect(once.effects).toEqual([]);
  expect(once.state.overlay).toMatchObject({ top: 10 });
  const twice = press(once.state, "c");
  expect(twice.effects).toEqual([]);
  // After twelve lines the last is in sight, and nothing scrolls further.
  expect(twice.state.overlay).toMatchObject({ top: 12 });
  expect(press(twice.state, "<pageDown>").state.overlay).toMatchObject({ top: 12 });
  expect(press(twice.state, "c").effects).toMatchObject([
    { do: "perform", request: { ticked: ["molten lead"] } },
  ]);
});

test("a caution unread lies over all till c ticks it and does the act again with it", () => {
  const request = takeOf([16], "pour the ballast", evening);
  const told = { cautions: ["molten lead"], lines: ["Molten lead. Steam throws it."], request };
  const asking = update(makeState(), { is: "unread", ...told }).state;
  expect(picture(asking).join("\n")).toContain("Molten lead. Steam throws it.");
  expect(press(asking, "h", "t", "<enter>").effects).toEqual([]);
  const { state, effects } = press(asking, "c");
  expect(effects).toEqual([{ do: "perform", request: { ...request, ticked: ["molten lead"] } }]);
  expect(state.overlay).toBe(null);
  expect(press(asking, "<escape>").effects).toEqual([]);
});

test("what was refused goes on with ! and a reason, and only where it may", () => {
  const request = takeOf([14], "first clear", evening);
  const refusal = { text: "14 first clear opens 23:04", request };
  const may = update(makeState(), { is: "refused", ...refusal, mayGoOn: true }).state;
  expect(may.message?.text).toBe("14 first clear opens 23:04 (! goes on all the same)");
  const { effects } = press(may, "!", "f", "a", "n", "<enter>");
  expect(effects).toMatchObject([{ request: { act: "take", tags: [14], anyway: { reason: "fan" } } }]);
  expect(press(may, "!", "<enter>").effects).toEqual([]);
  const mayNot = update(makeState(), { is: "refused", ...refusal, mayGoOn: false }).state;
  expect(press(mayNot, "!").state.overlay).toBe(null);
});

test("typed words may hold any letter, also those that are keys, and lose one by Backspace", () => {
  const { state } = press(makeState(), "n", "q", "u", "é", "<backspace>", "1");
  expect(state.overlay).toMatchObject({ is: "type", typed: "qu1" });
});

test("a long text scrolls by lines and pages and stops at its ends", () => {
  const lines = Array.from({ length: 40 }, (_, index) => `line ${index + 1}`);
  const overlay = { is: "text", title: "The week", lines, top: 0 } as const;
  const open = update(makeState(), { is: "overlay", overlay }).state;
  const shown = (...keys: string[]) => picture(press(open, ...keys).state).join("\n");
  expect(shown("<up>")).toContain(" line 1\n");
  expect(shown("<down>", "<pageDown>")).toContain(" line 12\n");
  expect(shown(...Array<string>(9).fill("<pageDown>"))).toContain(" line 40\n");
  expect(shown("x")).not.toContain("line 1");
});

test("another size is shown at once", () => {
  const size = { columns: 120, rows: 40 };
  expect(picture(update(makeState(makeFacts(busyAnswer())), { is: "size", size }).state)).toHaveLength(40);
});

test("until a key was pressed the best row is marked, whichever a better plan puts there", () => {
  const [first, second] = [makeWork({ tags: [1] }), makeWork({ tags: [2] })];
  const opened = makeState(makeFacts(makeAnswer({ work: [first, second] })));
  const better = makeFacts(makeAnswer({ work: [second, first] }));
  const markOf = (state: typeof opened) => update(state, { is: "facts", facts: better }).state.mark;
  expect(markOf(opened)).toMatch(/^2 /);
  // Once the hand has been on the keys the mark stays where it was put.
  expect(markOf(press(opened, "k").state)).toMatch(/^1 /);
});

test("what was taken by its tag is marked, so that the next key hangs it and no other", () => {
  const opened = makeState(makeFacts(makeAnswer({ work: [first, second] })));
  const taking = press(opened, "1", "5", "t");
  const inHand = makeAnswer({ inHand: [makeHand({ tags: [15], step: "eyes" })], work: [first] });
  const taken = readAfter(taking.state, inHand);
  expect(taken.mark).toBe("15 eyes");
  expect(press(taken, "h").effects).toMatchObject([{ request: { act: "hang", tags: [15] } }]);
  // The mark is free again afterwards.
  expect(readAfter(press(taken, "j").state, inHand, 3).mark).toBe("14 first clear");
});

test("a file that breaks while the dashboard is open is told at once, as is one broken before", () => {
  const files = (...fileProblems: string[]) => ({
    is: "facts" as const,
    facts: makeFacts(makeAnswer(), { fileProblems }),
  });
  const said = (state: DashboardState) => state.message?.text ?? null;
  const whole = makeState(makeFacts(makeAnswer()));
  const broken = update(whole, files("walker.yaml, line 3")).state;
  expect(said(broken)).toBe("Some files cannot be used: dryline process check says why (1).");
  const cleared = press(broken, "<escape>").state;
  expect(said(update(cleared, files("walker.yaml, line 3")).state)).toBeNull();
  expect(said(update(cleared, files("walker.yaml, line 3", "varnish.yaml, line 1")).state)).toMatch(/\(2\)/);
  expect(said(update({ ...cleared, facts: null }, files("walker.yaml, line 3")).state)).toMatch(/\(1\)/);
});

test("that files cannot be used goes on being shown after the next key, for as long as it is so", () => {
  const files = (...fileProblems: string[]) => ({
    is: "facts" as const,
    facts: makeFacts(makeAnswer(), { fileProblems }),
  });
  const broken = press(makeState(files("walker.yaml, line 3").facts), "j", "<escape>").state;
  expect(picture(broken).join("\n")).toContain(
    "Some files cannot be used: dryline process check says why (1).",
  );
  // What a key brings is told in its place, and it comes back.
  const told = update(broken, { is: "told", message: { text: "1 hung 18:42.", tone: "done" } }).state;
  expect(picture(told).join("\n")).not.toContain("Some files");
  expect(picture(press(told, "j").state).join("\n")).toContain("1 hung 18:42.");
  expect(picture(press(told, "<escape>").state).join("\n")).toContain("Some files");
  expect(picture(update(broken, files()).state).join("\n")).not.toContain("Some files");
});
