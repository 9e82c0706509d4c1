import type { By, EventBody, EventKind, JournalEvent } from "./event.ts";
import { EVENT_SHAPES } from "./event-shapes.ts";
import { newestVersion, UPGRADES, type Upgrade } from "./upgrades.ts";

/** A row of the table `event`, as far as it is read. */
export interface EventRow {
  readonly seq: number;
  readonly act: number;
  readonly v: number;
  readonly kind: string;
  readonly at: number;
  readonly recorded: number;
  readonly by: By;
  readonly tag: number | null;
  readonly station: string | null;
  readonly together: number;
  readonly body: string;
}

/**
 * Makes an event of a row, brought up to today's version. Never throws: the file may come from a newer dryline or have
 * been damaged.
 *
 * @returns the event, or as a sentence why the row fits none
 */
export function reviveEvent(row: EventRow, upgrades = UPGRADES): JournalEvent | string {
  const { kind, v } = row;
  if (!isEventKind(kind)) return `this dryline knows no event "${kind}"`;
  const newest = newestVersion(kind, upgrades);
  if (v < 1 || v > newest) return `this dryline knows no "${kind}" of version ${v}`;
  const body = readBody(row, upgrades[kind] ?? []);
  if (body === null) return `what it says ("${kind}") cannot be read`;
  if (!EVENT_SHAPES[kind](body)) return `what it says ("${kind}") is damaged`;
  const { seq, act, at, recorded, by, tag, station, together } = row;
  // Checked just above: the body has the form of its kind. It was made here, so it may become the event itself.
  const envelope = { kind, seq, act, v: newest, at, recorded, by, tag, station, together };
  return Object.assign(body as EventBody, envelope) as JournalEvent;
}

/** @returns the body brought up to date; null when it is none */
function readBody(row: EventRow, upgrades: readonly Upgrade[]): unknown {
  try {
    let body: unknown = JSON.parse(row.body);
    for (const upgrade of upgrades.slice(row.v - 1)) body = upgrade(body as Record<string, unknown>);
    return body;
  } catch {
    return null;
  }
}

function isEventKind(kind: string): kind is EventKind {
  return Object.hasOwn(EVENT_SHAPES, kind);
}
