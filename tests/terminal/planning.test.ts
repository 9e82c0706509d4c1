import { afterEach, beforeEach, expect, test } from "vitest";
import { MakersPlace } from "./pty.ts";

let place: MakersPlace;

/** Four walkers, and a bench that is always open. */
beforeEach(() => {
  place = new MakersPlace();
  place.done("hours", "daily 0:00-24:00");
  place.done("tag", "carved walker", "--count", "4");
});

afterEach(() => place.clear());

interface Now {
  readonly basis: string;
  readonly work: readonly { readonly tags: readonly number[] }[];
}

const now = (): Now => JSON.parse(place.done("now", "--json")) as Now;

test("a plan is searched for beside the dashboard, kept, and gone by in the next command", async () => {
  expect(now().basis).toBe("dispatch");
  const program = place.open();
  await program.until(/by plan/);
  program.type("q");
  expect(await program.exited).toBe(0);
  expect(now().basis).toBe("plan");
  expect(place.done("now")).toContain("Work now, by plan");
});

test("after an act in another terminal the plan is older, until an open dashboard has searched anew", async () => {
  const program = place.open();
  await program.until(/by plan/);
  program.type("q");
  await program.exited;
  place.done("note", "1", "a knot near the tail");
  expect(now().basis).toBe("dispatch");
  expect(place.done("now")).toContain("not by plan: it is older than the last act");
  const again = place.open();
  await again.until(/by plan/);
  expect(now().basis).toBe("plan");
});

test("an act at the dashboard is answered at once and planned for again", async () => {
  const program = place.open();
  await program.until(/by plan/);
  program.type("t");
  // Which of two equal steps stands first is the plan's affair; only sawing has a caution to be read.
  const asked = await program.until(/Read this first|in hand since/);
  if (asked.includes("Read this first")) program.type("c");
  await program.until(/in hand since/);
  await program.until(/by plan/);
  expect(now().basis).toBe("plan");
});

test("SIGTERM in the middle of planning gives the terminal back and ends every thread", async () => {
  const program = place.open();
  await program.until("4 carved walker");
  program.pty.kill("SIGTERM");
  expect(await program.exited).toBe(143);
  expect(await program.isGivenBack()).toEqual({ screen: "normal", cursor: true });
});
