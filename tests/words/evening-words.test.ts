import { describe, expect, test } from "vitest";
import { sayAway } from "../../src/words/say-away.ts";
import { sayCaution, sayCautionShort } from "../../src/words/say-caution.ts";
import { isClosing, sayClosing } from "../../src/words/say-closing.ts";
import { sayDelays } from "../../src/words/say-delays.ts";
import { saySince } from "../../src/words/say-since.ts";
import { sayWarning } from "../../src/words/say-warning.ts";
import { scuff, walkerRules } from "../fixtures/walker.ts";
import { at, eveningHours } from "../fixtures/week-time.ts";
import { hanging, nothing, pot, speechAt } from "./made-rows.ts";

describe("the last words of an evening", () => {
  test("nothing stands: next opening and first shut", () => {
    const answer = { ...nothing, waiting: [hanging, { ...hanging, tag: 2 }] };
    expect(sayClosing(answer, speechAt("Mon 20:59"))).toEqual([
      "Nothing hot, nothing mixed, nothing loaded.",
      "Next opens 23:04 (1 and 2), first shuts Tue 19:04 (1 and 2), the bench opens again Tue 18:00, in 21 h 01.",
    ]);
  });

  test("a hot pot is told first, and they are due only when the maker is about to go", () => {
    expect(sayClosing({ ...nothing, prepared: [pot] }, speechAt("Mon 20:59"))[0]).toBe(
      "Put away before you go: lead pot: melt lead, keeps till 21:03, 5 min to put away.",
    );
    expect(isClosing(nothing)).toBe(true);
    expect(isClosing({ ...nothing, bench: { ...nothing.bench, minutesLeft: 16 } })).toBe(false);
    expect(isClosing({ ...nothing, bench: { ...nothing.bench, closes: null, minutesLeft: 0 } })).toBe(true);
  });
});

test("since you were here: what opened, shut and grew hard, oldest first, pieces that fare alike together", () => {
  const answer = {
    ...nothing,
    at: at("Tue 18:10"),
    waiting: [hanging, { ...hanging, tag: 2 }],
    prepared: [pot],
  };
  expect(saySince(answer, at("Mon 20:59"), speechAt("Tue 18:10"))).toEqual([
    "melt lead at the lead pot kept till Mon 21:03",
    "1 and 2 opened Mon 23:04",
    "1 and 2 dry-hard 07:04",
  ]);
  expect(saySince(answer, at("Tue 18:09"), speechAt("Tue 18:10"))).toEqual([]);
});

test("since you were here: a window that shut is told once, not as opened for its preparation too", () => {
  const shut = { ...hanging, state: "shut" as const, opens: at("Tue 12:30"), shuts: at("Tue 12:30") };
  const answer = { ...nothing, at: at("Tue 18:10"), waiting: [{ ...shut, hard: null }] };
  expect(saySince(answer, at("Mon 20:59"), speechAt("Tue 18:10"))).toEqual(["1 shut 12:30"]);
});

describe("days away", () => {
  const away = { from: "2026-03-30", to: "2026-04-12" };
  const hours = { ...eveningHours, away: [away] };
  const shutting = {
    ...hanging,
    tag: 3,
    step: "first clear",
    shuts: at("next Mon 13:00"),
    opens: at("Sun 16:00"),
  };

  test("with no bench before them: which windows shut, and that nothing can be done", () => {
    const answer = { ...nothing, bench: { ...nothing.bench, closes: null }, waiting: [shutting] };
    // Sunday evening; the bench opens next on Monday the 13th of April.
    expect(sayAway(answer, away, { ...speechAt("Sun 20:00"), hours })).toEqual([
      "3 first clear shuts Mon 13:00.",
      "No bench is open before you go, so nothing can be brought to a resting stage first.",
    ]);
  });

  test("with bench time before them: that it can be used", () => {
    const answer = { ...nothing, bench: { ...nothing.bench, closes: null }, waiting: [shutting] };
    expect(sayAway(answer, away, { ...speechAt("Fri 12:00"), hours })[1]).toBe(
      "The bench opens 18:00, at the last till Sat 16:00: bring 3 to a resting stage before you go.",
    );
    expect(sayAway(answer, away, { ...speechAt("Fri 18:30"), hours })[1]).toBe(
      "The bench is open till 21:00, at the last till Sat 16:00: bring 3 to a resting stage before you go.",
    );
    expect(sayAway(answer, away, { ...speechAt("Sat 12:00"), hours })[1]).toBe(
      "The bench is open till 16:00: bring 3 to a resting stage before you go.",
    );
    // What shuts before the bench does on Saturday shuts at no day away.
    const sooner = { ...answer, waiting: [{ ...shutting, shuts: at("Sat 15:00") }] };
    expect(sayAway(sooner, away, { ...speechAt("Fri 12:00"), hours })).toEqual([
      "No window shuts meanwhile.",
    ]);
    expect(sayAway(nothing, away, { ...speechAt("Fri 12:00"), hours })).toEqual([
      "No window shuts meanwhile.",
    ]);
  });
});

test("this one first: what it brings, and whom it delays by how much", () => {
  const before = new Map([
    [4, at("Sat 15:50")],
    [5, at("Sun 20:00")],
    [6, null],
  ]);
  const after = new Map([
    [4, at("Sun 20:00")],
    [5, at("Sat 15:50")],
    [6, null],
  ]);
  // Clocks go forward between: Sat 15:50 to Sun 20:00 is 27 h 10.
  expect(sayDelays([5], { before, after, broken: [4, 5] }, speechAt("Fri 18:00"))).toEqual([
    "5 would be finished Sat 15:50, not Sun 20:00.",
    "It delays 4 by 27 h 10, to Sun 20:00.",
    "Too late then for the day promised: 4.",
  ]);
  expect(sayDelays([5], { before, after: before, broken: [] }, speechAt("Fri 18:00"))).toEqual([
    "5 would be finished Sun 20:00 either way.",
    "It delays nobody.",
  ]);
});

test("a coat whose window passes while the bench is shut is told of before it is laid", () => {
  // Varnish hung Saturday 12:00 opens 16:00 as the bench shuts, and shuts Sunday 13:00 by the new clock.
  const ahead = {
    opens: at("Sat 16:00"),
    shuts: at("Sun 13:00"),
    preparation: scuff,
    nextMinutes: 8,
    hangBy: at("Sat 11:52"),
    layFrom: at("next Mon 18:00"),
  };
  expect(sayWarning(ahead, speechAt("Sat 12:00"))).toBe(
    "hung now it opens 16:00 and shuts Sun 13:00 with no bench open in time: lay it Mon 18:00, or count on scuff 5 min; for a next coat of 8 min in this bench session it had to hang by 11:52",
  );
  expect(
    sayWarning({ ...ahead, preparation: null, hangBy: null, layFrom: null }, speechAt("Sat 12:00")),
  ).toBe("hung now it opens 16:00 and shuts Sun 13:00 with no bench open in time: count on a mend");
});

test("a caution is told whole, with who comes first, and in one line after that", () => {
  const caution = walkerRules.cautions["molten lead"];
  if (caution === undefined) throw new Error("the fixture has no molten lead");
  expect(sayCaution(caution)).toEqual([
    "Molten lead. molten lead can hurt",
    "  Do: read this",
    "  Never: skip this",
    "  Source: made up for tests",
    "Your local code, the data sheet and a licensed professional come first.",
  ]);
  const saysNever = { ...caution, never: ["Never skip this"] };
  expect(sayCaution(saysNever)[2]).toBe("  Never skip this");
  expect(sayCautionShort(caution)).toBe("mind the molten lead");
});
