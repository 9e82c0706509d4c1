import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sayDayCard } from "../../src/words/say-day-card.ts";
import { at } from "../fixtures/week-time.ts";
import { makePiece, makePlan, makeRow, makeSession, speech } from "./made-plan.ts";

const MONDAY = "2026-03-23";

test("a card as it is printed", () => {
  const session = makeSession({
    rows: [
      makeRow({
        setUp: { what: "mix resin", minutes: 4 },
        looks: [5, 15],
        cautions: ["epoxy"],
        shuts: { by: at("Mon 18:20") },
      }),
      makeRow({
        pieces: [16, 17, 18].map((tag) => makePiece(tag)),
        step: "pour the ballast",
        station: "lead pot",
        from: at("Mon 18:20"),
        minutes: 18,
        cautions: ["molten lead"],
      }),
      makeRow({ step: "water test", from: at("Mon 18:40"), finishes: [makePiece(14)] }),
    ],
    putAway: [{ station: "lead pot", what: "melt lead", minutes: 5, by: at("Mon 20:45") }],
  });
  expect(sayDayCard(makePlan({ sessions: [session] }), MONDAY, speech)).toEqual([
    "Day card, planned Mon 23 Mar 17:00",
    "--------------------------------------------------------------------------------",
    "Mon 23 Mar, 18:00 to 21:00, 2 h 52 free",
    "",
    "[ ] 18:00 14 smelt walker   first clear                8 min        bench",
    "          Begin by 18:20; mix resin 4 min first; look after 5 and 15 min",
    "[ ] 18:20 16-18             pour the ballast           18 min       lead pot",
    "[ ] 18:40 14 smelt walker   water test                 8 min        bench",
    "          Finished",
    "[ ] Put away melt lead, 5 min, by 20:45",
    "--------------------------------------------------------------------------------",
    "Read before you begin: epoxy and molten lead. dryline help tells each; your data",
    "sheets and local code come first.",
    "After any change print it anew: dryline plan --card",
  ]);
});

describe("whatever pieces and steps are called", () => {
  const name = fc.oneof(
    fc.string({ minLength: 1, maxLength: 60 }),
    fc.string({ unit: "grapheme", minLength: 1, maxLength: 30 }),
    fc.constantFrom("Äsche", "鮎 ayu", "½ oz", "a\u001b[2Jb", "very long ".repeat(12)),
  );
  const row = fc.tuple(name, name, name, name, fc.boolean()).map(([piece, step, station, what, made]) =>
    makeRow({
      pieces: [makePiece(123_456, { name: piece })],
      step,
      station,
      setUp: made ? { what, minutes: 20 } : null,
      cautions: [what],
    }),
  );

  test.each([true, false])("a card is plain ASCII in 80 columns (24 h clock: %s)", (clock24) => {
    fc.assert(
      fc.property(fc.array(row, { maxLength: 4 }), name, (rows, what) => {
        const session = makeSession({
          rows,
          putAway: [{ station: "pot", what, minutes: 5, by: at("Mon 20:45") }],
        });
        for (const line of sayDayCard(makePlan({ sessions: [session] }), MONDAY, { ...speech, clock24 }))
          expect(line).toMatch(/^[ -~]{0,80}$/);
      }),
      { numRuns: 150 },
    );
  });
});

test("a letter loses its marks before it becomes a question mark", () => {
  const rows = [makeRow({ pieces: [makePiece(1, { name: "Äsche 鮎" })] })];
  const card = sayDayCard(makePlan({ sessions: [makeSession({ rows })] }), MONDAY, speech);
  expect(card.join("\n")).toContain("1 Asche ?");
});
