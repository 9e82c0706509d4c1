import fc from "fast-check";
import { expect, test } from "vitest";
import { pictureOf } from "../../src/dashboard/picture.ts";
import { update } from "../../src/dashboard/update.ts";
import { widthOf } from "../../src/words/width.ts";
import { at } from "../fixtures/week-time.ts";
import { lineText } from "./line-text.ts";
import {
  busyAnswer,
  makeAnswer,
  makeBench,
  makeFacts,
  makeHand,
  makePrepared,
  makeWaiting,
  makeWork,
} from "./made-answer.ts";
import { makeState, picture, press } from "./made-state.ts";

const small = { columns: 80, rows: 24 };
const large = { columns: 120, rows: 40 };

test("at 80x24 a busy evening shows its work, what is held, every piece out and the keys, nothing cut", () => {
  const lines = picture(makeState());
  expect(lines).toHaveLength(24);
  expect(lines[0]).toBe(" Mon 23 Mar 18:42                                 bench till 21:00, 2 h 18 left");
  expect(lines[1]).toBe(" bench: mix resin, 11 min left");
  expect(lines[3]).toBe(">11 seal in hand since 18:38, usually 6 min");
  expect(lines[4]).toMatch(/^ 13 perch walker +LAST CLEAR +8 min, mix resin stands ready +begin by 18:53$/);
  expect(lines[5]).toMatch(/^ 14 smelt walker +FIRST CLEAR +8 min \+ load clear 6 min +begin by 19:34$/);
  expect(lines[6]).toMatch(/^ 15 two-tone dace +EYES +10 min +any time$/);
  expect(lines[7]).toMatch(/^ held 16-18 +pour the ballast, 18 min \+ melt lead 20 min: till 19:20/);
  for (const tag of [11, 12, 13, 14, 15, 16]) {
    expect(lines.slice(12).filter((line) => line.startsWith(` ${tag} `))).toHaveLength(1);
  }
  expect(lines.at(-3)).toBe(" since Mon: 3 finished, aim 5");
  expect(lines.at(-1)).toBe(" Enter do it  h hang  t take  o touch  a tag  w week  u undo  ? keys  q quit");
});

test("at 120x40 each piece tells stage, opening and shut in full", () => {
  const lines = picture(makeState(makeFacts(busyAnswer()), large));
  expect(lines).toHaveLength(40);
  expect(lines.find((line) => line.startsWith(" 12 "))).toMatch(
    /dust-free 31 %, opens 23:04, shuts Tue 19:04$/,
  );
});

test("the marked row tells why it stands there and what leaving it costs", () => {
  const lines = picture(press(makeState(), "j", "j").state);
  expect(lines).toContain("   shuts 19:40");
  expect(lines).toContain("   if left: scuff 5 min from 19:40, finished Fri 19:10, not Thu 19:02");
});

test("what leaving the marked row costs is told whole where a line is free", () => {
  const usual = makeWork();
  const ifLeft = usual.ifLeft && {
    ...usual.ifLeft,
    others: { amends: 0, broken: [], delay: 2_940, later: [] },
  };
  const few = makeFacts(makeAnswer({ work: [makeWork({ ifLeft })], waiting: [makeWaiting(11)] }));
  const text = picture(makeState(few)).join(" ").replaceAll(/ +/g, " ");
  expect(text).toContain("finished Fri 19:10, not Thu 19:02, the others 2 d 1 h later in all");
});

test("the marked work in hand tells the one line of each of its cautions", () => {
  expect(picture(makeState())).toContain("   mind solvent vapour: open the window, no flame");
});

test("a coat whose window would pass while the bench is shut is warned of before it is taken", () => {
  // Of the made-up week: hung Saturday 12:00 it opens 16:00 as the bench shuts, and shuts Sunday 13:00.
  const warning = {
    opens: at("Sat 16:00"),
    shuts: at("Sun 13:00"),
    preparation: null,
    nextMinutes: 8,
    hangBy: at("Sat 11:52"),
    layFrom: at("next Mon 18:00"),
  };
  const lines = picture(makeState(makeFacts(makeAnswer({ work: [makeWork({ warning })] })))).join("\n");
  expect(lines).toContain("16:00");
  expect(lines).toContain("13:00");
});

