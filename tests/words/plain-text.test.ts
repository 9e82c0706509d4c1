import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { plainText } from "../../src/words/plain-text.ts";
import { cutTo, fitTo, widthOf, wrapTo } from "../../src/words/width.ts";

/** Letters a hostile name is made of: escapes, control characters, direction marks, wide and combining ones. */
const hostile = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        "\u001b[31m",
        "\u001b]0;title\u0007",
        "\u001b[2J",
        "\u009b1m",
        "\u001bP+q\u001b\\",
        "\u202e",
        "\u200b",
        "\ud800",
        "鮎",
        "e\u0301",
        "\u2028",
        "🎣",
      ),
      fc.string({ unit: "binary", maxLength: 4 }),
    ),
  )
  .map((parts) => parts.join(""));

describe("text from a file, a note or a name", () => {
  test.each([
    ["level\nthe \u001b[31mrun\u001b[0m", "level the run"],
    ["\u001b]0;rm -rf\u0007walker", "walker"],
    ["walker\u001b]8;;http://example.org\u001b\\link", "walkerlink"],
    ["a\u009b31mb", "ab"],
    ["two\r\nlines\tand a tab", "two lines and a tab"],
    ["rev\u202eersed", "reversed"],
    ["zero\u200bwidth\ufeff", "zerowidth"],
    ["half \ud83d a pair", "half  a pair"],
    ["Ukelei 鮎 é ñ 20 °C", "Ukelei 鮎 é ñ 20 °C"],
    ["\u001b", ""],
    ["\u001b[", ""],
  ])("%j is shown as %j", (text, shown) => {
    expect(plainText(text)).toBe(shown);
  });

  test("never keeps a control character, an escape or a mark that turns the writing round", () => {
    fc.assert(
      fc.property(hostile, (text) => {
        expect(plainText(text)).not.toMatch(
          /[\p{Cc}\p{Cs}\u200e\u200f\u202a-\u202e\u2066-\u2069\u2028\u2029]/u,
        );
      }),
    );
  });

  test("is the same when made plain twice, and printable ASCII is never changed", () => {
    fc.assert(
      fc.property(hostile, fc.string(), (text, ascii) => {
        expect(plainText(plainText(text))).toBe(plainText(text));
        expect(plainText(ascii)).toBe(ascii);
      }),
    );
  });
});

describe("the width of a text", () => {
  test.each([
    ["smelt", 5],
    ["", 0],
    // Two cells each: UAX #11 says W for both.
    ["鮎", 2],
    ["한글", 4],
    // A letter and its combining acute accent take one cell.
    ["e\u0301", 1],
    ["20 °C", 5],
  ])("%s takes %d cells", (text, cells) => expect(widthOf(text)).toBe(cells));

  test("is exact after fitting, whatever the text", () => {
    fc.assert(
      fc.property(hostile, fc.integer({ min: 0, max: 40 }), (text, cells) => {
        expect(widthOf(fitTo(plainText(text), cells))).toBe(cells);
      }),
    );
  });

  test("is never more than asked for after cutting or wrapping, and wrapping loses no letter", () => {
    fc.assert(
      fc.property(hostile, fc.integer({ min: 2, max: 40 }), (text, cells) => {
        const plain = plainText(text);
        expect(widthOf(cutTo(plain, cells))).toBeLessThanOrEqual(cells);
        const lines = wrapTo(plain, cells);
        for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(cells);
        expect(lines.join("").replaceAll(" ", "")).toBe(plain.replaceAll(" ", ""));
      }),
    );
  });

  test("what is cut shows that it was", () => {
    expect(cutTo("two-tone dace", 8)).toBe("two-ton~");
    expect(fitTo("鮎鮎", 4)).toBe("鮎鮎");
    // The second does not fit beside the mark: one cell of the three is left free.
    expect(fitTo("鮎鮎", 3)).toBe("鮎~");
    expect(wrapTo("level the run", 9)).toEqual(["level the", "run"]);
  });
});
