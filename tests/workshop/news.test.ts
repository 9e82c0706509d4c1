import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";

let bench: BenchInAFolder;

beforeEach(() => {
  vi.useFakeTimers({ toFake: ["setInterval", "clearInterval"] });
  bench = new BenchInAFolder(at("Mon 18:00"));
});
afterEach(() => {
  vi.useRealTimers();
  bench.remove();
});

test("news of another terminal, and of this one, is told once each and within half a second, until it is stopped", async () => {
  const [here, there] = [await bench.workshop(), await bench.workshop()];
  const told = vi.fn();
  const stop = here.onNews(told);
  const note = { act: "note", at: bench.now, tags: [], text: "the heater was off" } as const;
  vi.advanceTimersByTime(5_000);
  expect(told).toHaveBeenCalledTimes(0);
  await there.perform(note);
  vi.advanceTimersByTime(500);
  expect(told).toHaveBeenCalledTimes(1);
  vi.advanceTimersByTime(5_000);
  expect(told).toHaveBeenCalledTimes(1);
  await here.perform(note);
  vi.advanceTimersByTime(500);
  expect(told).toHaveBeenCalledTimes(2);
  stop();
  await there.perform(note);
  vi.advanceTimersByTime(5_000);
  expect(told).toHaveBeenCalledTimes(2);
  here.close();
  there.close();
});
