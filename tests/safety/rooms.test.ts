import { expect, test } from "vitest";
import { holdsOn } from "../../src/safety/fit-to-start.ts";
import { roomAir } from "../../src/safety/room-air.ts";
import { lastsInRoom, roomClears } from "../../src/safety/rooms.ts";
import type { Task } from "../../src/safety/task.ts";
import { Diary } from "../fixtures/diary.ts";
import { walker, walkerRules } from "../fixtures/walker.ts";
import { at, moment } from "../fixtures/week-time.ts";

function task(stepName: string, tags: readonly number[]): Task {
  const step = walker.steps.find(({ name }) => name === stepName);
  if (step === undefined) throw new Error(`no step ${stepName}`);
  return { tags, step, part: "step", preparation: null, coats: walker.coats, leaves: [] };
}

/** Why pouring lead is held, and until when, at a moment after a seal was hung Mon 19:00. */
function pouring(diary: Diary, when: string) {
  diary.came(1, "pour the ballast", "Mon 12:00", "Mon 12:00");
  diary.came(2, "drill", "Mon 12:00", "Mon 12:00");
  diary.say(2, { kind: "measured", what: "wood moisture", value: 8, unit: "%" }, "Mon 12:30");
  diary.hang(1, "seal", "Mon 19:00");
  return holdsOn(task("pour the ballast", [2]), diary.shop(), walkerRules, moment(when));
}

test("where nobody told of the room, vapour lasts as long as the file says: 40 min", () => {
  expect(pouring(new Diary(walker), "Mon 19:05")).toMatchObject([
    { code: "keep apart", because: "solvent vapour of 1", until: at("Mon 19:40") },
  ]);
});

test("a room whose fan is known clears by its air changes: 6 an hour, well mixed, is 46.05 min for 99 %", () => {
  const diary = new Diary(walker);
  diary.settle({ of: "room", name: "the shop", airChangesPerHour: 6, mixingFactor: 1 }, "Mon 10:00");
  expect(roomClears(diary.shop().settings, "the shop")).toBe(47);
  expect(pouring(diary, "Mon 19:05")).toMatchObject([{ until: at("Mon 19:47") }]);
});

test("a room whose ventilation is not known is taken as poor: 1 change, mixing 3, is 829 min", () => {
  const diary = new Diary(walker);
  diary.settle({ of: "room", name: "the shop", airChangesPerHour: null, mixingFactor: null }, "Mon 10:00");
  // ln(100) x 60 x 3 = 828.9.
  expect(roomClears(diary.shop().settings, "the shop")).toBe(829);
  expect(pouring(diary, "Mon 19:05")).toMatchObject([{ until: at("Mon 19:00") + 829 * 60_000 }]);
});

test("a quick fan never shortens what the file says", () => {
  const rooms = new Map([["the shop", { airChangesPerHour: 60, mixingFactor: 1 }]]);
  expect(lastsInRoom({ rooms, roomOf: new Map() }, "the shop", "solvent vapour", 40)).toBe(40);
});

test("only what hangs in the air waits for the air: dust settles, and warmth goes with the pot", () => {
  const rooms = new Map([["the shop", { airChangesPerHour: 1, mixingFactor: 1 }]]);
  expect(lastsInRoom({ rooms, roomOf: new Map() }, "the shop", "dust", 5)).toBe(5);
  expect(lastsInRoom({ rooms, roomOf: new Map() }, "the shop", "lead fume", 5)).toBe(277);
});

test("what is in another room holds nothing here", () => {
  const diary = new Diary(walker);
  diary.settle({ of: "in room", what: "lead pot", room: "yard" }, "Mon 10:00");
  expect(pouring(diary, "Mon 19:05")).toEqual([]);
});

test("hung in another room, a piece leaves its vapour where it was worked, and takes its wet coat along", () => {
  const diary = new Diary(walker);
  diary.settle({ of: "in room", what: "rack", room: "yard" }, "Mon 10:00");
  expect(pouring(diary, "Mon 19:05")).toMatchObject([
    { code: "keep apart", because: "solvent vapour of 1", until: at("Mon 19:40") },
  ]);
  const wet = roomAir(diary.shop(), moment("Mon 19:05")).filter(({ what }) => what === "wet coat");
  expect(wet).toMatchObject([{ room: "yard", until: at("Mon 19:45") }]);
});

test("a piece moved to another room takes its vapour there", () => {
  const diary = new Diary(walker);
  diary.settle({ of: "in room", what: "lead pot", room: "yard" }, "Mon 10:00");
  diary.settle({ of: "in room", what: "line", room: "yard" }, "Mon 10:00");
  expect(pouring(diary, "Mon 19:05")).toEqual([]);
  diary.say(1, { kind: "moved", place: "line" }, "Mon 19:06");
  const held = holdsOn(task("pour the ballast", [2]), diary.shop(), walkerRules, moment("Mon 19:07"));
  expect(held).toMatchObject([{ because: "solvent vapour of 1", until: at("Mon 19:40") }]);
});
