/** Windows kept and missed where the week of the walkers does not go: mends, several windows, several colours. */
import { describe, expect, test } from "vitest";
import { windowRecords } from "../../src/pace/window-records.ts";
import type { Coat } from "../../src/process/coat.ts";
import { Diary } from "../fixtures/diary.ts";
import { inARow, makeCoat, makeProcess, makeStep, scuff, varnish } from "../fixtures/walker.ts";
import { at } from "../fixtures/week-time.ts";

/** Two coats of one kind, then hangers. */
function twoCoats(coat: Coat): Diary {
  const steps = inARow([
    makeStep("first", 6, { coat: coat.name }),
    makeStep("second", 6, { coat: coat.name }),
    makeStep("hangers", 10),
  ]);
  const diary = new Diary(makeProcess("two coats", steps, [coat]));
  diary.tag(1, "Mon 18:00");
  return diary;
}

const records = (diary: Diary, now: string) =>
  windowRecords(diary.piece(1), at(now)).map(({ next, shut, taken, minutes }) => ({
    next,
    shut,
    taken,
    minutes,
  }));

describe("the window of a coat", () => {
  test("is kept by taking the next before it shuts, though it be hung after", () => {
    const diary = twoCoats(varnish);
    diary.hang(1, "first", "Mon 18:10");
    diary.take(1, "second", "Tue 18:09");
    const kept = { next: "second", shut: at("Tue 18:10"), taken: at("Tue 18:09"), minutes: 0 };
    expect(records(diary, "Tue 18:09")).toEqual([kept]);
    diary.hang(1, "second", "Tue 18:20");
    expect(records(diary, "Tue 18:20")).toEqual([kept]);
  });

  test("is kept by hanging the next where it was never taken", () => {
    const diary = twoCoats(varnish);
    diary.hang(1, "first", "Mon 18:10");
    diary.hang(1, "second", "Tue 18:05");
    expect(records(diary, "Tue 18:05")).toMatchObject([{ taken: at("Tue 18:05"), minutes: 0 }]);
  });

  test("is missed at its shut: first the scuff asked for counts, then the one done", () => {
    const diary = twoCoats(varnish);
    diary.hang(1, "first", "Mon 18:10");
    const missed = { next: "second", shut: at("Tue 18:10"), taken: null, minutes: 5 };
    expect(records(diary, "Wed 18:00")).toEqual([missed]);
    diary.take(1, "second", "Wed 18:00", { part: "preparation" });
    expect(records(diary, "Wed 18:01")).toEqual([missed]);
    diary.hang(1, "second", "Wed 18:07", { part: "preparation" });
    expect(records(diary, "Wed 18:07")).toEqual([{ ...missed, minutes: 7 }]);
    diary.take(1, "second", "Wed 18:08");
    diary.hang(1, "second", "Wed 18:14");
    expect(records(diary, "Wed 18:14")).toEqual([{ ...missed, taken: at("Wed 18:08"), minutes: 7 }]);
  });

  test("counts for nothing where no coat is due upon it, or it never shuts", () => {
    const diary = twoCoats(varnish);
    diary.hang(1, "first", "Mon 18:10");
    diary.hang(1, "second", "Tue 18:05");
    // Hangers follow the second coat: however long they wait, no window of it is missed.
    expect(records(diary, "Sun 18:00")).toHaveLength(1);
    const open = twoCoats(makeCoat("open", { windows: [{ opens: 60, shuts: null, first: null }] }));
    open.hang(1, "first", "Mon 18:10");
    open.hang(1, "second", "Sun 18:10");
    expect(records(open, "Sun 18:10")).toEqual([]);
  });

  test("counts for nothing when the piece is scrapped before it shuts, and is missed when it is scrapped after", () => {
    const scrapped = (when: string) => {
      const diary = twoCoats(varnish);
      diary.hang(1, "first", "Mon 18:10");
      diary.say(1, { kind: "scrapped", why: "cracked" }, when);
      return records(diary, "Sun 18:00").length;
    };
    expect([scrapped("Tue 18:00"), scrapped("Tue 18:30")]).toEqual([0, 1]);
  });
});

