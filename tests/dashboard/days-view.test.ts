import { expect, test } from "vitest";
import type { DashboardState, Effect } from "../../src/dashboard/state.ts";
import { update } from "../../src/dashboard/update.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { busyAnswer, evening, makeAnswer, makeFacts } from "./made-answer.ts";
import { makeState, picture, press } from "./made-state.ts";

const lines = Array.from({ length: 60 }, (_, index) => `line ${index + 1}`);

function asked(effects: readonly Effect[]): Extract<Effect, { do: "days" }> {
  const [effect, ...more] = effects;
  if (effect?.do !== "days" || more.length > 0) throw new Error("the days were not asked for, or not alone");
  return effect;
}

/** What came of making the plan. */
function made(state: DashboardState, effect: Extract<Effect, { do: "days" }>): DashboardState {
  return update(state, { is: "days", lines, about: effect.about, again: effect.again }).state;
}

/** The days lie open, as `d` opens them. */
function opened(size = { columns: 80, rows: 24 }): DashboardState {
  const { state, effects } = press(makeState(makeFacts(busyAnswer()), size), "d");
  return made(state, asked(effects));
}

test("d asks for the coming days, as wide as the screen", () => {
  const { effects } = press(makeState(), "d");
  expect(asked(effects)).toMatchObject({ columns: 77, again: false });
  const wide = press(makeState(makeFacts(busyAnswer()), { columns: 140, rows: 40 }), "d");
  expect(asked(wide.effects).columns).toBe(137);
});

test("they fill the screen, and tell how much more there is", () => {
  const screen = picture(opened());
  expect(screen).toHaveLength(24);
  expect(screen.some((line) => line.includes("The coming days"))).toBe(true);
  expect(screen.some((line) => /line 1$/.test(line))).toBe(true);
  expect(screen.join("\n")).toMatch(/of 60 lines, up and down read on/);
});

test.each([
  [["<down>"], 1],
  [["j", "j", "k"], 1],
  [["<pageDown>", "<pageDown>"], 20],
  [[" "], 10],
  [["<up>"], 0],
] as const)("the keys %j scroll to line %i", (keys, top) => {
  expect(press(opened(), ...keys).state.overlay).toMatchObject({ is: "days", top });
});

test.each([["<escape>"], ["d"], ["q"], ["<enter>"]])("%s goes back to the evening", (key) => {
  const { state, effects } = press(opened(), key);
  expect(state.overlay).toBeNull();
  expect(effects).toEqual([]);
});

test("while they lie open they are made anew with the minute, with an act, with a better plan, and with the width", () => {
  const state = press(opened(), "<pageDown>").state;
  const later = makeAnswer({ at: evening + MINUTE });
  const news = [
    { is: "facts", facts: makeFacts(later) },
    { is: "facts", facts: makeFacts(busyAnswer(), { newestAct: { act: 41, words: "12 taken" } }) },
    { is: "facts", facts: makeFacts({ ...busyAnswer(), basis: "plan", plan: { is: "kept", gap: 0.04 } }) },
  ] as const;
  for (const happened of news) {
    const step = update(state, happened);
    const effect = asked(step.effects);
    expect(effect.again).toBe(true);
    // Made anew it stays where it was read, and the same facts ask for nothing more.
    const anew = made(step.state, effect);
    expect(anew.overlay).toMatchObject({ top: 10 });
    expect(update(anew, happened).effects).toEqual([]);
  }
  const wider = update(state, { is: "size", size: { columns: 120, rows: 24 } }).state;
  const same = update(wider, { is: "facts", facts: makeFacts(busyAnswer()) });
  expect(asked(same.effects).columns).toBe(117);
});

test("made anew after they were closed they stay closed", () => {
  const step = update(opened(), { is: "facts", facts: makeFacts(makeAnswer({ at: evening + MINUTE })) });
  const closed = press(step.state, "<escape>").state;
  expect(made(closed, asked(step.effects)).overlay).toBeNull();
});

test("the help names the key", () => {
  expect(picture(press(makeState(), "?").state).join("\n")).toContain("d  the coming days");
});
