/** Windows of steps whose way is not a plain row: branches, waits, preparations, mends, coats that shut for good. */
import { describe, expect, test } from "vitest";
import type { Coat } from "../../src/process/coat.ts";
import type { Step } from "../../src/process/step.ts";
import { stepState } from "../../src/shop/step-state.ts";
import { Diary } from "../fixtures/diary.ts";
import { inARow, makeCoat, makeProcess, makeStep, resin, scuff, varnish } from "../fixtures/walker.ts";
import { at, moment } from "../fixtures/week-time.ts";

const state = (diary: Diary, step: string, when: string) => stepState(diary.piece(1), step, moment(when));

function begun(steps: readonly Step[], coats = [varnish, resin]): Diary {
  const diary = new Diary(makeProcess("made for tests", steps, coats));
  diary.tag(1, "Mon 8:00");
  return diary;
}

describe("a coat over two others", () => {
  const steps = [
    makeStep("belly", 5, { coat: "varnish" }),
    makeStep("back", 5, { coat: "bar-top resin" }),
    makeStep("over all", 5, { coat: "varnish", after: ["belly", "back"] }),
  ];

  test("may be laid when both windows are open: 14:00 (10:00 + 4 h) to 15:00 (13:00 + 2 h)", () => {
    const diary = begun(steps);
    diary.hang(1, "belly", "Mon 10:00");
    diary.hang(1, "back", "Mon 13:00");
    expect(state(diary, "over all", "Mon 13:30")).toMatchObject({
      is: "drying",
      opens: at("Mon 14:00"),
      shuts: at("Mon 15:00"),
      coat: "varnish",
      step: "belly",
    });
    expect(state(diary, "over all", "Mon 14:00")).toMatchObject({ is: "open", shuts: at("Mon 15:00") });
    // The resin's next window is Tue 13:00, with a scuff; by then the varnish's has shut as well: one scuff for both.
    expect(state(diary, "over all", "Mon 15:00")).toMatchObject({
      is: "drying",
      because: "between windows",
      opens: at("Tue 13:00"),
      preparation: scuff,
    });
  });

  test("one of them tacky holds it all", () => {
    const diary = begun(steps);
    diary.hang(1, "belly", "Mon 10:00");
    diary.hang(1, "back", "Mon 13:00");
    diary.touch(1, "belly", "tacky", "Mon 14:10");
    expect(state(diary, "over all", "Mon 14:20")).toMatchObject({
      is: "drying",
      opens: null,
      because: "tacky",
      coat: "varnish",
      step: "belly",
    });
  });

  test("a coat under work that lays none in between still counts", () => {
    const diary = begun(
      inARow([
        makeStep("seal", 5, { coat: "varnish" }),
        makeStep("mark", 5, { waitsFor: "dust-free" }),
        makeStep("over", 5, { coat: "varnish" }),
      ]),
    );
    diary.hang(1, "seal", "Mon 10:00");
    diary.hang(1, "mark", "Mon 11:00");
    expect(state(diary, "over", "Mon 11:01")).toMatchObject({
      is: "drying",
      opens: at("Mon 14:00"),
      shuts: at("Tue 10:00"),
    });
  });
});

describe("plain waits", () => {
  test("a step after a wait of 90 min opens with its end, of two waits with the later", () => {
    const diary = begun([
      makeStep("glue", 5, { wait: 90 }),
      makeStep("pin", 5, { wait: 10 }),
      makeStep("join", 5, { after: ["glue", "pin"] }),
    ]);
    diary.hang(1, "glue", "Mon 10:00");
    diary.hang(1, "pin", "Mon 11:00");
    expect(state(diary, "join", "Mon 11:05")).toEqual({
      is: "drying",
      opens: at("Mon 11:30"),
      shuts: null,
      because: "wait",
      coat: null,
      step: null,
      stage: null,
      preparation: null,
    });
    expect(state(diary, "join", "Mon 11:30")).toMatchObject({
      is: "open",
      since: at("Mon 11:30"),
      shuts: null,
    });
  });

  test("a wait that outlasts a window leads into the next one, with its scuff", () => {
    const diary = begun(
      inARow([
        makeStep("seal", 5, { coat: "varnish", wait: 1500 }),
        makeStep("over", 5, { coat: "varnish" }),
      ]),
    );
    diary.hang(1, "seal", "Mon 10:00");
    // 24 h shut the first window; 1500 min end Tue 11:00.
    expect(state(diary, "over", "Mon 15:00")).toMatchObject({
      is: "drying",
      because: "wait",
      opens: at("Tue 11:00"),
      preparation: scuff,
    });
  });
});

