import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { BenchInAFolder } from "../fixtures/bench-in-a-folder.ts";
import { benchAfter, done, newest, refused } from "./type-lines.ts";

let bench: BenchInAFolder;

beforeEach(async () => {
  bench = await benchAfter("Mon 17:50", ["settings zone Europe/Dublin", 'hours "weekdays 18-21, Sat 9-16"']);
});
afterEach(() => bench.remove());

describe("tag", () => {
  test("gives numbers in a row, with name, due date and price", async () => {
    const out = await done(bench, "Mon 18:00", "tag walker --name smelt --count 3 --due Friday --price 28");
    expect(out).toBe("1, 2 and 3 tagged, smelt, due Fri. Shape is open.\n");
    const { pieces } = await bench.json<{ pieces: unknown[] }>("tag walker");
    expect(pieces).toMatchObject([{ tag: 4, next: [{ step: "shape", state: "open" }] }]);
  });

  test("takes another like one: process, name, scheme and price", async () => {
    await done(bench, "Mon 18:00", 'tag walker --name smelt --scheme "ochre 10/5, green 6" --price 28');
    expect(await done(bench, "Mon 18:01", "tag --like 1")).toMatch(/^2 tagged, smelt\./);
    const shop = await shopOf();
    expect(shop.pieces.get(2)).toMatchObject({ scheme: shop.pieces.get(1)?.scheme, price: 2800 });
  });

  test("takes a piece where it hangs, and tells both ends of its window", async () => {
    const line = 'tag walker --name perch --hung seal --since "yesterday 20:00"';
    expect(await done(bench, "Mon 18:00", line)).toBe(
      "1 tagged, perch, hanging since Sun 20:00, seal. Second seal is open, shuts 20:00.\n",
    );
  });

  test("changes what stands on a tag", async () => {
    await done(bench, "Mon 18:00", "tag walker");
    expect(
      await done(bench, "Mon 18:01", "tag 1 --name dace --due 3 May --price 30".replace("3 May", '"3 May"')),
    ).toBe("1 named dace, due Sun 3 May, price 30.00.\n");
  });

  test.each([
    ["tag wlaker", 'There is no process "wlaker": perhaps "walker".'],
    ["tag walker --price much", '--price "much" is no amount: write 28 or 28.50.'],
    ["tag walker --count 0", '--count "0" is no count: write a whole number from 1.'],
    ["tag walker --hung seal", 'Say since when it hangs: --since "yesterday 20:00".'],
    [
      "tag walker --scheme 10/5",
      '"10/5" is no pass of a scheme: say colour, minutes and flash-off, as ochre 10/5.',
    ],
    ["tag --like 7", '--like "7" is no tag of a piece: say one, as --like 14.'],
    ["tag walker --due 2026-03-01", "--due Sun 1 Mar has passed: say a day from today on."],
    [
      "tag walker --due 2026-02-30",
      '--due: there is no date "2026-02-30" in the calendar; write it like 3 May or 2026-05-03.',
    ],
    ["tag 1 --due 2026-03-01", "--due Sun 1 Mar has passed: say a day from today on."],
    ["tag 1", "Say what changes on the tag: --name, --scheme, --due, --price or --for."],
  ])("%s is not understood", async (line, sentence) => {
    expect(await refused(bench, "Mon 18:00", line, 2)).toBe(sentence);
  });
});

