import type { Tag } from "../journal/event.ts";
import { hookNeededUntil } from "../shop/hook.ts";
import type { Moment } from "../shop/moment.ts";
import type { Shop } from "../shop/shop.ts";
import { formatDuration } from "../time/duration.ts";
import { type Instant, minutesBetween } from "../time/instant.ts";
import { fitAgainAt, unfitAir } from "./air-for-coat.ts";
import type { Hold } from "./hold.ts";
import { keepApartHolds } from "./keep-apart.ts";
import { listTags } from "./list-tags.ts";
import { needState } from "./needs.ts";
import type { InTheAir } from "./room-air.ts";
import type { SafetyRules } from "./rules.ts";
import type { Task } from "./task.ts";
import { remedyOf, sayUnfit, type UnfitSpeech } from "./unfit-air.ts";

/**
 * Everything that stands in the way of starting a task now, each with why, until when, and what can be done about it:
 * what must keep apart, air too cold or too damp to coat in, a place with no free hook, a measurement that is missing or too high. None: fit to start.
 *
 * This advises; it measures nothing. That nothing is in the way never means the air is fit to breathe.
 *
 * @param air what `roomAir` says of that moment and of the pieces that the task leaves; asked here where it is not given
 */
export function holdsOn(
  task: Task,
  shop: Shop,
  rules: SafetyRules,
  at: Moment,
  air?: readonly InTheAir[],
): readonly Hold[] {
  const apart = keepApartHolds(task, shop, rules, at, air);
  if (task.part !== "step") return apart;
  return [...apart, ...airHolds(task, shop, at), ...hookHolds(task, shop, at), ...measureHolds(task, shop)];
}

/** The air is not as the coat wants it while it is laid and wet, or so near its dew point that the surface may sweat. */
function airHolds({ step, coats, tags }: Task, shop: Shop, { now }: Moment): Hold[] {
  const coat = step.coat === null ? undefined : coats[step.coat];
  if (coat === undefined) return [];
  const laying = { coat, place: step.place, minutes: step.handsOn.likely };
  const air = unfitAir(laying, shop, now);
  if (air === null) return [];
  const because = sayUnfit(air, plainFigures(now));
  return [
    { code: "unfit air", because, until: fitAgainAt(laying, shop, now), tags, remedy: remedyOf(air), air },
  ];
}

/** In °C and by no clock: words say it by the maker's. */
function plainFigures(now: Instant): UnfitSpeech {
  const degrees = (celsius: number): string => `${Math.round(celsius * 10) / 10} °C`;
  return { degrees, difference: degrees, when: (at) => `in ${formatDuration(minutesBetween(now, at))}` };
}

/** The place it is to hang is full of pieces that still need their hooks. */
function hookHolds({ tags, step }: Task, shop: Shop, { now }: Moment): Hold[] {
  const hooks = step.place === null ? undefined : shop.settings.places.get(step.place)?.hooks;
  if (hooks === undefined) return [];
  const taken = [...shop.pieces.values()].flatMap((piece) => {
    const until =
      piece.place === step.place && !tags.includes(piece.tag) ? hookNeededUntil(piece, now) : null;
    return until !== null && until > now ? [{ tag: piece.tag, until }] : [];
  });
  const short = taken.length + Math.max(1, tags.length) - hooks;
  if (short <= 0) return [];
  const free = hooks - taken.length;
  const frees = taken.map(({ until }) => until).toSorted((a, b) => a - b)[short - 1];
  return [
    {
      code: "no hook",
      because: `the ${step.place} has ${hooks} ${hooks === 1 ? "hook" : "hooks"}, ${taken.length === 0 ? "none" : taken.length} of them taken`,
      until: frees !== undefined && Number.isFinite(frees) ? frees : null,
      tags: taken.map(({ tag }) => tag),
      remedy: free > 0 ? `take only ${free} of them` : "hang a dry one elsewhere",
    },
  ];
}

/** What must be known of each piece before the step: `wood moisture: at most 10 %`. */
function measureHolds({ tags, step }: Task, shop: Shop): Hold[] {
  return step.needs.flatMap((need) => {
    const { what, atMost, unit } = need;
    const missing: Tag[] = [];
    const high: Hold[] = [];
    let guide = "";
    for (const tag of tags) {
      const piece = shop.pieces.get(tag);
      const state = piece === undefined ? null : needState(need, piece, shop.air);
      if (state === null || state.is === "not known") {
        missing.push(tag);
        if (state?.guidance != null)
          guide = `; this air brings wood to about ${Math.round(state.guidance)} %`;
      }
      if (state?.is !== "too high") continue;
      const because = `${what} of ${tag} is ${state.value} ${unit}, at most ${atMost} ${unit}`;
      const remedy = "let it dry and measure again";
      high.push({ code: "measured too high", because, until: null, tags: [tag], remedy });
    }
    if (missing.length === 0) return high;
    const because = `${what} of ${listTags(missing)} is not measured, at most ${atMost} ${unit}${guide}`;
    const first: Hold = {
      code: "measure first",
      because,
      until: null,
      tags: missing,
      remedy: `measure the ${what}`,
    };
    return [first, ...high];
  });
}
