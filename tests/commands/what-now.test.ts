import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { at } from "../fixtures/week-time.ts";
import { benchAfter, done, refused, typeAtTerminal } from "./type-lines.ts";

let bench: BenchInAFolder;

beforeEach(async () => {
  bench = await benchAfter("Mon 17:50", ["settings zone Europe/Dublin", 'hours "weekdays 18-21, Sat 9-16"']);
});
afterEach(() => bench.remove());

/** Two pieces sealed at 19:04 and one not begun. */
async function twoSealed(): Promise<void> {
  await done(
    bench,
    "Mon 18:00",
    'tag walker --name perch --hung seal --since "yesterday 20:00" --scheme "ochre 10/5"',
  );
  await done(bench, "Mon 18:00", "tag walker --name smelt --hung seal --since 12:30");
  await done(bench, "Mon 18:00", "tag walker --name dace");
  await done(bench, "Mon 18:52", 'take 1 2 --ticked "solvent vapour"');
  await done(bench, "Mon 19:04", "hang 1 2");
}

/** The same, with the pot lit at 19:50. */
async function anEvening(): Promise<void> {
  await twoSealed();
  await done(bench, "Mon 19:50", 'ready pot --beginning --ticked "molten lead" --ticked "hot pot"');
}

describe("now", () => {
  test("of an empty shop says how to begin", async () => {
    expect(await done(bench, "Mon 18:00", "now")).toBe(
      'Mon 23 Mar 18:00, bench till 21:00, 3 h left\n\nNothing is out. Begin one: dryline tag "carved walker"; dryline process lists them.\n',
    );
    expect(await done(bench, "Mon 18:00", "")).toBe(await done(bench, "Mon 18:00", "now"));
  });

  test("tells the hour, work, what is held and waits, and what stands at the stations", async () => {
    await anEvening();
    const out = await done(bench, "Mon 20:00", "now");
    expect(out).toMatch(/^Mon 23 Mar 20:00, bench till 21:00, 1 h left/);
    // Dust and a hot pot keep apart.
    expect(out).toMatch(
      /\nHeld\n.*\n {2}3 dace +shape +40 min +heat of the lead pot: put the lead pot away\n/,
    );
    expect(out).toMatch(/\nWaiting\n {2}1 perch +dust-free 7 % +colours +opens 23:04, shuts Tue 19:04\n/);
    expect(out).toMatch(/\nAt the stations\n {2}lead pot: melt lead, ready 20:10, 5 min to put away\n$/);
  });

  test("holds what must keep apart, its reason and moment with it", async () => {
    await twoSealed();
    bench.now = at("Mon 19:10");
    const { held } = await bench.json<{ held: object[] }>("now");
    expect(held).toContainEqual({
      tags: [3],
      name: "dace",
      step: "shape",
      preparation: null,
      because: "wet coat of 1 and 2",
      also: [],
      until: "2026-03-23T19:49:00+00:00",
    });
  });

  test("puts why and what leaving it costs below each row of work", async () => {
    await twoSealed();
    const out = await done(bench, "Mon 20:00", "now");
    expect(out).toMatch(/\nWork now\n {2}3 dace +shape +40 min +any time\n {6}[A-Z][^\n]+\.\n/);
  });

  test("answers one JSON object, names as on the screen, moments with the shop's offset", async () => {
    await twoSealed();
    bench.now = at("Mon 20:00");
    const answer = await bench.json<Record<string, readonly Record<string, unknown>[]>>("now");
    expect(answer).toMatchObject({ at: "2026-03-23T20:00:00+00:00", basis: "dispatch" });
    expect(Object.keys(answer)).toEqual(expect.arrayContaining(["work", "waiting", "held", "prepared"]));
    expect(Object.keys(answer.work?.[0] ?? {})).toEqual(
      expect.arrayContaining([
        "tags",
        "name",
        "step",
        "station",
        "minutes",
        "setUp",
        "opens",
        "shuts",
        "beginBy",
        "why",
        "ifLeft",
      ]),
    );
    expect(Object.keys(answer.work?.[0]?.ifLeft ?? {})).toEqual(["preparation", "finish", "text"]);
    expect(answer.waiting?.[0]).toMatchObject({
      tag: 1,
      name: "perch",
      step: "colours",
      stage: "dust-free",
      opens: "2026-03-23T23:04:00+00:00",
      shuts: "2026-03-24T19:04:00+00:00",
      hard: "2026-03-24T07:04:00+00:00",
    });
    // 56 min of the 12 h to dry-hard.
    expect(answer.waiting?.[0]?.progress).toBeCloseTo(56 / 720, 5);
    await done(bench, "Mon 20:00", 'ready pot --ticked "molten lead" --ticked "hot pot"');
    const { prepared } = await bench.json<{ prepared: object[] }>("now");
    expect(prepared).toEqual([
      expect.objectContaining({
        station: "lead pot",
        setUp: "melt lead",
        until: expect.stringMatching(/^2026-03-23T/),
      }),
    ]);
  });

  test("after the clocks went forward has the new offset", async () => {
    await anEvening();
    bench.now = at("Sun 02:10");
    expect(await bench.json("now")).toMatchObject({ at: "2026-03-29T02:10:00+01:00" });
  });

  test("keeps to the width of a terminal", async () => {
    await done(bench, "Mon 18:00", `tag walker --name ${"long".repeat(40)}`);
    const { out } = await typeAtTerminal(bench, "now", []);
    for (const line of out.split("\n").filter((each) => each.startsWith("  1")))
      expect(line.length).toBeLessThanOrEqual(80);
  });

  test("a moment that cannot be read is told so", async () => {
    expect(await refused(bench, "Mon 18:00", "now --at soon", 2)).toMatch(
      /^"soon" is not a moment; write it like /,
    );
  });
});