describe("a coat that waits for a stage", () => {
  const under = (waitsFor: Step["waitsFor"], coat = varnish) =>
    begun(
      inARow([makeStep("seal", 5, { coat: coat.name }), makeStep("over", 5, { coat: coat.name, waitsFor })]),
      [coat],
    );

  test("opens with it, before or after the window's own 4 h, and shuts with the window", () => {
    const early = under("dust-free");
    early.hang(1, "seal", "Mon 10:00");
    expect(state(early, "over", "Mon 10:45")).toMatchObject({ is: "open", shuts: at("Tue 10:00") });
    const late = under("dry-hard");
    late.hang(1, "seal", "Mon 10:00");
    expect(state(late, "over", "Mon 15:00")).toMatchObject({
      is: "drying",
      opens: at("Mon 22:00"),
      because: "stage",
    });
    expect(state(late, "over", "Tue 10:00")).toMatchObject({ is: "shut", preparation: scuff });
  });

  test("a stage reached between two windows leads into the later one", () => {
    const diary = under("dust-free", resin);
    diary.hang(1, "seal", "Mon 10:00");
    // Dust-free 13:00, an hour after the wet-on-wet window shut.
    expect(state(diary, "over", "Mon 14:00")).toMatchObject({
      is: "drying",
      opens: at("Tue 10:00"),
      preparation: scuff,
    });
  });
});

describe("preparations", () => {
  const twoLate = makeCoat("two late", {
    windows: [
      { opens: 0, shuts: 60, first: null },
      { opens: 60, shuts: 120, first: scuff },
      { opens: 120, shuts: null, first: { ...scuff, do: "sand" } },
    ],
  });
  const diary = () => {
    const made = begun(
      inARow([makeStep("a", 5, { coat: "two late" }), makeStep("b", 5, { coat: "two late" })]),
      [twoLate],
    );
    made.hang(1, "a", "Mon 10:00");
    return made;
  };

  test("done in its window opens that and the one after it", () => {
    const made = diary();
    expect(state(made, "b", "Mon 11:00")).toMatchObject({
      is: "shut",
      preparation: { do: "scuff" },
      shuts: at("Mon 12:00"),
    });
    made.hang(1, "b", "Mon 11:10", { part: "preparation" });
    expect(state(made, "b", "Mon 11:10")).toMatchObject({ is: "open", shuts: null });
  });

  test("done in the first window does for the second, not for the third", () => {
    const made = diary();
    made.hang(1, "b", "Mon 10:50", { part: "preparation" });
    expect(state(made, "b", "Mon 11:30")).toMatchObject({ is: "open", shuts: at("Mon 12:00") });
    expect(state(made, "b", "Mon 12:00")).toMatchObject({
      is: "shut",
      since: at("Mon 12:00"),
      preparation: { do: "sand" },
    });
  });
});

