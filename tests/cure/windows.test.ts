import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Span } from "../../src/cure/coat-times.ts";
import { commonWindows, joinWindows, windowsFrom } from "../../src/cure/windows.ts";
import { minutes, scuff } from "../fixtures/walker.ts";

const wash = { ...scuff, do: "wash", handsOn: minutes(3), cautions: [] };

/** Windows of one coat: sorted, not overlapping, the last perhaps open for ever. */
const someWindows: fc.Arbitrary<readonly Span[]> = fc
  .tuple(fc.uniqueArray(fc.integer({ min: 0, max: 60 }), { minLength: 2, maxLength: 8 }), fc.boolean())
  .map(([edges, forever]) => {
    const sorted = edges.toSorted((a, b) => a - b);
    const spans: Span[] = [];
    for (let i = 0; i + 1 < sorted.length; i += 2) {
      spans.push({ opens: sorted[i] ?? 0, shuts: sorted[i + 1] ?? 0, first: i % 4 === 2 ? scuff : null });
    }
    const last = spans.at(-1);
    if (last !== undefined && forever) spans[spans.length - 1] = { ...last, shuts: null };
    return spans;
  });

const isOpen = (windows: readonly Span[], moment: number) =>
  windows.some(({ opens, shuts }) => opens <= moment && (shuts === null || moment < shuts));

describe("windows of several coats", () => {
  test("4 to 24 and 0 to 2, then 24 on with a scuff: together only from 24 on, asking the scuff once", () => {
    const varnished: Span[] = [
      { opens: 4, shuts: 24, first: null },
      { opens: 24, shuts: null, first: scuff },
    ];
    const resined: Span[] = [
      { opens: 0, shuts: 2, first: null },
      { opens: 24, shuts: null, first: scuff },
    ];
    expect(commonWindows([varnished, resined])).toEqual([{ opens: 24, shuts: null, first: scuff }]);
  });

  test("two different preparations are both asked for: 5 min and 3 min make 8", () => {
    const [both] = commonWindows([
      [{ opens: 0, shuts: null, first: scuff }],
      [{ opens: 0, shuts: null, first: wash }],
    ]);
    expect(both?.first).toMatchObject({ do: "scuff and wash", handsOn: minutes(8) });
  });

  test("no coat at all is always open", () => {
    expect(isOpen(commonWindows([]), -1e15)).toBe(true);
  });

  test("together are open exactly when each of them is", () => {
    fc.assert(
      fc.property(someWindows, someWindows, fc.integer({ min: -5, max: 70 }), (one, other, moment) => {
        expect(isOpen(commonWindows([one, other]), moment)).toBe(
          isOpen(one, moment) && isOpen(other, moment),
        );
      }),
    );
  });

  test("from a moment on are the same after it and shut before it", () => {
    fc.assert(
      fc.property(
        someWindows,
        fc.integer({ min: 0, max: 60 }),
        fc.integer({ min: -5, max: 70 }),
        (windows, from, moment) => {
          expect(isOpen(windowsFrom(windows, from), moment)).toBe(moment >= from && isOpen(windows, moment));
        },
      ),
    );
  });

  test("joined where one follows at once and asks nothing more, and only there", () => {
    const spans: Span[] = [
      { opens: 0, shuts: 4, first: null },
      { opens: 4, shuts: 8, first: null },
      { opens: 8, shuts: 12, first: scuff },
      { opens: 13, shuts: null, first: scuff },
    ];
    expect(joinWindows(spans)).toEqual([
      { opens: 0, shuts: 8, first: null },
      { opens: 8, shuts: 12, first: scuff },
      { opens: 13, shuts: null, first: scuff },
    ]);
  });
});
