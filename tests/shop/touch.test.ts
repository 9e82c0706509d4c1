/** What a touch test says before the clock, over it, and instead of it. */
import { describe, expect, test } from "vitest";
import { coatState } from "../../src/shop/coat-state.ts";
import { stepState } from "../../src/shop/step-state.ts";
import { Diary } from "../fixtures/diary.ts";
import { acrylic, inARow, makeCoat, makeProcess, makeStep, scuff, varnish } from "../fixtures/walker.ts";
import { at, moment } from "../fixtures/week-time.ts";

const oil = makeCoat("oil", {
  feelFirst: true,
  stages: { "dust-free": 60, "tack-free": 240, "dry-hard": 1440 },
  windows: [
    { opens: 240, shuts: 1440, first: null },
    { opens: 1440, shuts: null, first: scuff },
  ],
});

/** Two coats of one kind, then work that waits for dry-hard and a coat that waits for tack-free. */
function laid(coat: typeof varnish, when = "Mon 18:00"): Diary {
  const steps = [
    makeStep("first", 5, { coat: coat.name }),
    makeStep("second", 5, { coat: coat.name, after: ["first"] }),
    makeStep("glaze", 5, { coat: coat.name, after: ["first"], waitsFor: "tack-free" }),
    makeStep("eyes", 5, { after: ["first"] }),
  ];
  const diary = new Diary(makeProcess("touched", steps, [coat]));
  diary.tag(1, "Mon 17:00");
  diary.hang(1, "first", when);
  return diary;
}

const state = (diary: Diary, step: string, when: string) => stepState(diary.piece(1), step, moment(when));

describe("varnish: window 4 h to 24 h, tack-free 2 h, dry-hard 12 h, hung Mon 18:00", () => {
  test("by the clock: window 22:00, tack-free 20:00, dry-hard Tue 6:00", () => {
    const diary = laid(varnish);
    expect(state(diary, "second", "Mon 18:30")).toMatchObject({ opens: at("Mon 22:00"), because: "window" });
    expect(state(diary, "glaze", "Mon 18:30")).toMatchObject({
      opens: at("Mon 20:00"),
      shuts: at("Tue 18:00"),
      because: "stage",
      stage: "tack-free",
    });
    expect(state(diary, "eyes", "Mon 18:30")).toMatchObject({
      opens: at("Tue 6:00"),
      shuts: null,
      stage: "dry-hard",
    });
  });

  test("a touch that says dry vouches for tack-free, not for the window nor for dry-hard", () => {
    const diary = laid(varnish);
    diary.touch(1, "first", "dry", "Mon 19:00");
    expect(state(diary, "glaze", "Mon 19:00")).toMatchObject({ is: "open", since: at("Mon 19:00") });
    expect(state(diary, "second", "Mon 19:00")).toMatchObject({ is: "drying", opens: at("Mon 22:00") });
    expect(state(diary, "eyes", "Mon 19:00")).toMatchObject({ is: "drying", opens: at("Tue 6:00") });
  });

  test("one that says hard vouches for dry-hard too, from its moment", () => {
    const diary = laid(varnish);
    diary.touch(1, "first", "hard", "Mon 21:00");
    expect(state(diary, "eyes", "Mon 21:00")).toMatchObject({ is: "open", since: at("Mon 21:00") });
    expect(state(diary, "glaze", "Mon 21:00")).toMatchObject({ is: "open", since: at("Mon 20:00") });
  });

  test("tacky takes the clock's word away from all of them, till one says dry: then the clock counts again", () => {
    const diary = laid(varnish);
    diary.touch(1, "first", "tacky", "Mon 23:00");
    for (const step of ["second", "glaze", "eyes"]) {
      expect(state(diary, step, "Tue 10:00")).toMatchObject({ is: "drying", opens: null, because: "tacky" });
    }
    diary.touch(1, "first", "dry", "Tue 10:00");
    // Its window opened Mon 22:00 and dry-hard was Tue 6:00: both now count from 10:00.
    for (const step of ["second", "glaze", "eyes"]) {
      expect(state(diary, step, "Tue 10:00")).toMatchObject({ is: "open", since: at("Tue 10:00") });
    }
    expect(state(diary, "second", "Tue 10:00")).toMatchObject({ shuts: at("Tue 18:00") });
  });

  test("lifted before the clock's time it waits for the clock", () => {
    const diary = laid(varnish);
    diary.touch(1, "first", "tacky", "Mon 19:00");
    diary.touch(1, "first", "dry", "Mon 20:30");
    expect(state(diary, "second", "Mon 20:30")).toMatchObject({ is: "drying", opens: at("Mon 22:00") });
  });

  test("tacky past the shut is still to be felt before the scuff", () => {
    const diary = laid(varnish);
    diary.touch(1, "first", "tacky", "Tue 17:00");
    expect(state(diary, "second", "Tue 18:00")).toMatchObject({
      is: "drying",
      opens: null,
      because: "tacky",
    });
    diary.touch(1, "first", "dry", "Tue 19:00");
    expect(state(diary, "second", "Tue 19:00")).toMatchObject({ is: "shut", preparation: { do: "scuff" } });
  });

  test("touches of the future say nothing yet", () => {
    const diary = laid(varnish);
    diary.touch(1, "first", "hard", "Mon 21:00");
    expect(state(diary, "eyes", "Mon 20:59")).toMatchObject({ is: "drying", opens: at("Tue 6:00") });
  });
});

