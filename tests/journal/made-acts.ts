import type { EventBody, NewEvent, Tag } from "../../src/journal/event.ts";
import type { Append, Expectation } from "../../src/journal/journal.ts";
import type { Instant } from "../../src/time/instant.ts";
import { walker } from "../fixtures/walker.ts";

/** Monday 23 March 2026, 18:00 in UTC and in Dublin. */
export const monday: Instant = Date.UTC(2026, 2, 23, 18);

export const hours = (count: number) => count * 3_600_000;
export const days = (count: number) => count * 86_400_000;

/** The walker of the fixtures under a hash of these tests' own. */
export const walkers = [{ hash: "walker-1", definition: walker }];

/** An append that expects nothing, or what is given. */
export function anAct(
  events: readonly NewEvent[],
  recorded: Instant = events[0]?.at ?? monday,
  expects: Partial<Expectation> = {},
): Append {
  return {
    events,
    by: "maker",
    recorded,
    expects: { tags: {}, stations: {}, ...expects },
    processes: walkers,
  };
}

export function tagged(tag: Tag, at: Instant = monday, process = "walker-1"): NewEvent {
  const body = { scheme: [], due: null, price: null, for: null, hung: null };
  return { kind: "tagged", at, tag, station: null, process, name: `lure ${tag}`, ...body };
}

export function taken(tag: Tag, step: string, at: Instant, station = "bench"): NewEvent {
  const body = { pass: 1, part: "step", colour: null, another: false, overrides: [] } as const;
  return { kind: "taken", at, tag, station, step, ...body };
}

export function hung(tag: Tag, step: string, at: Instant, station = "bench"): NewEvent {
  return {
    ...{ kind: "hung", at, tag, station, step, pass: 1, part: "step", place: "rack", colour: null },
    ...{ another: false, flashOff: null, result: null, guessed: false, overrides: [] },
  };
}

export function readied(station: string, setUp: string, at: Instant): NewEvent {
  return {
    ...{ kind: "readied", at, tag: null, station, setUp, begun: null, ready: at, keeps: { way: "load" } },
    ...{ putAwayMinutes: 8, givesOff: [], overrides: [] },
  };
}

/** An event off the pieces and the stations. */
export function shopWide(body: EventBody, at: Instant): NewEvent {
  return { ...body, at, tag: null, station: null };
}

/** An event of one piece at no station. */
export function onPiece(tag: Tag, body: EventBody, at: Instant): NewEvent {
  return { ...body, at, tag, station: null };
}
