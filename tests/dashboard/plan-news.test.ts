import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { runDashboard } from "../../src/dashboard/run-dashboard.ts";
import { FakeTerminal } from "./fake-terminal.ts";
import { FakeWorkshop } from "./fake-workshop.ts";
import { makeAnswer, makeWork } from "./made-answer.ts";

let screen: FakeTerminal;
let workshop: FakeWorkshop;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setInterval", "clearInterval"] });
  screen = new FakeTerminal();
  workshop = new FakeWorkshop();
});

afterEach(() => {
  vi.useRealTimers();
});

function open(): Promise<number> {
  return runDashboard({ workshop, stdin: screen.stdin, stdout: screen.stdout, env: {} });
}

/** A second passes, on the clock and for the timers. */
function passSeconds(seconds: number): void {
  for (let second = 0; second < seconds; second++) {
    workshop.at += 1000;
    vi.advanceTimersByTime(1000);
  }
}

test("plans are searched for while it is open: what was found is read, and its standing told at the foot", async () => {
  const code = open();
  await screen.until("14 smelt walker");
  expect(workshop.planners.size).toBe(1);
  workshop.answer = { ...workshop.answer, basis: "plan", plan: { is: "kept", gap: 0.031 } };
  for (const tell of workshop.planners) tell();
  await screen.until("by plan, at most 4 % over the best");
  workshop.answer = { ...workshop.answer, basis: "dispatch", plan: { is: "stopped", gap: null } };
  for (const tell of workshop.planners) tell();
  await screen.until("not by plan: the planner stopped");
  screen.type("q");
  expect(await code).toBe(0);
  expect(workshop.planners.size).toBe(0);
});

test("a better plan does not move the rows under the hand: three seconds after the last key they do", async () => {
  workshop.answer = makeAnswer({
    work: [makeWork(), makeWork({ tags: [15], name: "eyed dace", step: "eyes" })],
  });
  const code = open();
  const order = (lines: readonly string[]) =>
    lines.flatMap((line) => /^.(14|15) /.exec(line)?.[1] ?? []).slice(0, 2);
  await screen.until("eyed dace");
  screen.type("j");
  await screen.until(">15 eyed dace");
  workshop.answer = {
    ...makeAnswer({ work: [makeWork({ tags: [15], name: "eyed dace", step: "eyes" }), makeWork()] }),
    basis: "plan",
    plan: { is: "kept", gap: 0 },
  };
  for (const tell of workshop.planners) tell();
  passSeconds(1);
  expect(order(await screen.until("proven best"))).toEqual(["14", "15"]);
  passSeconds(4);
  expect(order(await screen.until("begin by 19:34\n 14 smelt walker"))).toEqual(["15", "14"]);
  screen.type("q");
  await code;
});

test("what was found while keys come one upon the other is read when the hand rests: no key waits for it", async () => {
  workshop.answer = makeAnswer({
    work: [makeWork(), makeWork({ tags: [15], name: "eyed dace", step: "eyes" })],
  });
  const code = open();
  await screen.until("eyed dace");
  passSeconds(1);
  screen.type("j");
  await screen.until(">15 eyed dace");
  const read = vi.spyOn(workshop, "whatNow");
  for (const tell of workshop.planners) tell();
  screen.type("k");
  await screen.until(">14 smelt walker");
  expect(read).not.toHaveBeenCalled();
  workshop.answer = { ...workshop.answer, basis: "plan", plan: { is: "kept", gap: 0 } };
  passSeconds(1);
  await screen.until("proven best");
  expect(read).toHaveBeenCalledTimes(1);
  screen.type("q");
  await code;
});
