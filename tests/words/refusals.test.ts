import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Refusal, RefusalCode } from "../../src/acts/refusal.ts";
import { sayRefusal } from "../../src/words/say-refusal.ts";
import { scuff } from "../fixtures/walker.ts";
import { at, dublin } from "../fixtures/week-time.ts";

const speech = { zone: dublin, now: at("Tue 18:42"), clock24: true };

type Facts<C extends RefusalCode> = Omit<Extract<Refusal, { code: C }>, "code" | "exit" | "until">;
type Case<C extends RefusalCode> = readonly [facts: Facts<C>, sentence: string, until?: number];

const varnishing = {
  is: "drying",
  opens: at("Tue 23:04"),
  shuts: at("Wed 19:04"),
  because: "window",
  coat: "varnish",
  step: "seal",
  stage: null,
  preparation: null,
} as const;

/** Some facts of every code, and the one sentence they make on Tuesday at 18:42. */
const cases: { readonly [C in RefusalCode]: readonly Case<C>[] } = {
  "no such tag": [
    [{ tag: 9, known: [1, 2, 5] }, "There is no 9: out are 1, 2 and 5."],
    [{ tag: 9, known: [4] }, "There is no 9: out is 4."],
    [{ tag: 9, known: [] }, "There is no 9, and nothing is out: tag a piece first."],
  ],
  "no such step": [
    [
      { tag: 14, step: "frist clear", nearest: "first clear", steps: ["seal", "first clear"] },
      '14 has no step "frist clear": perhaps "first clear".',
    ],
    [
      { tag: 14, step: "varnish", nearest: null, steps: ["seal", "eyes"] },
      '14 has no step "varnish": it has seal and eyes.',
    ],
  ],
  "no such station": [
    [
      { station: "oven", stations: ["bench", "lead pot"] },
      'There is no station "oven": there are bench and lead pot.',
    ],
    [{ station: "oven", stations: [] }, 'There is no station "oven": no piece that is out needs one.'],
  ],
  "no such set-up": [
    [
      { station: "lead pot", what: "mix resin", setUps: ["melt lead"] },
      '"mix resin" is not set up at the lead pot: say melt lead.',
    ],
    [
      { station: "bench", what: "", setUps: ["mix resin", "load varnish"] },
      "Several can be set up at the bench: say mix resin or load varnish.",
    ],
    [
      { station: "bench", what: "mix resin", setUps: [] },
      'Nothing is set up at the bench: its work needs no "mix resin".',
    ],
  ],
  "no such answer": [
    [{ step: "water test", answers: ["passes", "tune"] }, "Water test wants its answer: say passes or tune."],
    [{ step: "seal", answers: [] }, "Seal has no answers: hang it without one."],
  ],
  "no such act": [
    [{ act: 231 }, "There is no act 231 that stands: undo without a number takes back your last one."],
  ],
  "several steps fit": [
    [{ tag: 14, steps: ["eyes", "last clear"] }, "14 could go on with eyes or last clear: say which."],
  ],
  "nothing to do": [
    [
      {
        tag: 14,
        states: [
          { step: "seal", state: { is: "done", at: at("Mon 19:04") } },
          { step: "second seal", state: varnishing },
          { step: "colours", state: { is: "blocked", by: ["second seal"] } },
        ],
      },
      "Nothing of 14 can be worked now: second seal opens 23:04, shuts Wed 19:04.",
    ],
    [
      { tag: 14, states: [{ step: "colours", state: { is: "blocked", by: ["second seal"] } }] },
      "Nothing of 14 can be worked now: what is left comes after other steps.",
    ],
    [{ tag: 14, states: [] }, "Nothing of 14 can be worked now: all is done, mend it to go on."],
  ],
  blocked: [
    [{ tag: 14, step: "eyes", by: ["seal"] }, "14 eyes comes after seal: do that first."],
    [
      { tag: 14, step: "eyes", by: ["seal", "colours"] },
      "14 eyes comes after seal and colours: do those first.",
    ],
  ],
  "too early": [
    [
      { tag: 14, step: "second seal", state: varnishing },
      "14 second seal opens 23:04, shuts Wed 19:04: wait, or go on anyway with a reason.",
    ],
    [
      {
        tag: 1,
        step: "detail",
        state: { ...varnishing, opens: at("Wed 08:38"), because: "stage", stage: "dry-hard" },
      },
      "1 detail opens Wed 08:38, when varnish is dry-hard: wait, or go on anyway with a reason.",
    ],
    [
      { tag: 1, step: "detail", state: { ...varnishing, opens: null, because: "tacky" } },
      "1 detail waits for a touch that says dry: it was tacky, or go on anyway with a reason.",
    ],
    [
      { tag: 1, step: "detail", state: { ...varnishing, opens: null, because: "feel first" } },
      "1 detail opens by a touch alone, not by the clock (varnish): touch it and say dry or hard, or go on anyway with a reason.",
    ],
    [
      {
        tag: 4,
        step: "hangers",
        state: { ...varnishing, opens: at("Fri 19:00"), because: "between windows", preparation: scuff },
      },
      "4 hangers is between two windows, the next opens Fri 19:00 after scuff 5 min: wait, or go on anyway with a reason.",
    ],
  ],
  "too late": [
    [
      { tag: 2, step: "colours", since: at("Tue 18:04"), preparation: scuff, mendFrom: "second seal" },
      "The window for 2 colours shut 18:04: take it for scuff 5 min first, or go on anyway with a reason.",
    ],
    [
      { tag: 2, step: "colours", since: at("Tue 18:04"), preparation: null, mendFrom: "second seal" },
      "The window for 2 colours shut 18:04: mend it and go on from second seal, or go on anyway with a reason.",
    ],
  ],
  "already in hand": [
    [
      { tag: 14, step: "drill", since: at("Tue 18:02") },
      "14 drill has been in hand since 18:02: hang it when it is done.",
    ],
  ],
  "not in hand": [[{ tag: 14 }, "14 is not in hand: take it first."]],
  "already done": [
    [
      { tag: 14, step: "seal", at: at("Mon 19:04") },
      "14 seal was done Mon 19:04: mend the piece to do it again.",
    ],
  ],
  ended: [
    [
      { tag: 5, how: "finished", at: at("Mon 15:50") },
      "5 is finished since Mon 15:50: mend it to work on it again.",
    ],
    [
      { tag: 5, how: "scrapped", at: at("Mon 15:50") },
      "5 is scrapped since Mon 15:50: undo that if it was a mistake, or tag another like it.",
    ],
    [{ tag: 5, how: "given", at: at("Mon 15:50") }, "5 is given away since Mon 15:50: tag another like it."],
  ],
  "other in hand": [
    [
      { tag: 12, tags: [1, 2], step: "seal", since: at("Tue 18:30") },
      "1 and 2 seal have been in hand since 18:30 and a coat begun cannot be left: hang 1 and 2 before 12.",
    ],
  ],
  "coat half laid": [
    [
      { tag: 14, step: "seal" },
      "14 seal is a coat already begun, which cannot be left: hang it when it is laid.",
    ],
  ],
  "not begun": [[{ tag: 14 }, "14 is not begun, so it hangs nowhere yet: work a step of it first."]],
  "no coat": [[{ tag: 14 }, "14 has no coat to touch: lay one first."]],
  held: [
    [
      {
        tags: [3],
        step: "pour the ballast",
        holds: [
          {
            code: "keep apart",
            because: "solvent vapour of 1 and 2",
            until: at("Tue 19:44"),
            tags: [1, 2],
            remedy: null,
          },
        ],
      },
      "3 pour the ballast is held till 19:44 by solvent vapour of 1 and 2: wait, or go on anyway with a reason.",
      at("Tue 19:44"),
    ],
    [
      {
        tags: [3],
        step: "pour the ballast",
        holds: [
          {
            code: "measure first",
            because: "wood moisture of 3 is not measured, at most 10 %",
            until: null,
            tags: [3],
            remedy: "measure the wood moisture",
          },
        ],
      },
      "3 pour the ballast is held, as wood moisture of 3 is not measured, at most 10 %: measure the wood moisture, or go on anyway with a reason.",
    ],
  ],
  "no rotation in this air": [
    [
      { process: "perch walker", why: { because: "never dries", step: "seal", coat: "sealer" } },
      "Perch walker: sealer (seal) never dries in this air.",
    ],
  ],
  "read the caution": [
    [
      { cautions: ["molten lead", "hot pot"], step: "pour the ballast", tags: [3] },
      '3 pour the ballast asks to read "molten lead" and "hot pot" first: read and tick.',
    ],
  ],
  "before it was tagged": [
    [
      { tag: 4, taggedAt: at("Tue 18:30"), at: at("last Sun 18:42") },
      "Sun 18:42 is before 4 was tagged, 18:30: say a later time.",
    ],
  ],
  "before the last": [
    [
      { tag: 14, lastAt: at("Tue 18:30"), what: "hung seal", at: at("Tue 18:10") },
      "18:10 is before what was last written of 14 (hung seal, 18:30): say a later time.",
    ],
    [
      { tag: null, lastAt: at("Tue 18:30"), what: "put away", at: at("Tue 18:10") },
      "18:10 is before what was last written of that station (put away, 18:30): say a later time.",
    ],
  ],
  "after the next": [
    [
      { tag: 14, nextAt: at("Tue 18:10"), what: "taken detail", at: at("Tue 18:30") },
      "18:30 is after what followed on 14 (taken detail, 18:10): say an earlier time.",
    ],
  ],
  "in the future": [
    [{ at: at("Tue 22:00"), now: at("Tue 18:42") }, "22:00 has not come, it is 18:42: say when it was."],
  ],
  "nothing to undo": [[{}, "Nothing of yours is left to undo: each act stands once or is undone."]],
  "leaned on": [
    [
      { act: 7, byAct: 9, what: "hung seal, 1", byWhat: "taken second seal, 1" },
      '"hung seal, 1" cannot be undone while "taken second seal, 1" (act 9) leans on it: undo that first.',
    ],
  ],
  "nothing stands": [[{ station: "lead pot" }, "Nothing stands at the lead pot: ready it first."]],
  "unfit value": [
    [
      { what: "colour", value: "red", expected: "a step painted by the scheme" },
      'Colour cannot be "red": it takes a step painted by the scheme.',
    ],
  ],
  "nothing changes": [[{ what: "hours" }, "Nothing would change, it is so already: hours."]],
};

