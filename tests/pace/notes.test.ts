import { expect, test } from "vitest";
import { notesIn } from "../../src/pace/notes.ts";
import { at } from "../fixtures/week-time.ts";
import { weekOfTheWalkers } from "./week-of-the-walkers.ts";

test("the notes of the week stand in it by their time, those of pieces and those of the shop", () => {
  const diary = weekOfTheWalkers();
  diary.say(3, { kind: "noted", text: "a run" }, "Wed 18:59");
  diary.say(null, { kind: "noted", text: "the heater was off" }, "Tue 22:00");
  diary.say(1, { kind: "noted", text: "before" }, "last Sun 23:59");
  const week = { from: at("Mon 0:00"), to: at("next Mon 0:00") };
  expect(notesIn(week, diary.shop().acts)).toEqual([
    { at: at("Tue 22:00"), tags: [], text: "the heater was off" },
    { at: at("Wed 18:59"), tags: [3], text: "a run" },
  ]);
});
