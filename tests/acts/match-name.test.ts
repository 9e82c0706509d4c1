import { describe, expect, test } from "vitest";
import { matchName } from "../../src/acts/match-name.ts";

const names = ["seal", "second seal", "first clear", "last clear"];

describe("a name said in a hurry", () => {
  test.each([
    ["the very name, though another begins or ends so", "seal", { found: "seal" }],
    ["in other letters and with stray spaces", "  SECOND   Seal ", { found: "second seal" }],
    ["its beginning, while no other begins so", "las", { found: "last clear" }],
    ["the beginning of several", "s", { several: ["seal", "second seal"] }],
    ["a word inside several", "clear", { several: ["first clear", "last clear"] }],
    ["a slip of two letters", "sael", { nearest: "seal" }],
    ["nothing near", "varnish it all", { nearest: null }],
    ["nothing at all", "  ", { nearest: null }],
  ])("%s", (_, said, match) => {
    expect(matchName(said, names)).toEqual(match);
  });
});
