import { openingAfter, shutAfter } from "../plan/lag.ts";
import type { Lag, PlanWindow } from "../plan/problem.ts";
import type { Minutes } from "../time/instant.ts";

/**
 * The same wait told from another minute 0. Entries of a table that fall between two are taken as they would be read,
 * so that a shifted opening is never too early and a shifted shut never too late.
 *
 * @param read how it will be read: `openingAfter` or `shutAfter`
 */
export function shiftLag(lag: Lag, by: Minutes, read: (lag: Lag, from: Minutes) => Minutes): Lag {
  if (typeof lag === "number") return lag;
  const { every, reached } = lag;
  const count = Math.max(1, reached.length - Math.floor(by / every));
  return {
    every,
    reached: Array.from({ length: count }, (_, index) => {
      const end = read(lag, index * every + by);
      return end === Number.POSITIVE_INFINITY ? null : end - by;
    }),
  };
}

/** A window whose opening and shut are told from another minute 0. */
export function shiftWindow(window: PlanWindow, by: Minutes): PlanWindow {
  return {
    opens: shiftLag(window.opens, by, openingAfter),
    shuts: window.shuts === null ? null : shiftLag(window.shuts, by, shutAfter),
    preparation: window.preparation,
  };
}
