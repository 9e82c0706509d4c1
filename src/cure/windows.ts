import type { Preparation } from "../process/coat.ts";
import type { Instant } from "../time/instant.ts";
import type { Span } from "./coat-times.ts";

/**
 * The moments at which every one of several coats has a window open: what work upon all of them waits for. Where two
 * windows ask for work first, both are asked for, once if it is the same.
 *
 * @param coats the windows of each coat; none at all: always open
 */
export function commonWindows(coats: readonly (readonly Span[])[]): readonly Span[] {
  return coats.reduce<readonly Span[]>(
    (common, windows) => common.flatMap((one) => windows.flatMap((other) => overlap(one, other))),
    [{ opens: Number.NEGATIVE_INFINITY, shuts: null, first: null }],
  );
}

function overlap(one: Span, other: Span): Span[] {
  const opens = Math.max(one.opens, other.opens);
  const shuts = earlier(one.shuts, other.shuts);
  if (shuts !== null && shuts <= opens) return [];
  return [{ opens, shuts, first: both(one.first, other.first) }];
}

/** The part of each window from a moment on; those that shut before it are gone. */
export function windowsFrom(windows: readonly Span[], moment: Instant): readonly Span[] {
  return windows.flatMap((window) => {
    if (window.shuts !== null && window.shuts <= moment) return [];
    return window.opens >= moment ? [window] : [{ ...window, opens: moment }];
  });
}

/** The windows with those that follow at once and ask nothing more made one with the one before. */
export function joinWindows(windows: readonly Span[]): readonly Span[] {
  const joined: Span[] = [];
  for (const window of windows) {
    const before = joined.at(-1);
    if (before !== undefined && before.shuts === window.opens && before.first === window.first) {
      joined[joined.length - 1] = { ...before, shuts: window.shuts };
    } else joined.push(window);
  }
  return joined;
}

/** The earlier of two moments, where null is never. */
function earlier(one: Instant | null, other: Instant | null): Instant | null {
  if (one === null || other === null) return one ?? other;
  return Math.min(one, other);
}

/** Work asked for by two windows at once: the greater of two of the same kind, else the one and the other. */
function both(one: Preparation | null, other: Preparation | null): Preparation | null {
  if (one === null || other === null) return one ?? other;
  if (one.do === other.do) return one.handsOn.likely >= other.handsOn.likely ? one : other;
  return {
    do: `${one.do} and ${other.do}`,
    handsOn: {
      low: one.handsOn.low + other.handsOn.low,
      likely: one.handsOn.likely + other.handsOn.likely,
      high: one.handsOn.high + other.handsOn.high,
    },
    givesOff: [...one.givesOff, ...other.givesOff],
    cautions: [...new Set([...one.cautions, ...other.cautions])],
  };
}