describe("several windows", () => {
  test("a wet-on-wet one that is let go costs nothing while another that asks nothing is to come", () => {
    const coat = makeCoat("epoxy", {
      windows: [
        { opens: 0, shuts: 120, first: null },
        { opens: 600, shuts: 1440, first: null },
        { opens: 1440, shuts: 2880, first: scuff },
      ],
    });
    const diary = twoCoats(coat);
    diary.hang(1, "first", "Mon 18:00");
    expect(records(diary, "Tue 17:59")).toEqual([]);
    // 24 h after Mon 18:00 the last one without a scuff shuts.
    expect(records(diary, "Tue 18:00")).toMatchObject([{ shut: at("Tue 18:00"), minutes: 5 }]);
  });

  test("where every one asks for a scuff, it is the last that can be missed", () => {
    const diary = twoCoats(makeCoat("hard epoxy", { windows: [{ opens: 1440, shuts: 2880, first: scuff }] }));
    diary.hang(1, "first", "Mon 18:00");
    diary.take(1, "second", "Tue 19:00", { part: "preparation" });
    diary.hang(1, "second", "Tue 19:05", { part: "preparation" });
    diary.take(1, "second", "Tue 19:05");
    // The scuff had to be done anyhow: kept, at no cost.
    expect(records(diary, "Tue 19:06")).toEqual([
      { next: "second", shut: at("Wed 18:00"), taken: at("Tue 19:05"), minutes: 0 },
    ]);
  });
});

describe("a mend", () => {
  test("before the shut takes the window away with the coat; the coat laid again has its own", () => {
    const diary = twoCoats(varnish);
    diary.hang(1, "first", "Mon 18:10");
    diary.mend(1, "a run", 10, "first", "Tue 18:00");
    expect(records(diary, "Wed 18:00")).toEqual([]);
    diary.hang(1, "first", "Tue 18:10");
    diary.hang(1, "second", "Wed 18:05");
    expect(records(diary, "Wed 18:05")).toMatchObject([{ shut: at("Wed 18:10"), minutes: 0 }]);
  });

  test("after the shut does not undo that it was missed", () => {
    const diary = twoCoats(varnish);
    diary.hang(1, "first", "Mon 18:10");
    diary.mend(1, "too late for a scuff", 10, "first", "Tue 19:00");
    expect(records(diary, "Tue 19:00")).toMatchObject([{ shut: at("Tue 18:10"), taken: null }]);
  });

  test("that goes on from the next coat gives it a window from the mend", () => {
    const diary = twoCoats(varnish);
    diary.hang(1, "first", "Mon 18:10");
    diary.hang(1, "second", "Tue 18:05");
    diary.mend(1, "a run in the second", 10, "second", "Wed 18:00");
    // The first coat was kept Tue 18:05; levelled Wed 18:00, the next one's window is Wed 22:00 to Thu 18:00.
    diary.take(1, "second", "Thu 18:30");
    expect(records(diary, "Thu 18:30")).toMatchObject([
      { shut: at("Tue 18:10"), taken: at("Tue 18:05") },
      { shut: at("Thu 18:00"), taken: at("Thu 18:30") },
    ]);
  });
});

describe("a test whose answer sends the piece back to the second coat", () => {
  const tested = (when: string) => {
    const steps = inARow([
      makeStep("first", 6, { coat: "varnish" }),
      makeStep("second", 6, { coat: "varnish" }),
      makeStep("swim", 5, { result: { passes: { goes: "on" }, leaks: { backTo: "second" } } }),
    ]);
    const diary = new Diary(makeProcess("tested", steps, [varnish]));
    diary.tag(1, "Mon 18:00");
    diary.hang(1, "first", "Mon 18:10");
    diary.hang(1, "second", "Tue 9:00");
    diary.hang(1, "swim", when, { result: "leaks" });
    return diary;
  };
  const kept = { shut: at("Tue 18:10"), taken: at("Tue 9:00") };

  test("after the window has shut is no window missed", () => {
    expect(records(tested("Wed 18:00"), "Fri 18:00")).toMatchObject([kept]);
  });

  test("before it shuts gives the rest of it once more, to keep or to miss", () => {
    const again = { shut: at("Tue 18:10"), taken: null, minutes: 5 };
    expect(records(tested("Tue 12:00"), "Tue 18:10")).toMatchObject([kept, again]);
  });
});

test("between the colours of one step no window counts, after the last of them one does", () => {
  const steps = inARow([
    makeStep("colours", 5, { coat: "varnish", passes: "scheme" }),
    makeStep("clear", 6, { coat: "varnish" }),
  ]);
  const diary = new Diary(makeProcess("painted", steps, [varnish]));
  const colour = (name: string) => ({ colour: name, minutes: 5, flashOff: 10 });
  diary.tag(1, "Mon 18:00", { scheme: [colour("ochre"), colour("green")] });
  diary.hang(1, "colours", "Mon 18:10", { colour: "ochre" });
  expect(records(diary, "Wed 18:00")).toEqual([]);
  diary.hang(1, "colours", "Wed 18:10", { colour: "green" });
  expect(records(diary, "Thu 18:10")).toMatchObject([{ next: "clear", shut: at("Thu 18:10"), minutes: 5 }]);
});
