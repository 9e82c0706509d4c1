import type { EventKind } from "./event.ts";

/** Makes the body of one version into the body of the next. */
export type Upgrade = (body: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;

/**
 * For each kind, what leads from version 1 to 2, from 2 to 3, and so on. A kind's newest version is one more than it
 * has upgrades; none has changed since the first release. An event on disk is never rewritten.
 */
export const UPGRADES: Readonly<Partial<Record<EventKind, readonly Upgrade[]>>> = {};

/** The version in which events of a kind are written today. `newestVersion("taken") === 1` */
export function newestVersion(kind: EventKind, upgrades = UPGRADES): number {
  return 1 + (upgrades[kind]?.length ?? 0);
}
