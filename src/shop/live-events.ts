import type { ActId, JournalEvent, Seq } from "../journal/event.ts";
import { after, type Instant, MINUTE, type Minutes } from "../time/instant.ts";

/**
 * The events that stand, in seq order, with the times now held to be true: acts taken back are left out with all that
 * undoes and amends them, what a wrong clock stamped is set right, and amended times are in force.
 *
 * Every later reader sees these and need not know that anything was ever corrected.
 */
export function liveEvents(events: readonly JournalEvent[]): readonly JournalEvent[] {
  // As the journal gives them.
  const isRising = events.every(({ seq }, index) => index === 0 || (events[index - 1]?.seq ?? 0) < seq);
  const inOrder = isRising ? events : events.toSorted((a, b) => a.seq - b.seq);
  // The everyday journal has nothing to correct.
  if (!inOrder.some(({ kind }) => kind === "undone" || kind === "amended" || kind === "clock"))
    return inOrder;
  const undone = undoneActs(inOrder);
  const standing = inOrder.filter(({ act }) => !undone.has(act));
  const wrongBy = clockErrors(standing);
  const corrected = standing.map((event) => setRight(event, wrongBy(event.seq)));
  const better = betterTimes(corrected);
  return corrected
    .filter((event) => event.kind !== "undone")
    .map((event) => {
      const time = better.get(event.act);
      return time === undefined || event.kind === "amended" ? event : moved(event, time);
    });
}

/** Acts taken back. Read from the newest: an undo that was itself taken back takes nothing back. */
function undoneActs(inOrder: readonly JournalEvent[]): ReadonlySet<ActId> {
  const undone = new Set<ActId>();
  for (const event of inOrder.toReversed()) {
    if (event.kind !== "undone" || undone.has(event.act)) continue;
    // An act can only take back an earlier one.
    if (event.target < event.act) undone.add(event.target);
  }
  return undone;
}

/** Minutes by which the clock ran ahead when an event was stamped, all corrections said later taken together. */
function clockErrors(standing: readonly JournalEvent[]): (seq: Seq) => Minutes {
  const corrections = standing.flatMap((event) =>
    event.kind === "clock" ? [{ since: event.since, until: event.seq, minutes: event.minutes }] : [],
  );
  if (corrections.length === 0) return () => 0;
  return (seq) =>
    corrections.reduce(
      (sum, { since, until, minutes }) => (since <= seq && seq < until ? sum + minutes : sum),
      0,
    );
}

/** The event as a clock that was right would have stamped it. */
function setRight(event: JournalEvent, minutes: Minutes): JournalEvent {
  if (minutes === 0) return event;
  const right = shifted(event, -minutes * MINUTE);
  return { ...right, recorded: after(event.recorded, -minutes) };
}

/** The newest amended time of each act. */
function betterTimes(standing: readonly JournalEvent[]): ReadonlyMap<ActId, Instant> {
  const times = new Map<ActId, Instant>();
  for (const event of standing) if (event.kind === "amended") times.set(event.target, event.time);
  return times;
}

/**
 * An event at a better time. What was ready at that very moment is ready at the new one; a beginning that is not
 * itself the moment amended stays, unless it would then come after. Since when a piece hung is no time of the tagging.
 */
function moved(event: JournalEvent, time: Instant): JournalEvent {
  if (event.kind === "tagged") return { ...event, at: time };
  if (event.kind !== "readied" || event.ready !== event.at) return shifted(event, time - event.at);
  const begun = event.begun === null ? null : Math.min(event.begun, time);
  return { ...event, at: time, ready: time, begun };
}

/** An event with all its moments moved by so many milliseconds. */
function shifted(event: JournalEvent, by: number): JournalEvent {
  const at = event.at + by;
  switch (event.kind) {
    case "readied":
      return { ...event, at, ready: event.ready + by, begun: event.begun === null ? null : event.begun + by };
    case "tagged":
      return event.hung === null
        ? { ...event, at }
        : { ...event, at, hung: { ...event.hung, since: event.hung.since + by } };
    case "amended":
      return { ...event, at, time: event.time + by };
    default:
      return { ...event, at };
  }
}