test("rack tells every piece with its place, and as it will be at another time", async () => {
  await anEvening();
  expect(await done(bench, "Mon 20:00", "rack")).toMatch(
    /^ {2}1 perch +rack +dust-free 7 % +colours +opens 23:04, shuts Tue 19:04 +dry-hard Tue 07:04\n/,
  );
  bench.now = at("Mon 20:00");
  const { at: when, pieces } = await bench.json<{
    at: string;
    pieces: { state: string; progress: number }[];
  }>('rack --at "Tue 7:04"'.replace("Tue 7:04", "2026-03-24T07:04"));
  expect(when).toBe("2026-03-24T07:04:00+00:00");
  expect(pieces[0]).toMatchObject({ state: "open", progress: 1 });
});

describe("week", () => {
  test("tells what it gave, and takes weeks by any of their names", async () => {
    await anEvening();
    const out = await done(bench, "Mon 20:30", "week");
    expect(out).toMatch(
      /^2026-W13, Mon 23 Mar to Sun 29 Mar, so far\n {2}finished none; out 2\n {2}tagged 3 \(1, 2 and 3\)/,
    );
    // Two sealed together in 12 min; open 18:00 to 20:30.
    expect(out).toContain("hands-on 12 min of 2 h 30 open");
    expect(out).toMatch(/\n {4}W13 {2}0\n$/);
    expect(await done(bench, "Mon 20:30", "week 2026-W13")).toBe(out);
    expect(await done(bench, "Mon 20:30", "week today")).toBe(out);
    expect(await done(bench, "Mon 20:30", "week last")).toMatch(/^2026-W12, /);
    expect(await done(bench, "Mon 20:30", "week 2026-W20")).toMatch(/^2026-W20, .*, not begun\n/);
    expect(await done(bench, "Mon 20:30", "week 2026-W01")).toMatch(/^2026-W01, Mon 29 Dec to Sun 4 Jan\n/);
  });

  test("carries the pieces behind every figure as JSON, moments as ISO 8601", async () => {
    await anEvening();
    await done(bench, "Mon 20:10", 'mend 1 "level the run" --minutes 10 --then seal');
    bench.now = at("Mon 20:30");
    expect(await bench.json("week")).toMatchObject({
      week: "2026-W13",
      tagged: { count: 3, tags: [1, 2, 3] },
      mended: { count: 1, minutes: 10, mends: [{ tag: 1, at: "2026-03-23T20:10:00+00:00", minutes: 10 }] },
    });
  });

  test("one that is not there is told so", async () => {
    expect(await refused(bench, "Mon 20:30", "week 2026-W54", 2)).toBe(
      "There is no week 2026-W54: a year has 52 or 53.",
    );
  });
});

test("a clock behind what was written is told on stderr, once, with what can be done", async () => {
  await done(bench, "Mon 20:00", "tag walker");
  bench.now = at("Mon 19:00");
  const said = await bench.type("rack");
  expect(said.exit).toBe(0);
  expect(said.err).toBe(
    "The clock is 1 h behind what was already written down: if the clock is right now, dryline amend clock 60m sets that back.\n",
  );
  expect((await bench.type("rack")).err).toBe("");
  expect((await bench.type("note --shop cold --json")).err).toBe("");
  // Behind by another act than the one told of.
  await done(bench, "Mon 20:30", "tag walker");
  bench.now = at("Mon 19:00");
  expect((await bench.type("rack")).err).toMatch(/^The clock is 1 h 30 behind/);
  expect((await bench.type("amend clock 90m")).exit).toBe(0);
  expect((await bench.type("rack")).err).toBe("");
});

test("what a slow clock wrote is set forward, from the time it showed", async () => {
  await done(bench, "Mon 18:00", "tag walker");
  // Half an hour slow from here: 18:05 is 18:35.
  await done(bench, "Mon 18:05", "hang 1");
  expect(await refused(bench, "Mon 18:45", "amend clock 30m --slow", 2)).toBe(
    "Say since when it was slow, as it showed then: --since 18:00.",
  );
  expect(await done(bench, "Mon 18:45", "amend clock 30m --slow --since 18:05")).toBe(
    "What a wrong clock wrote is set forward 30 min.\n",
  );
  const workshop = await bench.workshop();
  const piece = (await workshop.shop()).pieces.get(1);
  workshop.close();
  expect(piece?.work.get("shape")?.hangs[0]?.hungAt).toBe(at("Mon 18:35"));
  expect(await refused(bench, "Mon 18:46", "amend 1 18:30 --slow", 2)).toBe(
    "--slow, --since and --until are of amend clock.",
  );
});
