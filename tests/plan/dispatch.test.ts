import { describe, expect, test } from "vitest";
import { checkPlan } from "../../src/plan/check-plan.ts";
import { dispatch, firstFinish } from "../../src/plan/dispatch.ts";
import type { Plan } from "../../src/plan/plan.ts";
import { prepareDispatch } from "../../src/plan/prepare-dispatch.ts";
import type { PlanSetUp, Problem } from "../../src/plan/problem.ts";
import { scorePlan } from "../../src/plan/score.ts";
import { smallProblem, waitFor } from "./small-problem.ts";

/** The plan, once the checker has passed it. */
function plan(problem: Problem): Plan {
  const found = dispatch(prepareDispatch(problem));
  expect(checkPlan(problem, found)).toEqual([]);
  return found;
}

/** Visits as `task part start-end`, with the set-up before it. */
function said({ visits }: Plan): string[] {
  return visits.map(({ task, part, setUp, start, end }) => {
    const before = setUp === 0 ? "" : ` +${setUp}`;
    return `${task} ${part} ${start}-${end}${before}`;
  });
}

const pot: PlanSetUp = {
  station: 0,
  minutes: 20,
  keeps: { way: "heat", minutes: 45 },
  putAway: 5,
  gives: [0],
};
const cup: PlanSetUp = {
  station: 0,
  minutes: 4,
  keeps: { way: "mix", minutes: 30, serves: 2 },
  putAway: 0,
  gives: [],
};
const one = { name: "station", standing: null };

describe("windows", () => {
  test("a wait of 4 h from 18:00 is worked when the bench opens the next day", () => {
    // 0-10, open 250, closed from 180 on: minute 1440.
    const found = plan(smallProblem([{}, { waits: [waitFor(0, [[240, null]])] }]));
    expect(said(found)).toEqual(["0 step 0-10", "1 step 1440-1450"]);
    expect(found.finish).toEqual([1450]);
  });

  test("a window missed brings its preparation, directly before", () => {
    // Opens 250, shuts 1010, before the bench opens at 1440; then 5 min first.
    const found = plan(
      smallProblem([
        {},
        {
          waits: [
            waitFor(0, [
              [240, 1000],
              [1000, null, 5],
            ]),
          ],
        },
      ]),
    );
    expect(said(found)).toEqual(["0 step 0-10", "1 preparation 1440-1445", "1 step 1445-1455"]);
  });

  test("a window about to shut goes before a piece that is nearer its end", () => {
    const tasks = [
      { piece: 0, minutes: 30 },
      { piece: 1, ended: -100 },
      {
        piece: 1,
        minutes: 40,
        waits: [
          waitFor(1, [
            [0, 110],
            [110, null, 5],
          ]),
        ],
      },
    ];
    // Task 2 must begin by 110 - 100 = 10.
    expect(said(plan(smallProblem(tasks, [{}, { begun: true }])))).toEqual(["2 step 0-40", "0 step 40-70"]);
  });

  test("the hands wait for a window that opens and shuts soon, rather than begin what would miss it", () => {
    const tasks = [
      { piece: 0, minutes: 60 },
      { piece: 1, ended: -100 },
      {
        piece: 1,
        minutes: 10,
        waits: [
          waitFor(1, [
            [110, 130],
            [130, null, 5],
          ]),
        ],
      },
    ];
    // Opens at 10, shuts at 30: an hour of other work begun now would be done at 60.
    expect(said(plan(smallProblem(tasks, [{}, { begun: true }])))).toEqual(["2 step 10-20", "0 step 20-80"]);
  });

  test("where only a mend helps, a coat is not laid whose window no bench hours meet", () => {
    // Hung at 10 it would shut at 10 + 900, long before 1440. To shut at 1440 it must hang at 540, when the bench is
    // shut: no evening will ever do, and that is said instead of planned.
    const found = plan(smallProblem([{}, { waits: [waitFor(0, [[240, 900]], 10)] }]));
    expect(found).toMatchObject({ visits: [], unplaced: [0, 1], finish: [null] });
  });

  test("a coat whose only window was missed is levelled and laid again", () => {
    const tasks = [{ ended: -3000, minutes: 6 }, { waits: [waitFor(0, [[240, 1440]], 10)] }];
    // 10 min of levelling and 6 of laying: 0-16. Opens 256, shuts 1456; the bench opens at 1440.
    const found = plan(smallProblem(tasks, [{ begun: true }]));
    expect(said(found)).toEqual(["0 mend 0-16", "1 step 1440-1450"]);
  });

  test("air that changes: a table says when, rounded to the safe side", () => {
    // Laid 10: between the entries of 0 and 60; it opens with the later one, at 130.
    const opens = { every: 60, reached: [90, 130, 190] };
    const wait = { on: 0, windows: [{ opens, shuts: null, preparation: null }], mend: null };
    expect(said(plan(smallProblem([{}, { waits: [wait] }])))).toEqual(["0 step 0-10", "1 step 130-140"]);
  });
});

