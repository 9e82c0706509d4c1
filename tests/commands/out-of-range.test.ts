import { afterEach, beforeEach, expect, test } from "vitest";
import type { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { benchAfter, done, refused } from "./type-lines.ts";

let bench: BenchInAFolder;

beforeEach(async () => {
  bench = await benchAfter("Mon 17:50", ["settings zone Europe/Dublin", "tag walker --count 2"]);
});
afterEach(() => bench.remove());

/** One letter more than a name may have: 200. */
const long = "x".repeat(201);
const shown = "x".repeat(60);

test("a name that is too long is refused in one sentence, as no fault of our own", async () => {
  for (const [line, sentence] of [
    [`tag walker --name ${long}`, `Name cannot be "${shown}": it takes 1 to 200 characters.`],
    [`tag 1 --name ${long}`, `Name cannot be "${shown}": it takes 1 to 200 characters.`],
    [`tag walker --for ${long}`, `For cannot be "${shown}": it takes 1 to 200 characters.`],
    [`tag walker --scheme ${long}`, `Colour cannot be "${shown}": it takes 1 to 200 characters.`],
    [`measure 1 ${long} 5 g`, `What was measured cannot be "${shown}": it takes 1 to 200 characters.`],
    [`settings place ${long} 8`, `Place cannot be "${shown}": it takes 1 to 200 characters.`],
    [
      `route 1 --put ${long} --like drill --after drill`,
      `Name cannot be "${shown}": it takes 1 to 200 characters.`,
    ],
    [`process new ${long}`, "The name must have at most 60 letters, without control characters."],
    [`coat new ${long}`, "The name must have at most 60 letters, without control characters."],
  ] as const) {
    expect(await refused(bench, "Mon 18:00", line, 2)).toBe(sentence);
  }
});

test("wood moisture that cannot be is refused, so that a slip of the keys does not open the lead pot", async () => {
  const sentence = (value: number) => `Percentage cannot be "${value}": it takes a number from 0 to 300.`;
  expect(await refused(bench, "Mon 18:00", "measure 1 moisture -8 %", 2)).toBe(sentence(-8));
  expect(await refused(bench, "Mon 18:00", "measure 1 moisture 800 %", 2)).toBe(sentence(800));
  expect(await refused(bench, "Mon 18:00", "measure 1 ballast -12 g", 2)).toBe(
    'Measured value cannot be "-12": it takes a number from 0 on.',
  );
  // A number in a form that is not read is no number with an odd unit.
  expect(await refused(bench, "Mon 18:00", "measure 1 ballast 1e4 g", 2)).toMatch(/^Say what was measured/);
  expect(await done(bench, "Mon 18:00", "measure 1 pot -4 °C")).toMatch(/^1 measured 18:00, pot -4 °C/);
  expect(await done(bench, "Mon 18:00", "measure 1 moisture 8 %")).toMatch(/^1 measured 18:00/);
});

test("hands-on that no step can have is refused as it is said, as no fault of our own", async () => {
  const sentence = "A step has 1 minute to a day of hands-on: write --minutes 1 to 1440.";
  const put = (minutes: string) => `route 1 --put trim --like drill --after drill --minutes ${minutes}`;
  for (const minutes of ["0", "1441", '"400 d"'])
    expect(await refused(bench, "Mon 18:00", put(minutes), 2)).toBe(sentence);
  expect(await done(bench, "Mon 18:00", put("1440"))).toMatch(/^1 also gets trim after drill/);
});

test("hours that close before they open say the times that would do, as clock readings", async () => {
  expect(await refused(bench, "Mon 18:00", "hours weekdays 21-18", 2)).toBe(
    'Closing cannot be "18:00 of the next day": it takes a time from 21:01 to 12:00 of the next day.',
  );
});

test("a count that is none is told as what would be one", async () => {
  const range = 'is no whole number from 0 to 999999, nor "none".';
  expect(await refused(bench, "Mon 18:00", "settings place rack -1", 2)).toBe(`"-1" ${range}`);
  expect(await refused(bench, "Mon 18:00", "settings hands 1000000", 2)).toBe(`"1000000" ${range}`);
  expect(await refused(bench, "Mon 18:00", "settings hands 1000", 2)).toBe(
    'Hands cannot be "1000": it takes a whole number from 1 to 20.',
  );
});

test("a piece said to hang since a time to come is told so by the clock on the wall", async () => {
  expect(await refused(bench, "Mon 18:00", 'tag walker --hung seal --since "tomorrow 20:00"', 2)).toBe(
    "Tue 20:00 has not come, it is 18:00: say when it was.",
  );
});

test("a piece that no work was done on hangs nowhere, and cannot be moved", async () => {
  expect(await refused(bench, "Mon 18:00", "move 1 rack", 3)).toBe(
    "1 is not begun, so it hangs nowhere yet: work a step of it first.",
  );
});

test("a place, station or room that is not known is refused, so that a slip of the keys loses neither hooks nor air", async () => {
  await done(bench, "Mon 17:55", "settings place rack 8");
  await done(bench, "Mon 17:55", "take 1 shape --ticked dust");
  expect(await refused(bench, "Mon 18:00", "hang 1 --place rakc", 2)).toBe(
    'There is no place "rakc": perhaps "rack"; settings place "rakc" 4 makes it one, of 4 hooks.',
  );
  await done(bench, "Mon 18:10", "hang 1 --place rack");
  expect(await refused(bench, "Mon 18:11", "move 1 attic", 2)).toMatch(/^There is no place "attic": there /);
  expect(await refused(bench, "Mon 18:11", 'settings in "lead pto in the shop"', 2)).toMatch(
    /^There is no station or place "lead pto": perhaps "lead pot"\.$/,
  );
  expect(await refused(bench, "Mon 18:11", 'settings in "lead pot in yard"', 2)).toBe(
    'There is no room "yard": there is none yet; settings room "yard" makes it one.',
  );
  await done(bench, "Mon 18:12", "settings room yard");
  expect(await done(bench, "Mon 18:12", 'settings in "lead pot in yard"')).toBe("Lead pot is in yard.\n");
});

test("figures of a room that cannot be read do not end as its name", async () => {
  for (const said of ["yard 40 m3 fan", "yard -40 m3", "yard 40 m3 fan many 3", "yard mixing"]) {
    expect(await refused(bench, "Mon 18:00", `settings room ${said}`, 2)).toBe(
      `"${said}" is no room with its figures: write garage 37 m3 fan 300, or garage changes 6 mixing 3.`,
    );
  }
  expect(await done(bench, "Mon 18:00", "settings room bay 2 fan room")).toMatch(/^Bay 2 fan room: /);
});

test("a measurement without its unit is asked for it, and what is so already is named", async () => {
  expect(await refused(bench, "Mon 18:00", "measure 1 ballast 12.5", 2)).toBe(
    'Say its unit too: measure 1 "ballast" 12.5 %.',
  );
  expect(await refused(bench, "Mon 18:00", "hours back", 3)).toBe(
    "Nothing would change, it is so already: no days away are ahead.",
  );
  expect(await refused(bench, "Mon 18:00", 'tag walker --scheme "green -5"', 2)).toMatch(
    /^"green -5" is no pass of a scheme/,
  );
});
