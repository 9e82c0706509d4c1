import { expect, test } from "vitest";
import { type InkKey, keysOf } from "../../src/dashboard/keys.ts";

const none: InkKey = {
  upArrow: false,
  downArrow: false,
  pageUp: false,
  pageDown: false,
  return: false,
  escape: false,
  backspace: false,
  delete: false,
  ctrl: false,
  meta: false,
  tab: false,
};

test("several characters in one chunk are as many keys, in their order", () => {
  expect(keysOf("14t", none)).toEqual([
    { name: "char", char: "1" },
    { name: "char", char: "4" },
    { name: "char", char: "t" },
  ]);
});

test("a line end inside a chunk is Enter, other control characters are nothing", () => {
  expect(keysOf("1\r\u0007\u007f\u009b", none)).toEqual([{ name: "char", char: "1" }, { name: "enter" }]);
});

test("a letter outside the basic plane is one key", () => {
  expect(keysOf("𝄞é", none)).toEqual([
    { name: "char", char: "𝄞" },
    { name: "char", char: "é" },
  ]);
});

test.each([
  ["upArrow", "up"],
  ["downArrow", "down"],
  ["pageUp", "pageUp"],
  ["pageDown", "pageDown"],
  ["return", "enter"],
  ["escape", "escape"],
  ["backspace", "backspace"],
  ["delete", "backspace"],
] as const)("the flag %s is the key %s", (flag, name) => {
  expect(keysOf("", { ...none, [flag]: true })).toEqual([{ name }]);
});

test.each(["ctrl", "meta", "tab"] as const)("a letter held with %s acts on nothing", (flag) => {
  expect(keysOf("h", { ...none, [flag]: true })).toEqual([]);
});
