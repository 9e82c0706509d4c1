import type { Project, StartLag } from "../project.ts";
import { findLongestPaths, type LongestPaths } from "./longest-paths.ts";

/** A project's temporal network: its activities, then the origin of time, then the end of the last activity. */
export interface Temporal {
  readonly origin: number;
  readonly end: number;
  readonly lags: readonly StartLag[];
  readonly paths: LongestPaths;
  /** No schedule that is worth having is longer, if there is one at all. */
  readonly horizon: number;
}

/** @returns null when the lags contradict each other */
export function makeTemporal({ activities, lags }: Project): Temporal | null {
  const origin = activities.length;
  const end = origin + 1;
  const all = [
    ...lags,
    { from: origin, to: end, least: 0 },
    ...activities.flatMap(({ duration }, activity) => [
      { from: origin, to: activity, least: 0 },
      { from: activity, to: end, least: duration },
    ]),
  ];
  const paths = findLongestPaths(activities.length + 2, all);
  return paths === null
    ? null
    : { origin, end, lags: all, paths, horizon: findHorizon({ activities, lags }) };
}

/**
 * One activity after the other, each as long as it or the longest lag from it: if there is a schedule, there is one
 * that is no longer (Bartusch, Möhring and Radermacher, Annals of Operations Research 16, 1988).
 */
function findHorizon({ activities, lags }: Pick<Project, "activities" | "lags">): number {
  const longest = activities.map(({ duration }) => duration);
  for (const { from, least } of lags) longest[from] = Math.max(longest[from] ?? 0, least);
  return longest.reduce((sum, most) => sum + most, 0);
}
