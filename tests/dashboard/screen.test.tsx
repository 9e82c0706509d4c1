import { render } from "ink-testing-library";
import { expect, test, vi } from "vitest";
import { paintLines } from "../../src/dashboard/paint-lines.ts";
import { pictureOf } from "../../src/dashboard/picture.ts";
import { Screen, type Store } from "../../src/dashboard/screen.tsx";
import type { DashboardState } from "../../src/dashboard/state.ts";
import { type Cell, cellsOf } from "../../src/dashboard/styled-line.ts";
import { update } from "../../src/dashboard/update.ts";
import { makeState, picture } from "./made-state.ts";

/** A store as the loop is one, but what keys ask for is only kept. */
function makeStore() {
  let state = makeState();
  const listeners = new Set<() => void>();
  const asked: string[] = [];
  const controls: string[] = [];
  const store: Store = {
    state: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    press: (key) => {
      const step = update(state, { is: "key", key, now: state.now + 1000 });
      state = step.state;
      asked.push(...step.effects.map((effect) => (effect.do === "perform" ? effect.request.act : effect.do)));
      for (const listener of listeners) listener();
    },
    control: (char) => controls.push(char),
  };
  return { store, asked, controls, state: (): DashboardState => state };
}

test("the frame Ink draws is the picture, line for line", () => {
  const { store, state } = makeStore();
  const { lastFrame, unmount } = render(<Screen store={store} />);
  const frame = stripLooks(lastFrame() ?? "").split("\n");
  expect(frame.map((line) => line.trimEnd())).toEqual(picture(state()));
  unmount();
});

test("keys in one chunk all act, and the frame after them shows what they did", async () => {
  const { store, asked } = makeStore();
  const { stdin, lastFrame, unmount } = render(<Screen store={store} />);
  stdin.write("14t");
  expect(asked).toEqual(["take"]);
  stdin.write("\u001b[B");
  await vi.waitFor(() => expect(stripLooks(lastFrame() ?? "")).toContain("\n>13 perch walker"));
  stdin.write("1");
  await vi.waitFor(() => expect(lastFrame()).toContain("tag 1_"));
  unmount();
});

test("arrow keys sent together with letters in one chunk keep their meaning", () => {
  const { store, asked, state } = makeStore();
  const { stdin, unmount } = render(<Screen store={store} />);
  stdin.write("\u001b[B\u001b[Bt");
  expect(state().mark).toBe("14 first clear");
  expect(asked).toEqual(["take"]);
  unmount();
});

test("Ctrl-C and Ctrl-Z are handed over and press nothing", () => {
  const { store, asked, controls } = makeStore();
  const { stdin, unmount } = render(<Screen store={store} />);
  stdin.write("\u0003");
  stdin.write("\u001a");
  expect({ asked, controls }).toEqual({ asked: [], controls: ["c", "z"] });
  unmount();
});

test("the first frame, painted without Ink, is cell for cell the one Ink draws", () => {
  const { store, state } = makeStore();
  const { lastFrame, unmount } = render(<Screen store={store} />);
  const drawn = lastFrame() ?? "";
  // Without a terminal Ink may leave every style away.
  const painted = paintLines(pictureOf(state()), drawn.includes("\u001b["));
  expect(trimmedCells(painted)).toEqual(trimmedCells(drawn));
  unmount();
});

test("painted without colour a frame has no style", () => {
  const lines = pictureOf(makeState());
  expect(paintLines(lines, false)).toBe(stripLooks(paintLines(lines, true)));
});

/** The cells of each line of a frame, without the plain blanks at its end. */
function trimmedCells(frame: string): Cell[][] {
  return frame.split("\n").map((line) => {
    const cells = cellsOf(line);
    const last = cells.findLastIndex(({ char, style }) => char !== " " || style.includes("7"));
    return cells.slice(0, last + 1).filter(({ char }) => char !== " ");
  });
}

function stripLooks(frame: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: SGR sequences begin with ESC
  return frame.replace(/\u001b\[[0-9;]*m/g, "");
}
