import { EventEmitter } from "node:events";
import { PassThrough } from "node:stream";
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import { runDashboard } from "../../src/dashboard/run-dashboard.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { FakeWorkshop } from "../dashboard/fake-workshop.ts";
import { evening, makeAnswer, makeWaiting, makeWork } from "../dashboard/made-answer.ts";
import { MakersPlace } from "../terminal/pty.ts";
import type { Row } from "./compare-runs.ts";

/** The last words of a whole frame. */
const WHOLE = "q quit";

/** It runs the program as built. */
export const runsBuilt = true;

/** How soon the dashboard is there, how soon a key shows, what a tick writes, and whether it stays light. */
export async function measure(): Promise<Row[]> {
  return [...(await firstFrame()), ...(await keyToScreen()), ...(await ticks())];
}

/** From starting the program to its first whole frame, with 20 pieces out, against a Node that does nothing. */
async function firstFrame(): Promise<Row[]> {
  const place = new MakersPlace();
  place.done("tag", "carved walker", "--count", "20");
  const bare: number[] = [];
  const frames: number[] = [];
  for (let round = 0; round < 15; round++) {
    const begun = performance.now();
    await place.run(process.execPath, ["-e", "0"]).exited;
    bare.push(performance.now() - begun);
    const opened = performance.now();
    const program = place.open();
    await sees(program.pty, WHOLE);
    frames.push(performance.now() - opened);
    await program.end();
  }
  await place.clear();
  const base = at(bare, 0.5);
  return [
    { name: "node -e 0 on a terminal", value: base, unit: "ms", ratio: 1 },
    {
      name: "first whole frame, 20 pieces (at most 3x)",
      value: at(frames, 0.5),
      unit: "ms",
      ratio: at(frames, 0.5) / base,
    },
  ];
}

/** From a key sent to the first byte of what it changes, 200 pieces out, the marker going down and up. */
async function keyToScreen(): Promise<Row[]> {
  const place = new MakersPlace();
  for (let count = 0; count < 200; count += 20) place.done("tag", "carved walker", "--count", "20");
  const program = place.open({ columns: 100, rows: 40 });
  await sees(program.pty, WHOLE);
  const times: number[] = [];
  for (let key = 0; key < 220; key++) {
    const sent = performance.now();
    const seen = sees(program.pty, "\u001b[?2026l");
    program.type(key % 20 < 10 ? "j" : "k");
    await seen;
    // The first keys meet cold code.
    if (key >= 20) times.push(performance.now() - sent);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  await place.clear();
  return [
    { name: "key to screen, 200 pieces, median", value: at(times, 0.5), unit: "ms", ratio: null },
    { name: "key to screen, 200 pieces, p95 (at most 16)", value: at(times, 0.95), unit: "ms", ratio: null },
  ];
}

/** The dashboard in this process, with Ink as it is built: 5,000 ticks in which all 20 countdowns change. */
async function ticks(): Promise<Row[]> {
  const workshop = new FakeWorkshop();
  workshop.answer = makeAnswer({
    work: [makeWork()],
    waiting: Array.from({ length: 20 }, (_, index) =>
      makeWaiting(11 + index, { opens: evening + (200 + 7 * index) * MINUTE }),
    ),
  });
  const output = new CountingTerminal();
  const input = Object.assign(new PassThrough(), {
    isTTY: true,
    setRawMode: () => {},
    ref: () => {},
    unref: () => {},
  });
  const ended = runDashboard({
    workshop,
    stdin: input as unknown as NodeJS.ReadStream,
    stdout: output as unknown as NodeJS.WriteStream,
    env: {},
  });
  while (!output.last.includes(WHOLE)) await turn();
  const sizes: number[] = [];
  const tick = async (count: number) => {
    for (let index = 0; index < count; index++) {
      const { writes } = output;
      workshop.at = evening + ((index % 60) + 1) * MINUTE;
      workshop.tellNews();
      while (output.writes === writes) await turn();
      // Every hour is begun anew, which moves all bars back by an hour: no tick of a clock does that.
      if (index % 60 !== 0) sizes.push(output.last.length);
    }
  };
  await tick(1000);
  const before = heap();
  sizes.length = 0;
  await tick(5000);
  const grown = heap() - before;
  const entries = performance.getEntries().length;
  input.write("q");
  await ended;
  return [
    { name: "bytes a tick, 20 countdowns, median", value: at(sizes, 0.5), unit: "bytes", ratio: null },
    { name: "bytes a tick, most (at most 1024)", value: Math.max(...sizes), unit: "bytes", ratio: null },
    {
      name: "heap grown over 5,000 ticks (at most 1024)",
      value: grown / 1024,
      unit: "KiB",
      ratio: null,
    },
    { name: "performance entries gathered (0)", value: entries, unit: "", ratio: null },
  ];
}

/** Takes what is written to it and keeps only the last of it. */
class CountingTerminal extends EventEmitter {
  readonly isTTY = true;
  readonly columns = 100;
  readonly rows = 40;
  writes = 0;
  last = "";

  write(text: string): boolean {
    this.writes++;
    this.last = text;
    return true;
  }
}

function sees(pty: { onData: (listener: (text: string) => void) => { dispose(): void } }, wanted: string) {
  return new Promise<void>((resolve) => {
    let seen = "";
    const listening = pty.onData((text) => {
      seen += text;
      if (!seen.includes(wanted)) return;
      listening.dispose();
      resolve();
    });
  });
}

function turn(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

/** Bytes in use once all that can be collected is. */
function heap(): number {
  setFlagsFromString("--expose-gc");
  const collect = runInNewContext("gc") as () => void;
  collect();
  collect();
  return process.memoryUsage().heapUsed;
}

/** The value below which this share of them lies. */
function at(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(Math.floor(sorted.length * share), sorted.length - 1)] ?? Number.NaN;
}
