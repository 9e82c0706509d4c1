/** The build changes a few lines of the libraries under Ink for speed; what is drawn must stay as it was. */
import { PassThrough } from "node:stream";
import chalk from "chalk";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { InkStdout } from "../../src/dashboard/ink-stdout.ts";
import { mountInk } from "../../src/dashboard/mount-ink.tsx";
import type { ScreenSize } from "../../src/dashboard/presenter.ts";
import type { DashboardState } from "../../src/dashboard/state.ts";
import { update } from "../../src/dashboard/update.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { mountInk as builtMountInk } from "../bench/ink-as-built.ts";
import { busyAnswer, evening, makeAnswer, makeFacts, makeWaiting, makeWork } from "./made-answer.ts";
import { makeState, press } from "./made-state.ts";

// The colour library under Ink looks once, when it is loaded. Ink as built has its own and is loaded only here; that of Ink
// as it comes may have been loaded for another test before, and is set.
vi.hoisted(() => {
  vi.stubEnv("FORCE_COLOR", "1");
});
const { level } = chalk;
beforeAll(() => {
  chalk.level = 1;
});
afterAll(() => {
  chalk.level = level;
  vi.unstubAllEnvs();
});

/** Shows states one after another. */
function open(mount: typeof mountInk, size: ScreenSize, first: DashboardState) {
  let state = first;
  let frame = "";
  const listeners = new Set<() => void>();
  const stdin = Object.assign(new PassThrough(), { isTTY: true, setRawMode() {}, ref() {}, unref() {} });
  const stdout = new InkStdout(size, (text) => {
    frame = text;
  });
  const unmount = mount({
    store: {
      state: () => state,
      subscribe: (listener) => {
        listeners.add(listener);
        return () => listeners.delete(listener);
      },
      press: () => {},
      control: () => {},
    },
    stdin: stdin as unknown as NodeJS.ReadStream,
    stdout,
    fail: (trouble) => {
      throw trouble;
    },
  });
  return {
    unmount,
    async show(next: DashboardState): Promise<string> {
      state = next;
      for (const listener of listeners) listener();
      await new Promise((resolve) => setTimeout(resolve, 20));
      return frame;
    },
  };
}

/** An evening: the marker goes down and up, help comes and goes, the clock runs, names are short, long and wide. */
function evenings(size: ScreenSize): DashboardState[] {
  const waiting = (minutes: number) =>
    ["perch", "Rotfeder, die lange mit dem breiten Rücken", "鱒 🐟 à deux", "e\u0301clat"].map(
      (name, index) =>
        makeWaiting(31 + index, { name, opens: evening + (200 + 7 * index - minutes) * MINUTE }),
    );
  const passing = [0, 1, 2, 59].map((minutes) =>
    makeFacts(makeAnswer({ work: [makeWork({ name: "鱒 walker" })], waiting: waiting(minutes) })),
  );
  const busy = makeState(makeFacts(busyAnswer()), size);
  const keys = [
    "j",
    "j",
    "k",
    "j",
    "j",
    "j",
    "?",
    "<escape>",
    "k",
    "1",
    "4",
    "<escape>",
    "w",
    "<escape>",
    "k",
  ];
  const pressed = keys.map((_, index) => press(busy, ...keys.slice(0, index + 1)).state);
  return [
    busy,
    ...pressed,
    ...passing.map((facts) => update(busy, { is: "facts", facts }).state),
    busy,
    busy,
  ];
}

test.each([
  { columns: 80, rows: 24 },
  { columns: 130, rows: 50 },
  { columns: 40, rows: 10 },
])("Ink draws the same as built and as it comes, at $columns x $rows", async (size) => {
  const states = evenings(size);
  const [first] = states as [DashboardState];
  const asItComes = open(mountInk, size, first);
  const asBuilt = open(builtMountInk, size, first);
  const frames: string[] = [];
  for (const state of states) {
    const frame = await asItComes.show(state);
    frames.push(frame);
    expect(await asBuilt.show(state)).toBe(frame);
  }
  expect(new Set(frames).size).toBeGreaterThan(8);
  expect(frames[0]).toContain("\u001b[");
  asItComes.unmount();
  asBuilt.unmount();
});
