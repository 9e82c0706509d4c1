import { expect, test } from "vitest";
import { pictureOf } from "../../src/dashboard/picture.ts";
import type { DashboardState, Overlay } from "../../src/dashboard/state.ts";
import { makeState } from "./made-state.ts";

/** What no cell of the picture may hold: controls, halves of letters, marks that turn the writing. */
const OBEYED = /[\p{Cc}\p{Cs}\u200e\u200f\u202a-\u202e\u2066-\u2069\u2028\u2029]/u;

const EVIL = "rack\u001b[2J\u001b]0;owned\u0007\u009b31m\u202e";

const effects = [{ do: "read" }] as const;
const request = { act: "note", at: 0, tags: [], text: EVIL } as const;

const overlays: readonly (readonly [string, Overlay])[] = [
  ["a text", { is: "text", title: EVIL, lines: [EVIL], top: 0 }],
  ["the days", { is: "days", lines: [EVIL], top: 0, about: "" }],
  ["a choice", { is: "choose", title: EVIL, lines: [EVIL], choices: [{ key: "1", label: EVIL, effects }] }],
  [
    "a choice in two columns",
    {
      is: "choose",
      title: EVIL,
      lines: [],
      choices: Array.from({ length: 60 }, () => ({ key: "1", label: EVIL, effects })),
    },
  ],
  ["a caution", { is: "caution", cautions: [EVIL], lines: [EVIL], top: 0, request }],
  ["words typed", { is: "type", title: EVIL, typed: EVIL, purpose: { for: "note", tags: [] } }],
];

/** All text of the picture; each span for itself, as none may lean on what stands beside it. */
function spansOf(state: DashboardState): readonly string[] {
  return pictureOf(state).flatMap((line) => line.map(({ text }) => text));
}

test.each(overlays)("nothing in %s that lies over the picture is obeyed by a terminal", (_what, overlay) => {
  const texts = spansOf({ ...makeState(), overlay });
  expect(texts.filter((text) => OBEYED.test(text))).toEqual([]);
  expect(texts.join("\n")).toContain("rack");
});

test("nothing in a message or in the week is obeyed by a terminal", () => {
  const state = makeState();
  const facts = state.facts === null ? null : { ...state.facts, week: EVIL };
  const texts = spansOf({ ...state, facts, message: { text: EVIL, tone: "told" } });
  expect(texts.filter((text) => OBEYED.test(text))).toEqual([]);
  expect(texts.filter((text) => text.includes("rack"))).toHaveLength(2);
});
