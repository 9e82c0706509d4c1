import type { NowAnswer } from "../../src/plan/now-answer.ts";
import { type PlanContext, whatNow } from "../../src/plan/what-now.ts";
import type { ProcessDefinition } from "../../src/process/definition.ts";
import { hoursOf } from "../../src/shop/settings-at.ts";
import type { BenchHours } from "../../src/time/bench-hours.ts";
import type { Diary } from "../fixtures/diary.ts";
import { walkerRules } from "../fixtures/walker.ts";
import { at, dublin } from "../fixtures/week-time.ts";

/** The context of a question asked in the made-up week: its rules, and the likely minutes as usual ones. */
export function contextAt(when: string, more: Partial<PlanContext> = {}): PlanContext {
  return {
    now: at(when),
    zone: dublin,
    hours: hoursOf({ hours: null }),
    rules: walkerRules,
    usualMinutes: (_, step) => step.handsOn.likely,
    newPiece: null,
    ...more,
  };
}

/** What now, by the diary so far. The hours are those it settled, else weekdays 18 to 21 and Saturday 9 to 16. */
export function askNow(diary: Diary, when: string, more: Partial<PlanContext> = {}): NowAnswer {
  const shop = diary.shop();
  const hours: BenchHours = hoursOf(shop.settings);
  return whatNow(shop, contextAt(when, { hours, ...more }));
}

/** A process as the one a new piece would be of. */
export function newPieceOf(definition: ProcessDefinition): PlanContext["newPiece"] {
  return { hash: "hash", definition };
}

/** Rows as short words: `1 2 second seal`. */
export function saidRows(
  rows: readonly { readonly tags: readonly number[]; readonly step: string }[],
): string[] {
  return rows.map(({ tags, step }) => [...tags, step].join(" "));
}