describe("a window that shuts for good", () => {
  const once = makeCoat("once", {
    windows: [{ opens: 30, shuts: 60, first: null }],
    stages: { "dry-hard": 90 },
  });
  const made = () => {
    const diary = begun(inARow([makeStep("a", 5, { coat: "once" }), makeStep("b", 5, { coat: "once" })]), [
      once,
    ]);
    diary.hang(1, "a", "Mon 10:00");
    return diary;
  };

  test("leaves only a mend from the coat", () => {
    expect(state(made(), "b", "Mon 10:40")).toMatchObject({ is: "open", opensAgain: false, nextOpens: null });
    expect(state(made(), "b", "Mon 11:00")).toEqual({
      is: "shut",
      since: at("Mon 11:00"),
      preparation: null,
      shuts: null,
      coat: "once",
      step: "a",
    });
  });

  test("levelled and gone on from, it has its window again, counted from the mend's end: 12:00 + 60 min", () => {
    const diary = made();
    diary.mend(1, "level it", 15, "b", "Mon 12:00");
    expect(state(diary, "b", "Mon 12:00")).toMatchObject({
      is: "open",
      since: at("Mon 12:00"),
      shuts: at("Mon 13:00"),
    });
    expect(state(diary, "b", "Mon 13:00")).toMatchObject({ is: "shut", preparation: null });
  });
});

describe("a test whose answer sends the piece back to a coat", () => {
  const tested = (coat: Coat) => {
    const steps = [
      makeStep("a", 5, { coat: coat.name }),
      makeStep("b", 5, { coat: coat.name }),
      makeStep("swim", 5, { result: { passes: { goes: "on" }, leaks: { backTo: "b" } } }),
    ];
    const diary = begun(inARow(steps), [coat]);
    diary.hang(1, "a", "Mon 10:00");
    diary.hang(1, "b", "Mon 15:00");
    return diary;
  };

  test("levels nothing: after the window has shut, Tue 10:00, the coat below asks for its scuff", () => {
    const diary = tested(varnish);
    diary.hang(1, "swim", "Wed 18:00", { result: "leaks" });
    expect(state(diary, "b", "Wed 18:00")).toMatchObject({
      is: "shut",
      since: at("Tue 10:00"),
      preparation: { do: "scuff" },
    });
    diary.hang(1, "b", "Wed 18:05", { part: "preparation" });
    expect(state(diary, "b", "Wed 18:05")).toMatchObject({ is: "open" });
  });

  test("within the window the coat below is open till that shuts, not for a window more", () => {
    const diary = tested(varnish);
    diary.hang(1, "swim", "Tue 9:00", { result: "leaks" });
    expect(state(diary, "b", "Tue 9:00")).toMatchObject({ is: "open", shuts: at("Tue 10:00") });
  });

  test("a coat that shut for good takes it all the same: its sheet knows no preparation", () => {
    const diary = tested(makeCoat("once", { windows: [{ opens: 30, shuts: 600, first: null }] }));
    diary.hang(1, "swim", "Wed 18:00", { result: "leaks" });
    expect(state(diary, "b", "Wed 18:00")).toMatchObject({ is: "open", since: at("Wed 18:00") });
  });
});

test("a flaw levelled in a hard varnish asks no scuff for 24 h; of a resin 2 h, and then the scuff without a gap", () => {
  for (const [coat, shuts] of [
    [varnish, "Fri 18:00"],
    [resin, "Thu 20:00"],
  ] as const) {
    const diary = begun(
      inARow([makeStep("a", 5, { coat: coat.name }), makeStep("b", 5, { coat: coat.name })]),
    );
    diary.hang(1, "a", "Mon 18:00");
    diary.hang(1, "b", "Wed 18:00");
    diary.mend(1, "level the run", 10, "b", "Thu 18:00");
    expect(state(diary, "b", "Thu 18:00")).toMatchObject({
      is: "open",
      since: at("Thu 18:00"),
      shuts: at(shuts),
    });
    expect(state(diary, "b", shuts)).toMatchObject({ is: "shut", preparation: scuff });
  }
});

test("a piece is first open from its tagging on, and asking for a step it has not is our mistake", () => {
  const diary = begun([makeStep("carve", 5)]);
  expect(state(diary, "carve", "Mon 9:00")).toMatchObject({ is: "open", since: at("Mon 8:00") });
  expect(() => state(diary, "sing", "Mon 9:00")).toThrow(RangeError);
});