describe("set-ups", () => {
  test("one melt serves two pieces, and is put away before the bench shuts", () => {
    const pour = { station: 0, setUp: 0, minutes: 6 };
    const problem = smallProblem(
      [
        { ...pour, piece: 0 },
        { ...pour, piece: 1 },
      ],
      [{}, {}],
      { stations: [one], setUps: [pot] },
    );
    const found = plan(problem);
    expect(said(found)).toEqual(["0 step 20-26 +20", "1 step 26-32"]);
    // Flow 26 + 32, 20 min of set-up.
    expect(scorePlan(problem, found)).toEqual({ total: 78, tardiness: 0, flow: 58, amends: 0, setUp: 20 });
  });

  test("a melt that would not be put away in time waits for tomorrow", () => {
    const tight = {
      stations: [one],
      setUps: [pot],
      sessions: [
        { opens: 0, closes: 30 },
        { opens: 1440, closes: 1620 },
      ],
    };
    // 20 + 6 + 5 = 31 min do not fit 30.
    expect(said(plan(smallProblem([{ station: 0, setUp: 0, minutes: 6 }], [{}], tight)))).toEqual([
      "0 step 1460-1466 +20",
    ]);
  });

  test("a cup serves two, the third needs another", () => {
    const lay = { station: 0, setUp: 0, minutes: 8 };
    const tasks = [0, 1, 2].map((piece) => ({ ...lay, piece }));
    const found = plan(smallProblem(tasks, [{}, {}, {}], { stations: [one], setUps: [cup] }));
    expect(said(found)).toEqual(["0 step 4-12 +4", "1 step 12-20", "2 step 24-32 +4"]);
  });

  test("what stands now needs no setting up: a pot used 10 min ago keeps 45", () => {
    const standing = { setUp: 0, ready: -60, lastUsed: -10, served: 1 };
    const problem = (lastUsed: number) =>
      smallProblem([{ station: 0, setUp: 0, minutes: 6 }], [{}], {
        stations: [{ ...one, standing: { ...standing, lastUsed } }],
        setUps: [pot],
      });
    expect(said(plan(problem(-10)))).toEqual(["0 step 0-6"]);
    expect(said(plan(problem(-46)))).toEqual(["0 step 20-26 +20"]);
  });
});