test("the mark is seen without colour, and moving it moves no other line", () => {
  const before = picture(makeState());
  const after = picture(press(makeState(), "j").state);
  const marked = (lines: readonly string[]) => lines.filter((line) => line.startsWith(">"));
  expect(marked(before)).toHaveLength(1);
  expect(marked(after)[0]).toContain("13 perch walker");
  // Lines 9 and 10 tell about the marked row.
  const unmarked = (lines: readonly string[]) => lines.toSpliced(9, 2).map((line) => line.replace(/^>/, " "));
  expect(unmarked(after)).toEqual(unmarked(before));
});

test("bars run from the hang to the opening, through the window, to the shut and beyond", () => {
  // 36 cells of 15 min, the shut hours between in ten: 18:00 is cell 1, now cell 3, 21:00 cell 13. The night's cells are
  // 126 min, so 23:04 is in the first. Tue 18:00 is cell 23, 19:04 cell 27, 21:00 cell 35.
  const row = picture(makeState()).find((line) => line.startsWith(" 12 "));
  const bar = row?.slice(18, 18 + 36);
  expect(bar).toBe("---|---------[=============]~~~~~~~~");
});

test("what is in hand is drawn from when it was taken, whatever hung before", () => {
  const facts = makeFacts(
    makeAnswer({
      inHand: [makeHand({ tags: [11], since: at("Mon 18:20") })],
      waiting: [makeWaiting(11, { name: "craw", state: "in hand", step: "seal", since: at("Mon 12:00") })],
    }),
  );
  const row = picture(makeState(facts)).find((line) => line.startsWith(" 11 craw "));
  // Cells of 15 min: the bench opened at 18:00, taken 18:20 in the next, and it is 18:42 in the one after.
  expect(row).toMatch(/^ 11 craw +\*\| /);
});

test("before the bench shuts it says what must still be put away", () => {
  const bench = makeBench({ minutesLeft: 17, putAway: 5 });
  const pot = makePrepared({
    station: "lead pot",
    setUp: "melt lead",
    until: at("Mon 21:03"),
    putAwayMinutes: 5,
  });
  const lines = picture(makeState(makeFacts(makeAnswer({ bench, prepared: [pot] }))));
  expect(lines).toContain(" Before the bench shuts put away: melt lead at the lead pot (5 min).");
  const early = picture(makeState(makeFacts(makeAnswer({ bench: makeBench(), prepared: [pot] }))));
  expect(early.join("\n")).not.toContain("put away");
});

test.each([
  [{ state: "getting ready", ready: at("Mon 18:50"), until: at("Mon 19:30") }, "ready in 8 min"],
  [{ state: "ready", until: at("Mon 18:53") }, "11 min left"],
  [{ state: "ready", until: null }, "until another load"],
  [{ state: "kept too long", until: at("Mon 18:30") }, "kept too long"],
  [{ state: "all served", until: at("Mon 18:53") }, "has served all it can"],
] as const)("what stands ready has its own timer: %j", (changes, said) => {
  const [, line] = picture(makeState(makeFacts(makeAnswer({ prepared: [makePrepared(changes)] }))));
  expect(line).toBe(` bench: mix resin, ${said}`);
});

test("hours that were never said are told as assumed, without losing day and clock", () => {
  const bench = makeBench({ assumedHours: true, putAway: 5 });
  const [clock, ...hours] = picture(makeState(makeFacts(makeAnswer({ bench }))));
  expect(clock).toBe(" Mon 23 Mar 18:42");
  expect(hours.slice(0, 2).join("")).toContain("(hours assumed: say yours)");
});

test("an empty shop says how to begin", () => {
  const lines = picture(makeState(makeFacts(makeAnswer())));
  expect(lines.join("\n")).toContain("a tags a new piece");
});

test("both ends of a forgotten window show where there is room", () => {
  const forgotten = { usual: at("Mon 18:46"), latest: at("Mon 21:00") };
  const facts = makeFacts(
    makeAnswer({
      inHand: [makeHand({ forgotten })],
      waiting: [makeWaiting(11, { otherEnd: { opens: at("Tue 1:14"), shuts: at("Tue 21:14") } })],
    }),
  );
  const lines = picture(makeState(facts, { columns: 160, rows: 40 }));
  expect(lines.join("\n")).toContain("hung 18:46, as usual?");
});

