import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { runDashboard } from "../../src/dashboard/run-dashboard.ts";
import { at } from "../fixtures/week-time.ts";
import { FakeTerminal } from "./fake-terminal.ts";
import { FakeWorkshop } from "./fake-workshop.ts";
import { busyAnswer, evening, makeAnswer, makeBench, makeWaiting, makeWork } from "./made-answer.ts";

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

function open(env: Record<string, string> = {}): Promise<number> {
  return runDashboard({ workshop, stdin: screen.stdin, stdout: screen.stdout, env });
}

/** A second passes, on the clock and for the timers. */
function passSeconds(seconds: number): void {
  for (let second = 0; second < seconds; second++) {
    workshop.at += 1000;
    vi.advanceTimersByTime(1000);
  }
}

test("it opens on the alternate screen, shows the evening, and q leaves the terminal as it was", async () => {
  screen.terminal.write("$ dryline\r\n");
  const code = open();
  const lines = await screen.until("14 smelt walker");
  expect(lines[0]).toContain("Mon 23 Mar 18:42");
  expect(screen.terminal.buffer.active.type).toBe("alternate");
  expect(screen.raw).toBe(true);
  screen.type("q");
  expect(await code).toBe(0);
  expect((await screen.lines())[0]).toBe("$ dryline");
  expect(screen.terminal.buffer.active.type).toBe("normal");
  expect(screen.written.endsWith("\u001b[?25h\u001b[?1049l")).toBe(true);
  expect(screen.raw).toBe(false);
  expect(workshop.seen).toBe(evening);
});

test("Ctrl-C ends it with 130", async () => {
  const code = open();
  await screen.until("14 smelt walker");
  screen.type("\u0003");
  expect(await code).toBe(130);
});

test("a key acts, its outcome is told, and news is read", async () => {
  const code = open();
  await screen.until("14 smelt walker");
  workshop.answer = makeAnswer({ work: [makeWork({ tags: [21], name: "late dace" })] });
  screen.type("h");
  await screen.until("did hang");
  await screen.until("21 late dace");
  expect(workshop.performed).toMatchObject([{ act: "hang", tags: [11], at: evening }]);
  screen.type("q");
  await code;
});

test("news from another terminal is shown", async () => {
  const code = open();
  await screen.until("14 smelt walker");
  workshop.answer = makeAnswer({ work: [makeWork({ tags: [22], name: "from afar" })] });
  workshop.tellNews();
  await screen.until("22 from afar");
  screen.type("q");
  await code;
});

test("a countdown turns with the minute, and a piece opens in the second it opens", async () => {
  workshop.answer = makeAnswer({ waiting: [makeWaiting(12, { opens: evening + 90_000 })] });
  const code = open();
  await screen.until("opens 2 min");
  passSeconds(60);
  await screen.until("opens 1 min");
  workshop.answer = makeAnswer({ waiting: [makeWaiting(12, { state: "open", shuts: null })] });
  passSeconds(30);
  expect((await screen.until("= open")).join("\n")).not.toContain("opens");
  screen.type("q");
  await code;
});

test("another size is drawn at once, also a smaller one", async () => {
  const code = open();
  await screen.until("14 smelt walker");
  screen.resize(120, 40);
  await screen.until("dust-free 31 %, opens 23:04, shuts Tue 19:04");
  screen.resize(60, 15);
  const lines = await screen.until("more: dryline rack shows all");
  expect(lines).toHaveLength(15);
  expect(lines.at(-1)).toContain("Enter do it");
  screen.type("q");
  await code;
});

test("a refusal that may be overridden is told with how", async () => {
  workshop.outcome = () => ({
    refusal: { exit: 3, until: null, code: "coat half laid", tag: 11, step: "seal" },
  });
  const code = open();
  await screen.until("14 smelt walker");
  screen.type("l");
  expect((await screen.until("coat already begun")).join("\n")).not.toContain("! goes on");
  workshop.outcome = ({ at: now }) => ({
    refusal: {
      exit: 3,
      until: now,
      code: "too late",
      tag: 14,
      step: "first clear",
      since: now,
      preparation: null,
      mendFrom: "seal",
    },
  });
  screen.type("t");
  await screen.until("! goes on all the same");
  screen.type("!why\r");
  await vi.waitFor(() => expect(workshop.performed).toHaveLength(3));
  expect(workshop.performed[2]).toMatchObject({ act: "take", anyway: { reason: "why" } });
  screen.type("q");
  await code;
});

test("a step with answers asks which, and hangs with it", async () => {
  const refusal = { exit: 2, until: null, code: "no such answer", step: "water test" } as const;
  const hangs = workshop.outcome;
  workshop.outcome = (request) =>
    request.act === "hang" && request.result === null
      ? { refusal: { ...refusal, answers: ["passes", "tune"] } }
      : hangs(request);
  const code = open();
  await screen.until("14 smelt walker");
  screen.type("h");
  await screen.until("2  tune");
  screen.type("2");
  await screen.until("did hang");
  expect(workshop.performed.at(-1)).toMatchObject({ act: "hang", tags: [11], result: "tune" });
  screen.type("q");
  await code;
});