describe("an oil to be felt first", () => {
  test("never opens by the clock alone, however late", () => {
    const diary = laid(oil);
    for (const step of ["second", "glaze", "eyes"]) {
      expect(state(diary, step, "next Mon 12:00")).toMatchObject({
        is: "drying",
        opens: null,
        because: "feel first",
        coat: "oil",
        step: "first",
      });
    }
  });

  test("dry opens its window, and work that waits for tack-free; hard that which waits for dry-hard", () => {
    const diary = laid(oil);
    diary.touch(1, "first", "dry", "Mon 23:30");
    expect(state(diary, "second", "Mon 23:30")).toMatchObject({ is: "open", since: at("Mon 23:30") });
    expect(state(diary, "glaze", "Mon 23:30")).toMatchObject({ is: "open", since: at("Mon 23:30") });
    expect(state(diary, "eyes", "Mon 23:30")).toMatchObject({
      is: "drying",
      opens: null,
      because: "feel first",
    });
    diary.touch(1, "first", "hard", "Wed 18:00");
    expect(state(diary, "eyes", "Wed 18:00")).toMatchObject({ is: "open", since: at("Wed 18:00") });
  });

  test("dry before its sheet's time does not open the window sooner", () => {
    const diary = laid(oil);
    diary.touch(1, "first", "dry", "Mon 20:00");
    expect(state(diary, "second", "Mon 20:00")).toMatchObject({ is: "drying", opens: at("Mon 22:00") });
  });
});

describe("an acrylic with a flash-off", () => {
  test("found tacky when it should be open, it is drying again", () => {
    const diary = laid(acrylic);
    expect(state(diary, "second", "Mon 18:05")).toMatchObject({ is: "open" });
    diary.touch(1, "first", "tacky", "Mon 18:06");
    expect(state(diary, "second", "Mon 18:10")).toMatchObject({
      is: "drying",
      opens: null,
      because: "tacky",
    });
  });
});

describe("how far the newest coat shows to be", () => {
  test("by the clock: Mon 19:30 is 90 of 720 min, dust-free; hard Tue 6:00", () => {
    expect(coatState(laid(varnish).piece(1), at("Mon 19:30"))).toMatchObject({
      coat: "varnish",
      step: "first",
      pass: 1,
      laidAt: at("Mon 18:00"),
      stage: "dust-free",
      progress: 0.125,
      hard: at("Tue 6:00"),
    });
  });

  test("tacky is no further than dust-free and has no hour; hard is done", () => {
    const diary = laid(varnish);
    diary.touch(1, "first", "tacky", "Tue 8:00");
    expect(coatState(diary.piece(1), at("Tue 9:00"))).toMatchObject({
      stage: "dust-free",
      hard: null,
      progress: 0.99,
    });
    diary.touch(1, "first", "hard", "Tue 10:00");
    expect(coatState(diary.piece(1), at("Tue 10:00"))).toMatchObject({
      stage: "dry-hard",
      hard: at("Tue 10:00"),
      progress: 1,
    });
  });

  test("dry is at least tack-free, and an oil no more than a touch has said", () => {
    const dry = laid(varnish);
    dry.touch(1, "first", "dry", "Mon 19:00");
    expect(coatState(dry.piece(1), at("Mon 19:00"))?.stage).toBe("tack-free");
    const felt = laid(oil);
    expect(coatState(felt.piece(1), at("Fri 18:00"))).toMatchObject({ stage: "dust-free", hard: null });
    felt.touch(1, "first", "dry", "Fri 18:00");
    expect(coatState(felt.piece(1), at("Fri 18:00"))).toMatchObject({ stage: "tack-free", hard: null });
  });

  test("is that of the coat laid last, and of none where none lies", () => {
    const diary = new Diary(
      makeProcess(
        "two",
        inARow([makeStep("a", 5, { coat: "varnish" }), makeStep("b", 5, { coat: "acrylic" })]),
        [varnish, acrylic],
      ),
    );
    diary.tag(1, "Mon 17:00");
    expect(coatState(diary.piece(1), at("Mon 18:00"))).toBeNull();
    diary.hang(1, "a", "Mon 18:00");
    diary.hang(1, "b", "Mon 23:00");
    expect(coatState(diary.piece(1), at("Mon 23:01"))).toMatchObject({ coat: "acrylic", step: "b" });
    diary.mend(1, "wipe it off", 5, "b", "Mon 23:10");
    expect(coatState(diary.piece(1), at("Mon 23:11"))).toMatchObject({ coat: "varnish", step: "a" });
  });
});
