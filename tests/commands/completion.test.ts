import { Readable } from "node:stream";
import { afterAll, beforeAll, expect, test } from "vitest";
import { runCommandLine } from "../../src/commands/command-line.ts";
import { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";
import { done } from "./type-lines.ts";

let bench: BenchInAFolder;

beforeAll(async () => {
  bench = new BenchInAFolder(at("Mon 18:00"));
  await done(bench, "Mon 18:00", "settings zone Europe/Dublin");
  await done(bench, "Mon 18:00", "settings place turntable 4");
  await done(bench, "Mon 18:00", "tag walker --name smelt --count 2");
});
afterAll(() => bench.remove());

/** What the shell is told when these words are typed, the last one so far. */
async function completions(...typed: readonly string[]): Promise<string[]> {
  let out = "";
  const exit = await runCommandLine(["completion", "for", "--", ...typed], {
    openWorkshop: () => bench.workshop(),
    version: "0.0.0",
    out: (text) => {
      out += text;
    },
    err: () => {},
    isTerminal: false,
    columns: null,
    openDashboard: async () => 0,
    input: () => Readable.from([]),
    ask: async () => "",
  });
  expect(exit).toBe(0);
  return out.split("\n").filter((line) => line !== "");
}

const words = (lines: readonly string[]) => lines.map((line) => line.split("  ")[0]);

test("commands, each with what it does", async () => {
  expect(await completions("ha")).toEqual(["hang  hands-on is done: the cure runs from here"]);
  expect(words(await completions(""))).toContain("now");
});

test("options of the command", async () => {
  expect(words(await completions("take", "14", "--t"))).toEqual(["--ticked"]);
  expect(words(await completions("now", "--"))).toEqual(["--at", "--json", "--help"]);
});

test("tags with the names of their pieces, then steps", async () => {
  expect(await completions("touch", "")).toEqual(["1  smelt", "2  smelt"]);
  expect(words(await completions("take", "1", "sea"))).toEqual(["seal"]);
  expect(words(await completions("touch", "1", ""))).toEqual(["tacky", "dry", "hard"]);
});

test("values of options, processes, stations, places and words of help", async () => {
  expect(words(await completions("mend", "1", "polish", "--then", "first"))).toEqual(["first clear"]);
  expect(words(await completions("tag", "walk"))).toEqual(["walker"]);
  expect(words(await completions("tag", '"walk'))).toEqual(["walker"]);
  expect(words(await completions("ready", "lead"))).toEqual(["lead pot"]);
  expect(words(await completions("move", "1", "turn"))).toEqual(["turntable", "turning wheel"]);
  expect(words(await completions("process", "sh"))).toEqual(["show"]);
  expect(words(await completions("help", "windo"))).toEqual(["window"]);
  expect(words(await completions("plan", "--with"))).toEqual(["--without"]);
  expect(words(await completions("plan", "--without", "S"))).toEqual(["Sat", "Sun"]);
  expect(words(await completions("plan", "--add", "6", "carved"))).toEqual(["carved walker"]);
  expect(await completions("plan", "--add", "")).toEqual([]);
  expect(await completions("nonsense", "")).toEqual([]);
});

test("settings, each with what it can be, hours, and the places that have an air", async () => {
  expect(words(await completions("settings", "pl"))).toEqual(["place"]);
  expect(words(await completions("settings", "place", "turn"))).toEqual(["turntable", "turning wheel"]);
  expect(words(await completions("settings", "process", "walk"))).toEqual(["walker"]);
  expect(words(await completions("settings", "in", "spray"))).toEqual(["spray corner"]);
  expect(words(await completions("settings", "touches", ""))).toEqual(["on", "off"]);
  expect(words(await completions("settings", "clock", ""))).toEqual(["12", "24"]);
  expect(words(await completions("settings", "zone", "Europe/Dub"))).toEqual(["Europe/Dublin"]);
  expect(await completions("settings", "place", "rack", "")).toEqual([]);
  expect(words(await completions("hours", "t"))).toEqual(["till"]);
  expect(words(await completions("air", "27C", "40%", "--in", "warm"))).toEqual(["warm box"]);
});
