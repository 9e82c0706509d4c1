import { expect, test } from "vitest";
import { type EventRow, reviveEvent } from "../../src/journal/revive-event.ts";
import { newestVersion } from "../../src/journal/upgrades.ts";

/** Two releases in which a note changed: its text had been `said`, and then `words`. */
const upgrades = {
  noted: [
    ({ said }: Readonly<Record<string, unknown>>) => ({ words: said }),
    ({ words }: Readonly<Record<string, unknown>>) => ({ text: words }),
  ],
};

const row = (v: number, body: object): EventRow => ({
  ...{ seq: 7, act: 7, v, kind: "noted", at: 1, recorded: 2, by: "maker", tag: null, station: null },
  ...{ together: 1, body: JSON.stringify(body) },
});

test.each([
  [1, { said: "cold" }],
  [2, { words: "cold" }],
  [3, { text: "cold" }],
])("an event of version %i is brought up to date, one step at a time", (v, body) => {
  expect(reviveEvent(row(v, body), upgrades)).toMatchObject({ kind: "noted", text: "cold", v: 3, seq: 7 });
});

test("what an upgrade makes must have today's form", () => {
  expect(reviveEvent(row(1, { lost: "cold" }), upgrades)).toBe('what it says ("noted") is damaged');
});

test("an upgrade that fails on a damaged body sets the event aside", () => {
  const failing = {
    noted: [
      () => {
        throw new Error("no such field");
      },
    ],
  };
  expect(reviveEvent(row(1, {}), failing)).toBe('what it says ("noted") cannot be read');
});

test("each kind's newest version is one more than it has upgrades", () => {
  expect(newestVersion("noted", upgrades)).toBe(3);
  expect(newestVersion("taken", upgrades)).toBe(1);
});