test("on opening it tells what opened since the maker was here", async () => {
  workshop.seen = at("Mon 12:00");
  workshop.answer = makeAnswer({ waiting: [makeWaiting(12, { opens: at("Mon 16:30"), state: "open" })] });
  const code = open();
  await screen.until("Since you were here: 12 opened 16:30.");
  screen.type("q");
  await code;
});

test("a clock behind the journal is told once, and nothing is decided before the maker answers", async () => {
  workshop.doubt = { kind: "behind", minutes: 61, wrote: null };
  const code = open();
  await screen.until("14 smelt walker");
  passSeconds(1);
  await screen.until("The clock is 1 h 01 behind what was already written down.");
  screen.type("\u001b");
  await screen.until("14 smelt walker");
  passSeconds(120);
  expect((await screen.lines()).join("\n")).not.toContain("behind");
  expect(workshop.performed).toEqual([]);
  screen.type("q");
  await code;
});

test("a clock that ran ahead is set back by w", async () => {
  workshop.doubt = { kind: "behind", minutes: 61, wrote: null };
  const code = open();
  await screen.until("14 smelt walker");
  passSeconds(1);
  await screen.until("w  the clock was wrong by 1 h 01: set what was written ahead of now back");
  // Enter alone sets nothing back.
  screen.type("\r");
  screen.type("w");
  await screen.until("did clock");
  expect(workshop.performed).toMatchObject([{ act: "clock", minutes: 61, since: null, until: null }]);
  expect(workshop.doubt).toBe(null);
  screen.type("q");
  await code;
});

test("a clock that ran slow and was put on is set forward by w, from where it was wrong", async () => {
  workshop.doubt = { kind: "jumped", minutes: 120, wrote: { since: 7, until: 9, minutes: -120 } };
  const code = open();
  await screen.until("14 smelt walker");
  passSeconds(1);
  await screen.until("The clock was moved on by 2 h while dryline was open.");
  expect((await screen.lines()).join(" ")).toMatch(/w {2}the clock was wrong by 2 h: .*forward/);
  screen.type("w");
  await screen.until("did clock");
  expect(workshop.performed).toMatchObject([{ act: "clock", minutes: -120, since: 7, until: 9 }]);
  screen.type("q");
  await code;
});

test("a clock that was moved and wrote nothing is only taken as right by r", async () => {
  workshop.doubt = { kind: "jumped", minutes: -5, wrote: null };
  const code = open();
  await screen.until("14 smelt walker");
  passSeconds(1);
  await screen.until("The clock was moved back by 5 min while dryline was open.");
  expect((await screen.lines()).join(" ")).not.toContain("w  the clock was wrong");
  screen.type("r");
  await screen.until("The clock is taken as right.");
  expect(workshop.performed).toEqual([]);
  screen.type("q");
  await code;
});

test("trouble in a reading ends it with that trouble, the terminal given back first", async () => {
  const code = open();
  await screen.until("14 smelt walker");
  workshop.trouble = new Error("the disk is gone");
  workshop.tellNews();
  await expect(code).rejects.toThrow("the disk is gone");
  await screen.lines();
  expect(screen.terminal.buffer.active.type).toBe("normal");
});

test("a picture that cannot be drawn ends it too, the terminal given back first", async () => {
  const code = open();
  await screen.until("14 smelt walker");
  workshop.answer = { ...busyAnswer(), waiting: null as never };
  workshop.tellNews();
  await expect(code).rejects.toThrow();
  await screen.lines();
  expect(screen.terminal.buffer.active.type).toBe("normal");
});

test("without colour the screen holds no style at all", async () => {
  const before = process.env.FORCE_COLOR;
  const code = open({ NO_COLOR: "1" });
  await screen.until("14 smelt walker");
  expect(process.env.FORCE_COLOR).toBe("0");
  screen.type("q");
  await code;
  if (before === undefined) delete process.env.FORCE_COLOR;
  else process.env.FORCE_COLOR = before;
});

test("quitting as the bench shuts leaves the last words of the evening on the terminal", async () => {
  workshop.answer = makeAnswer({
    bench: makeBench({ minutesLeft: 1, putAway: 0 }),
    waiting: [makeWaiting(12)],
  });
  const code = open();
  await screen.until("bench till 21:00");
  screen.type("q");
  expect(await code).toBe(0);
  await screen.until("Nothing hot, nothing mixed, nothing loaded.");
});

test("quitting in mid-evening leaves nothing behind", async () => {
  const code = open();
  await screen.until("14 smelt walker");
  screen.type("q");
  await code;
  expect((await screen.lines()).join("").trim()).toBe("");
});