describe("with three pieces out", () => {
  beforeEach(async () => {
    await done(bench, "Mon 18:00", 'tag walker --hung seal --since "yesterday 20:00" --scheme "ochre 10/5"');
    await done(bench, "Mon 18:00", "tag walker --hung seal --since 12:30");
    await done(bench, "Mon 18:00", "tag walker");
  });

  test("take and hang tell what happened and what comes", async () => {
    expect(await done(bench, "Mon 18:52", 'take 1-2 --ticked "solvent vapour"')).toMatch(
      /^1 and 2 in hand 18:52, second seal\.\n/m,
    );
    expect(await done(bench, "Mon 19:04", "hang")).toBe(
      // Each to its own: 1 has a colour and 2 has no scheme; varnish opens 4 h and shuts 24 h after.
      "1 and 2 hung 19:04, second seal. Opens 23:04, shuts Tue 19:04.\n",
    );
  });

  test("a caution read in this bench session is one line the next time", async () => {
    await done(bench, "Mon 18:10", 'take 2 --ticked "solvent vapour"');
    await done(bench, "Mon 18:16", "hang 2");
    expect(await done(bench, "Mon 18:17", "take 1")).toMatch(/\nSolvent vapour: [^\n]+\n$/);
  });

  test("a colour is taken without its option, whole or as it begins", async () => {
    for (const [when, line] of [
      ["Mon 18:02", 'take 1-2 --ticked "solvent vapour"'],
      ["Mon 18:14", "hang"],
      ["Mon 22:14", "take 1 och"],
    ] as const) {
      await done(bench, when, line);
    }
    expect(await done(bench, "Mon 22:15", "undo")).toMatch(/^Undone: 1 in hand 22:14, colours, ochre/);
    expect(await done(bench, "Mon 22:16", "take 1 colours ochre")).toMatch(
      /^1 in hand 22:16, colours, ochre/,
    );
    await done(bench, "Mon 22:20", "hang");
    // 2 has no scheme: what names no step of it is the colour.
    expect(await done(bench, "Mon 22:21", "take 2 red oxide")).toMatch(
      /^2 in hand 22:21, colours, red oxide/,
    );
  });

  test("a word near a step's name is not taken for a colour", async () => {
    expect(await refused(bench, "Mon 18:02", "take 2 colurs", 2)).toBe(
      '2 has no step "colurs": perhaps "colours".',
    );
    expect(await refused(bench, "Mon 18:02", "take 1 olive", 2)).toMatch(/^1 has no step "olive": it has/);
  });

  test("the set-up sheet is shown when asked", async () => {
    const out = await done(bench, "Mon 18:05", 'take 3 --sheet --ticked "wood and foam dust"');
    expect(out).toContain("Shape, 3\n  at the bench, 40 min\n");
  });

  test("what is to be weighed out is told as it is taken, for all pieces taken together", async () => {
    await done(bench, "Mon 18:00", 'tag "carved walker" --count 2 --hung drill --since 12:00');
    await done(bench, "Mon 18:00", 'measure 4-5 "wood moisture" 8 %');
    const ticked = '--ticked "molten lead" --ticked "hot pot"';
    await done(bench, "Mon 18:25", `ready "lead pot" --begun 18:00 ${ticked}`);
    const out = await done(bench, "Mon 18:26", 'take 4-5 "pour the ballast"');
    // 2 x pi x 4² x 14 mm³ = 1.407 cm³ of lead: 15.0 to 16.0 g each.
    expect(out).toContain(
      "Ballast: 2 holes 8 mm across and 14 mm deep: 15.0 to 16.0 g of lead, 30.0 to 31.9 g for all 2\n",
    );
    expect(out).not.toContain("at the lead pot,");
  });

  test("an act is dated by --at and --ago", async () => {
    await done(bench, "Mon 19:10", 'take 1 2 --at 18:52 --ticked "solvent vapour"');
    expect(await done(bench, "Mon 19:24", "hang 1 2 --ago 20m")).toMatch(/^1 and 2 hung 19:04/);
  });

  test("hung as usual and at a time said are two things", async () => {
    expect(await refused(bench, "Mon 18:05", "hang 3 --as-usual --ago 5m", 2)).toBe(
      "Say --as-usual or when it was, not both.",
    );
  });

  test("leave puts down and take goes on", async () => {
    await done(bench, "Mon 18:05", 'take 3 --ticked "wood and foam dust"');
    expect(await done(bench, "Mon 18:20", "leave")).toMatch(/^3 put down half-done 18:20, shape\./);
    expect(await done(bench, "Mon 18:25", "week")).toContain(
      "\n  not yet in it: half-done 1 (3), 15 min so far\n",
    );
    expect(await done(bench, "Mon 18:30", "take 3")).toMatch(/^3 in hand 18:30, shape\./);
  });

  test("touch, move, measure, note and scrap say what was written", async () => {
    // 22 h 05 after it was hung: 11 times the 2 h to tack-free.
    const [touched, fault] = (await done(bench, "Mon 18:05", "touch 1 tacky")).split("\n");
    expect(touched).toBe(
      "1 touched 18:05, tacky. Second seal waits for a touch that says dry: it was tacky.",
    );
    expect(fault).toBe("1: varnish is tacky at 11x its time: more waiting will not help");
    expect(await done(bench, "Mon 18:06", 'move 1 "warm box"')).toBe("1 moved to the warm box 18:06.\n");
    expect(await done(bench, "Mon 18:07", 'measure 3 "wood moisture" 8 %')).toBe(
      "3 measured 18:07, wood moisture 8 %.\n",
    );
    expect(await done(bench, "Mon 18:08", 'note 3 "runs deep"')).toBe('3 noted 18:08, "runs deep".\n');
    expect(await done(bench, "Mon 18:09", "scrap 3 split along the grain")).toBe(
      "3 scrapped 18:09: split along the grain.\n",
    );
  });

  test("what is measured need not be named where steps ask for one thing only", async () => {
    for (const line of ["measure 3 8", "measure 3 8 %", "measure 2-3 8%", "measure 2 3 8"]) {
      expect(await done(bench, "Mon 18:07", line)).toMatch(/measured 18:07, wood moisture 8 %\.\n$/);
    }
    expect(await refused(bench, "Mon 18:07", "measure 3 8 g", 2)).toBe("Wood moisture is asked in %, not g.");
  });

  test("a note without tags is of the whole shop, and the week tells both kinds", async () => {
    expect(await done(bench, "Mon 18:08", 'note "the heater was off"')).toBe(
      'Noted 18:08, "the heater was off".\n',
    );
    await done(bench, "Mon 18:09", 'note 1-2 "a run"');
    const week = await done(bench, "Tue 18:00", "week");
    expect(week).toContain('  noted Mon 18:08, "the heater was off"\n  noted 1 and 2 Mon 18:09, "a run"\n');
  });

  test("a mend opens the step named and all after it; amend moves the newest act", async () => {
    await done(bench, "Mon 18:10", 'take 1 --ticked "solvent vapour"');
    await done(bench, "Mon 18:16", "hang 1");
    expect(await done(bench, "Mon 18:20", "amend 1 18:18")).toBe(
      "1 amended, that was 18:18. Colours opens 22:18, shuts Tue 18:18.\n",
    );
    expect(await done(bench, "Mon 18:30", 'mend 1 "level the run" --minutes 10 --then seal')).toBe(
      "1 mended 18:30, level the run, 10 min. Seal is open.\n",
    );
  });

  test("undo names what it took back, and undo --list what can be", async () => {
    await done(bench, "Mon 18:05", "note 3 one");
    expect(await done(bench, "Mon 18:06", "undo --list")).toMatch(/^ +\d+ {2}3 noted 18:05, "one"\n/);
    const { acts } = await bench.json<{ acts: { act: number; said: string }[] }>("undo --list");
    expect(await done(bench, "Mon 18:07", `undo ${acts[0]?.act}`)).toBe('Undone: 3 noted 18:05, "one".\n');
    expect(await done(bench, "Mon 18:08", "undo")).toMatch(/^Undone: 3 tagged, /);
  });

  test("the pot is readied and put away; the closing word tells what comes next", async () => {
    const begun = await done(
      bench,
      "Mon 18:10",
      'ready pot --beginning --ticked "molten lead" --ticked "hot pot"',
    );
    expect(begun).toMatch(/Melt lead will be ready 18:30 at the lead pot\.\n/);
    expect(await done(bench, "Mon 20:50", "putaway")).toBe(
      [
        "Lead pot put away 20:50.",
        "Nothing hot, nothing mixed, nothing loaded.",
        "First shuts Tue 12:30 (2), the bench opens again Tue 18:00, in 21 h 10.\n",
      ].join("\n"),
    );
  });

  test("a route is changed for one piece", async () => {
    expect(await done(bench, "Mon 18:05", 'route 3 --skip "second seal" --why "hard maple"')).toMatch(
      /^3 goes without second seal\./,
    );
    expect(
      await done(bench, "Mon 18:06", 'route 3 --put "third clear" --like "last clear" --after "last clear"'),
    ).toMatch(/^3 also gets third clear after last clear\./);
  });

  test("first tells whom it delays before it is done", async () => {
    const out = await done(bench, "Mon 18:05", "first 3");
    expect(out).toMatch(/^3 would be finished [^\n]+\.\n(It delays [^\n]+\.\n)+3 comes first\.\n$/);
  });

  test.each([
    ["hang 9", 2, "There is no 9: out are 1, 2 and 3."],
    ["take 1 shpae", 2, '1 has no step "shpae": perhaps "shape".'],
    ["take 1 shape", 3, "1 shape was done Sun 20:00: mend the piece to do it again."],
    ["take 3 drill", 3, "3 drill comes after shape: do that first."],
    ["leave 3", 3, "3 is not in hand: take it first."],
    ["touch 3 dry", 3, "3 has no coat to touch: lay one first."],
    ["touch 1 damp", 2, 'Say what the touch found: tacky, dry or hard, not "damp".'],
    ["hang 2 --ago 2d", 3, /^Sat 18:05 is before /],
    ["hang 3 --at 22:00", 2, "22:00 has not come, it is 18:05: say when it was."],
    ["hang 1 --at 25:99", 2, /^"25:99" is not a moment/],
    ["hang 1 --at 18:00 --ago 5m", 2, "Say --at or --ago, not both."],
    ["mend 1 polish --then seal", 2, "Say how long it took: --minutes 10."],
    ["undo 99", 2, "There is no act 99 that stands: undo without a number takes back your last one."],
    ["undo yesterday", 2, '"yesterday" is no number of an act: "dryline undo --list" shows them.'],
    ["putaway", 2, "Nothing stands at any station."],
    ["ready oven", 2, /^There is no station "oven": there are /],
    ["measure 3 moisture", 2, /^Say what was measured, its value and unit, not "moisture"/],
    ["take", 2, "Say which tags: 14, 12-14 16."],
    ["take first", 2, 'Say which tags, not "first": 14, 12-14 16.'],
    ["hang", 2, "Nothing is in hand: say which tags: 14, 12-14 16."],
    ["route 3 --skip shape --swap drill", 2, "Say only one of --skip and --swap."],
    ["amend 1", 2, "Say when it was: amend 1 20:45."],
    ["first 9", 2, "There is no 9: out are 1, 2 and 3."],
  ] as const)("%s: exit %d, one sentence, nothing written", async (line, exit, sentence) => {
    const said = await refused(bench, "Mon 18:05", line, exit);
    if (typeof sentence === "string") expect(said).toBe(sentence);
    else expect(said).toMatch(sentence);
  });

  test("too early is refused with its moment, and done anyway with a reason", async () => {
    await done(bench, "Mon 18:52", 'take 1 2 --ticked "solvent vapour"');
    await done(bench, "Mon 19:04", "hang 1 2");
    expect(await refused(bench, "Mon 19:10", "take 1", 3)).toBe(
      '1 colours opens 23:04, shuts Tue 19:04: wait, or go on anyway with a reason: --anyway "why".',
    );
    const { error } = await bench.json<{ error: { until: string } }>("take 1");
    expect(error.until).toBe("2026-03-23T23:04:00+00:00");
    expect(await done(bench, "Mon 19:11", 'take 1 --anyway "the heater was on"')).toMatch(/1 in hand 19:11/);
  });

  test("what is held is refused with its reason and moment", async () => {
    await done(bench, "Mon 18:52", 'take 1 2 --ticked "solvent vapour"');
    await done(bench, "Mon 19:04", "hang 1 2");
    // Varnish is dust-free after 45 min.
    expect(await refused(bench, "Mon 19:10", 'take 3 --ticked "wood and foam dust"', 3)).toMatch(
      /^3 shape is held till 19:49 by wet coat of 1 and 2: wait, or go on anyway/,
    );
  });

  test("several tags are all or nothing", async () => {
    const before = await newest(bench);
    expect(await refused(bench, "Mon 18:05", 'take 1 9 --ticked "solvent vapour"', 2)).toMatch(
      /^There is no 9/,
    );
    expect(await newest(bench)).toBe(before);
  });
});

async function shopOf() {
  const workshop = await bench.workshop();
  const shop = await workshop.shop();
  workshop.close();
  return shop;
}