test("more pieces and rows than fit are counted, not dropped silently", () => {
  const work = Array.from({ length: 30 }, (_, index) => makeWork({ tags: [100 + index] }));
  const waiting = Array.from({ length: 200 }, (_, index) => makeWaiting(100 + index));
  const lines = picture(makeState(makeFacts(makeAnswer({ work, waiting }))));
  const shownWork = lines.filter((line) => line.includes("FIRST CLEAR")).length;
  const shownOut = lines.filter((line) => line.includes("opens 4 h 22")).length;
  expect(lines).toContain(`   and ${30 - shownWork} more below`);
  expect(lines).toContain(` and ${200 - shownOut} more: dryline rack shows all`);
});

test("names from files cannot steer the terminal or widen a row", () => {
  const name = "evil\u001b[2J\u0007 鮎鮎鮎鮎鮎鮎鮎鮎鮎鮎鮎鮎鮎";
  const work = [makeWork({ name })];
  const lines = pictureOf(makeState(makeFacts(makeAnswer({ work, waiting: [makeWaiting(14, { name })] }))));
  const texts = lines.map(lineText);
  for (const text of texts) {
    expect(text).not.toMatch(/\p{Cc}/u);
    expect(widthOf(text)).toBeLessThanOrEqual(80);
  }
});

test("at every size each line fits and there are as many as the screen has", () => {
  const bench = makeBench({ assumedHours: true, putAway: 12, minutesLeft: 20 });
  const answer = { ...busyAnswer(), bench };
  const message = {
    text: "Since you were here: 1 and 2 opened 23:04; 3 shut Tue 19:04.",
    tone: "told",
  } as const;
  fc.assert(
    fc.property(fc.integer({ min: 20, max: 220 }), fc.integer({ min: 5, max: 70 }), (columns, rows) => {
      const state = update(makeState(makeFacts(answer), { columns, rows }), { is: "told", message }).state;
      for (const shown of [
        state,
        press(state, "?").state,
        press(state, "a").state,
        press(state, "n").state,
      ]) {
        const lines = pictureOf(shown).map(lineText);
        expect(lines).toHaveLength(rows);
        expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(columns);
      }
    }),
    { numRuns: 150 },
  );
});

test.each([small, large])(
  "what lies over the picture leaves day, clock and the keys in sight at %j",
  (size) => {
    const lines = picture(press(makeState(makeFacts(busyAnswer()), size), "?").state);
    expect(lines[0]).toContain("Mon 23 Mar 18:42");
    expect(lines.join("\n")).toContain("tag a new piece");
    expect(lines.join("\n")).toContain("Esc closes");
  },
);

test("a long list to choose from is laid in two columns, none of it out of sight", () => {
  const choices = Array.from({ length: 30 }, (_, index) => ({
    key: String(index),
    label: `step ${index + 1}`,
    effects: [],
  }));
  const overlay = { is: "choose" as const, title: "From which step?", lines: [], choices };
  const seen = picture({ ...makeState(), overlay }).join("\n");
  for (const { label } of choices) expect(seen).toMatch(new RegExp(`\\b${label}\\b`));
  expect(seen).toContain("Esc  do nothing");
});

test("the marked row is always in sight, also where two lines are left for the work", () => {
  const work = [13, 14, 15, 16].map((tag) => makeWork({ tags: [tag] }));
  let state = makeState(makeFacts(makeAnswer({ work })), { columns: 40, rows: 10 });
  for (const tag of [13, 14, 15, 16]) {
    expect(picture(state).filter((line) => line.startsWith(`>${tag} `))).toHaveLength(1);
    state = press(state, "j").state;
  }
});

test("where not all pieces fit, the shared clock shows the page with the marked one, or with the tag typed", () => {
  const tags = Array.from({ length: 30 }, (_, index) => 101 + index);
  const work = tags.map((tag) => makeWork({ tags: [tag] }));
  const waiting = tags.map((tag) => makeWaiting(tag));
  let state = makeState(makeFacts(makeAnswer({ work, waiting })));
  const onTheClock = () => picture(state).flatMap((text) => /^ (\d+) .*opens 4 h 22/.exec(text)?.[1] ?? []);
  const first = onTheClock();
  expect(first[0]).toBe("101");
  for (const tag of tags) {
    expect(onTheClock()).toContain(String(tag));
    expect(onTheClock()).toHaveLength(first.length);
    state = press(state, "j").state;
  }
  expect(onTheClock().at(-1)).toBe("130");
  state = press(state, "1", "0", "2").state;
  expect(onTheClock()).toEqual(first);
});