const all = Object.entries(cases).flatMap(([code, said]) =>
  (said as readonly Case<RefusalCode>[]).map(([facts, sentence, until = null]) => ({
    code,
    facts,
    sentence,
    until,
  })),
);

describe("a refusal", () => {
  test.each(all)("$code: $sentence", ({ code, facts, sentence, until }) => {
    expect(sayRefusal({ ...facts, code, exit: 3, until } as Refusal, speech)).toBe(sentence);
  });

  test("is one sentence on one line, whatever the names in it", () => {
    const hostile = fc.string({ unit: "binary", maxLength: 12 });
    fc.assert(
      fc.property(fc.constantFrom(...all), hostile, ({ code, facts, until }, name) => {
        // Every name in the facts becomes a hostile one; the words that decide how it is said stay.
        const kept = new Set(["because", "is", "how", "stage", "code"]);
        const poisoned = JSON.parse(JSON.stringify(facts), (key, value: unknown) =>
          typeof value === "string" && !kept.has(key) ? name : value,
        ) as object;
        const said = sayRefusal({ ...poisoned, code, exit: 3, until } as unknown as Refusal, speech);
        expect(said).not.toMatch(/[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u202a-\u202e\u2066-\u2069]/u);
        expect(said.endsWith(".")).toBe(true);
      }),
    );
  });
});
