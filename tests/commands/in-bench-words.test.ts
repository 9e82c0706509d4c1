import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";
import { done, refused } from "./type-lines.ts";

let bench: BenchInAFolder;

beforeEach(async () => {
  bench = new BenchInAFolder(at("Mon 17:50"));
  await done(bench, "Mon 17:50", "settings zone Europe/Dublin");
  await done(bench, "Mon 17:51", 'hours "weekdays 18-21"');
  await done(bench, "Mon 17:52", "tag walker --count 2");
});
afterEach(() => bench.remove());

test("what stands already is told as a maker would call it, not by its name in the journal", async () => {
  await done(bench, "Mon 18:00", "first 2");
  expect(await refused(bench, "Mon 18:01", "first 2", 3)).toBe(
    "Nothing would change, it is so already: which comes first.",
  );
  expect(await refused(bench, "Mon 18:01", "amend clock 1h", 3)).toBe(
    "Nothing would change, it is so already: nothing was written ahead of now.",
  );
});

test("hours that later hours lean on are named as hours", async () => {
  await done(bench, "Mon 18:00", 'hours "weekdays 18-22"');
  const { acts } = await bench.json<{ acts: { act: number; says: string }[] }>("undo --list");
  const first = acts.at(-2)?.act ?? 0;
  expect(await refused(bench, "Mon 18:01", `undo ${first}`, 3)).toMatch(
    /^"settled bench hours" cannot be undone while "settled bench hours" \(act \d+\) leans on it: undo that first\.$/,
  );
});

test("a step worked in another coat names the coat", async () => {
  expect(
    await done(bench, "Mon 18:00", 'route 1 --swap "last clear" --like "last clear" --coat varnish'),
  ).toMatch(/^1 gets last clear in varnish\. /);
  expect(
    await done(bench, "Mon 18:00", 'route 2 --swap "last clear" --like "first clear" --coat varnish'),
  ).toMatch(/^2 gets first clear in place of last clear, in varnish\. /);
});

test("a due date, a price and a buyer that no longer hold are taken off the tag with none", async () => {
  await done(bench, "Mon 18:00", "tag 1 --due Friday --price 28 --for Ann");
  expect(await done(bench, "Mon 18:01", "tag 1 --due none --price none --for none")).toBe(
    "1 not due any more, no price, for nobody yet.\n",
  );
});

test("what comes next is named where it does not follow the step just hung", async () => {
  const file = join(bench.folder, "processes", "walker.yaml");
  const hangers = "  - step: bend the hangers\n    station: bench\n    hands_on: 8 min\n    after: []\n";
  writeFileSync(file, `${readFileSync(file, "utf8").trimEnd()}\n${hangers}`);
  await done(bench, "Mon 18:00", 'tag walker --hung seal --since "18:00"');
  // The varnish hung 18:00 opens 22:00 and shuts a day after it was hung.
  expect(await done(bench, "Mon 18:10", "hang 3 bend")).toBe(
    "3 hung 18:10, bend the hangers. Second seal opens 22:00, shuts Tue 18:00.\n",
  );
});

test("hours open in a week are told in hours, however many they are", async () => {
  await done(bench, "Mon 17:55", 'hours "daily 9-17"');
  // Daily 9 to 17 from Monday on; asked at 18:00 six days are to come, 6 x 8 h, and Monday's 8 h were.
  expect(await done(bench, "Mon 18:00", "week")).toMatch(
    /hands-on 0 min of 8 h open, 0 %; bench left this week 48 h\n/,
  );
});

test("the rack is asked for a time to come: a bare 23:00 in the morning is tonight's", async () => {
  await done(bench, "Mon 18:10", 'tag walker --hung seal --since "18:00"');
  bench.now = at("Tue 10:00");
  // 13 h ahead: of what was, it would be yesterday's.
  const rack = await bench.json<{ at: string }>("rack --at 23:00");
  expect(rack.at).toBe("2026-03-24T23:00:00+00:00");
});

test("a word that names no step is told so, not taken for a colour while painting is far off", async () => {
  expect(await refused(bench, "Mon 18:00", "take 1 zzz", 2)).toMatch(/^1 has no step "zzz": /);
});

test("a process that is not found may be in a file that cannot be used: that is said", async () => {
  writeFileSync(join(bench.folder, "processes", "mine.yaml"), "process: mine\nsteps: none\n");
  expect(await refused(bench, "Mon 18:00", "tag mine", 2)).toMatch(
    /^There is no process "mine": .*; some files cannot be used, dryline process check says why\.$/,
  );
});

test("a forgotten pass is hung as usual when now asks whether it was: after the minutes of its scheme", async () => {
  await done(
    bench,
    "Mon 18:00",
    'tag walker --name perch --scheme "ochre 4/5" --hung "second seal" --since 12:30',
  );
  await done(bench, "Mon 20:30", "take 3");
  expect(await done(bench, "Tue 18:00", "now")).toContain(
    "3 colours in hand since Mon 20:30: hung Mon 20:34, as usual?",
  );
  expect(await done(bench, "Tue 18:01", "hang 3 --as-usual")).toMatch(
    /^3 hung Mon 20:34 as usual, colours, ochre/,
  );
});