describe("the room and the hands", () => {
  test("a coat waits till the cold stretch is over, other work goes on in it, and one that never ends is named", () => {
    const unfit = [[5, 60]] as const;
    const problem = smallProblem([{ unfit }, { piece: 1 }], [{}, {}]);
    // 0 to 10 would reach into the cold at 5.
    expect(said(plan(problem))).toEqual(["1 step 0-10", "0 step 60-70"]);
    const never = smallProblem([{ unfit: [[0, 14 * 1440]] }]);
    expect(plan(never).unplaced).toEqual([0]);
  });

  test("what must keep apart waits: 40 min of vapour before the pot is lit", () => {
    const problem = smallProblem([{ station: 0, setUp: 0, minutes: 6 }], [{}], {
      stations: [one],
      setUps: [pot],
      apart: [[0, 1]],
      air: [{ what: 1, until: 40 }],
    });
    expect(said(plan(problem))).toEqual(["0 step 60-66 +20"]);
  });

  test("sanding goes before the coat that would hold it for 45 min", () => {
    const dust = [{ what: 0, lasts: 0, fromSetUp: true }];
    const wet = [{ what: 1, lasts: 45, fromSetUp: false }];
    const tasks = [
      { piece: 0, minutes: 6, gives: wet },
      { piece: 1, minutes: 20, gives: dust },
    ];
    expect(said(plan(smallProblem(tasks, [{}, {}], { apart: [[0, 1]] })))).toEqual([
      "1 step 0-20",
      "0 step 20-26",
    ]);
  });

  test("one hook: the second piece hangs when the first needs it no more", () => {
    const hook = { place: 0, until: 60 };
    const tasks = [0, 1].map((piece) => ({ piece, hook }));
    // 0-10 and on the hook until 70, so the second ends at 70.
    const found = plan(smallProblem(tasks, [{}, {}], { places: [{ name: "rack", hooks: 1 }] }));
    expect(said(found)).toEqual(["0 step 0-10", "1 step 60-70"]);
  });

  test("a look 5 min after a coat keeps the hands free for its minute", () => {
    const tasks = [
      { piece: 0, looks: [5] },
      { piece: 1, minutes: 20 },
      { piece: 2, minutes: 30 },
    ];
    // The coat ends at 10, the look is at 15: only what is done by 15, or begins at 16.
    expect(said(plan(smallProblem(tasks, [{}, {}, {}])))).toEqual([
      "0 step 0-10",
      "1 step 16-36",
      "2 step 36-66",
    ]);
  });

  test("long work is split between evenings, in parts of 15 min or more", () => {
    // 190 min do not fit 180: 175 tonight, so that 15 are left.
    expect(said(plan(smallProblem([{ minutes: 190, mayStop: true }])))).toEqual([
      "0 step 0-175",
      "0 step 1440-1455",
    ]);
    expect(plan(smallProblem([{ minutes: 190 }])).unplaced).toEqual([0]);
  });

  test("no more than so many are out at once", () => {
    const tasks = [0, 1].map((piece) => ({ piece }));
    const cured = { cure: 100, underLimit: true };
    // The first is finished at 10 + 100.
    expect(said(plan(smallProblem(tasks, [cured, cured], { mostOut: 1 })))).toEqual([
      "0 step 0-10",
      "1 step 110-120",
    ]);
  });

  test("two pairs of hands work two pieces at once", () => {
    const tasks = [0, 1].map((piece) => ({ piece }));
    expect(said(plan(smallProblem(tasks, [{}, {}], { hands: 2 })))).toEqual(["0 step 0-10", "1 step 0-10"]);
  });

  test("what is in hand goes on first, whatever the hours", () => {
    const tasks = [{ piece: 0, minutes: 5, running: true }, { piece: 1 }];
    const sessions = [{ opens: 1000, closes: 1180 }];
    expect(said(plan(smallProblem(tasks, [{ begun: true }, {}], { sessions })))).toEqual([
      "0 step 0-5",
      "1 step 1000-1010",
    ]);
  });
});

describe("what comes first", () => {
  test("the piece nearest its end, all else being equal", () => {
    const tasks = [
      { piece: 0, minutes: 30 },
      { piece: 1, minutes: 20 },
    ];
    expect(said(plan(smallProblem(tasks, [{}, {}])))).toEqual(["1 step 0-20", "0 step 20-50"]);
  });

  test("a piece that is late and dear goes before a short one", () => {
    const tasks = [
      { piece: 0, minutes: 30 },
      { piece: 1, minutes: 20 },
    ];
    const problem = smallProblem(tasks, [{ due: 0, weight: 3 }, {}]);
    const found = plan(problem);
    expect(said(found)).toEqual(["0 step 0-30", "1 step 30-50"]);
    // 3 x 30 min late, ten times; flow 30 + 50.
    expect(scorePlan(problem, found).total).toBe(10 * 90 + 80);
  });

  test("nobody knows when a measurement comes: the piece is not planned, the others are", () => {
    const tasks = [{ release: null }, { waits: [waitFor(0, [[0, null]])] }, { piece: 1 }];
    const found = plan(smallProblem(tasks, [{}, {}]));
    expect(found.unplaced).toEqual([0, 1]);
    expect(found.finish).toEqual([null, 10]);
  });

  test("left for tonight, it is finished tomorrow", () => {
    const prepared = prepareDispatch(smallProblem([{}, { piece: 1 }], [{}, {}]));
    expect(firstFinish(prepared, { tasks: [0], until: 180 }, [0])).toBe(1450);
    expect(firstFinish(prepared, { tasks: [0], until: 180 }, [0, 1])).toBe(10);
  });
});
