import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { runDashboard } from "../../src/dashboard/run-dashboard.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { FakeTerminal } from "./fake-terminal.ts";
import { FakeWorkshop } from "./fake-workshop.ts";
import { evening, makeAnswer, makePrepared, makeWaiting, makeWork } from "./made-answer.ts";

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setInterval", "clearInterval"] });
});

afterEach(() => {
  vi.useRealTimers();
});

const tags = Array.from({ length: 20 }, (_, index) => 11 + index);

test("a minute in which 20 countdowns, a cup and the clock turn writes at most 1 KB", async () => {
  const screen = new FakeTerminal(100, 40);
  const workshop = new FakeWorkshop();
  workshop.answer = makeAnswer({
    work: [makeWork(), makeWork({ tags: [15], step: "eyes" })],
    waiting: tags.map((tag) => makeWaiting(tag, { opens: evening + (200 + 7 * tag) * MINUTE })),
    prepared: [makePrepared()],
  });
  const code = runDashboard({ workshop, stdin: screen.stdin, stdout: screen.stdout, env: {} });
  const before = countdowns(await screen.until("18:42"));
  expect(before).toHaveLength(20);
  const written = screen.written.length;
  for (let second = 0; second < 60; second++) {
    workshop.at += 1000;
    vi.advanceTimersByTime(1000);
  }
  const after = countdowns(await screen.until("18:43"));
  expect(after.filter((said, index) => said === before[index])).toEqual([]);
  const bytes = Buffer.byteLength(screen.written.slice(written));
  expect(bytes).toBeGreaterThan(20);
  expect(bytes).toBeLessThanOrEqual(1024);
  screen.type("q");
  await code;
});

test("seconds in which nothing turns write nothing at all", async () => {
  const screen = new FakeTerminal(100, 40);
  const workshop = new FakeWorkshop();
  const code = runDashboard({ workshop, stdin: screen.stdin, stdout: screen.stdout, env: {} });
  await screen.until("18:42");
  workshop.at += 1000;
  vi.advanceTimersByTime(1000);
  await screen.until("18:42");
  const { written } = screen;
  for (let second = 0; second < 55; second++) {
    workshop.at += 1000;
    vi.advanceTimersByTime(1000);
  }
  await screen.lines();
  expect(screen.written).toBe(written);
  screen.type("q");
  await code;
});

/** The last words of each row of a piece, where its countdown is. */
function countdowns(lines: readonly string[]): string[] {
  return tags.flatMap((tag) => {
    const row = lines.find((line) => line.startsWith(` ${tag} frog back`));
    return row === undefined ? [] : [/opens (.+)$/.exec(row)?.[1] ?? ""];
  });
}
