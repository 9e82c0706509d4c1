import type { Tag } from "../journal/event.ts";
import type { Moment } from "../shop/moment.ts";
import type { Shop } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";
import type { Hold } from "./hold.ts";
import { listTags } from "./list-tags.ts";
import { type InTheAir, roomAir } from "./room-air.ts";
import { roomOf } from "./rooms.ts";
import type { SafetyRules } from "./rules.ts";
import { type Task, taskGivesOff } from "./task.ts";

/**
 * What is in the room that a task must not meet, and the other way round: one hold for each such thing and kind of source.
 *
 * @param known what is in the air then, where it was asked before
 */
export function keepApartHolds(
  task: Task,
  shop: Shop,
  rules: SafetyRules,
  at: Moment,
  known?: readonly InTheAir[],
): readonly Hold[] {
  const given = taskGivesOff(task);
  const foes = new Set(
    rules.keepApart.flatMap(({ these: [one, other] }) => [
      ...(given.has(one) ? [other] : []),
      ...(given.has(other) ? [one] : []),
    ]),
  );
  if (foes.size === 0) return [];
  const here = roomOf(shop.settings, task.step.station);
  const met = (known ?? roomAir(shop, at, task.leaves)).filter(
    ({ what, room, from }) => room === here && foes.has(what) && !isOwn(from, task),
  );
  return groupsOf(met).map(holdOf);
}

/** What a task's own pieces have in hand, or wet on them, is no stranger to it. */
function isOwn(from: InTheAir["from"], task: Task): boolean {
  return (from.kind === "in hand" || from.kind === "wet") && task.tags.includes(from.tag);
}

/** The same thing from pieces is one hold for all of them; each set-up is one of its own. */
function groupsOf(met: readonly InTheAir[]): readonly (readonly InTheAir[])[] {
  const groups = new Map<string, InTheAir[]>();
  for (const one of met) {
    const key = one.from.kind === "set-up" ? `${one.what}|${one.from.station}` : `${one.what}|`;
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()];
}

function holdOf(group: readonly InTheAir[]): Hold {
  const [first] = group;
  const what = first?.what ?? "";
  const until = latest(group.map((one) => one.until));
  if (first?.from.kind === "set-up") {
    const { station } = first.from;
    return {
      code: "keep apart",
      because: `${what} of the ${station}`,
      until,
      tags: [],
      remedy: `put the ${station} away`,
    };
  }
  const tags = tagsOf(group);
  return {
    code: "keep apart",
    because: `${what} of ${listTags(tags)}`,
    until,
    tags,
    remedy: remedyOf(group),
  };
}

/** What ends it sooner than the clock, or where the clock does not: work is finished, a coat dries in other air. */
function remedyOf(group: readonly InTheAir[]): string | null {
  const inHand = tagsOf(group.filter(({ from }) => from.kind === "in hand"));
  if (inHand.length > 0) return `finish ${listTags(inHand)} first`;
  const undrying = tagsOf(group.filter(({ from, until }) => from.kind === "wet" && until === null));
  return undrying.length === 0 ? null : `move ${listTags(undrying)} to where it dries, or warm the air`;
}

function tagsOf(group: readonly InTheAir[]): readonly Tag[] {
  const tags = group.flatMap(({ from }) => (from.kind === "set-up" ? [] : [from.tag]));
  return [...new Set(tags)].toSorted((a, b) => a - b);
}

/** The latest of some moments, where null is never. */
function latest(moments: readonly (Instant | null)[]): Instant | null {
  return moments.reduce(
    (most, one) => (most === null || one === null ? null : Math.max(most, one)),
    Number.NEGATIVE_INFINITY,
  );
}
