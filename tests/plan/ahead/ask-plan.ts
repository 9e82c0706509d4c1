import { planAhead, planIf } from "../../../src/plan/ahead/plan-ahead.ts";
import type { Searching } from "../../../src/plan/ahead/searched-shop.ts";
import type { WhatIf } from "../../../src/plan/ahead/what-if.ts";
import type { PlanAnswer, PlannedPiece } from "../../../src/plan/plan-answer.ts";
import { beginSearch } from "../../../src/plan/search/search.ts";
import type { PlanContext } from "../../../src/plan/what-now.ts";
import { hoursOf } from "../../../src/shop/settings-at.ts";
import { localTime } from "../../../src/time/civil.ts";
import type { Instant } from "../../../src/time/instant.ts";
import type { Diary } from "../../fixtures/diary.ts";
import { dublin } from "../../fixtures/week-time.ts";
import { contextAt } from "../ask-now.ts";

/** So many rounds of search: enough for these small shops, and always the same. */
export const searching: Searching = {
  begin: (made, near) => beginSearch(made.problem, { seed: 1, warm: near }),
  goOn: (search) => {
    search.go(40);
  },
  kept: null,
};

/** The coming days by the diary so far, in the hours it settled (else weekdays 18 to 21, Saturday 9 to 16). */
export function askPlan(diary: Diary, when: string, days = 7, more: Partial<PlanContext> = {}): PlanAnswer {
  const shop = diary.shop();
  const context = contextAt(when, { hours: hoursOf(shop.settings), ...more });
  return planAhead(shop, context, days, searching).answer;
}

/** The same under a what-if. */
export function askIf(diary: Diary, when: string, whatIf: Partial<WhatIf>, more: Partial<PlanContext> = {}) {
  const shop = diary.shop();
  const context = contextAt(when, { hours: hoursOf(shop.settings), ...more });
  return planIf(shop, context, 7, { days: [], added: [], ...whatIf }, searching);
}

/** The rows of a plan as short words: `Mon 18:00-18:30 1 cut`. */
export function timetable({ sessions }: PlanAnswer): string[] {
  return sessions.flatMap(({ rows }) =>
    rows.map(({ from, until, pieces, step, part }) =>
      [
        `${clock(from)}-${clock(until).slice(4)}`,
        ...pieces.map(short),
        ...(part === "step" ? [] : [part]),
        step,
      ].join(" "),
    ),
  );
}

/** `Tue 18:10`; null stays null. */
export function clock(at: Instant): string;
export function clock(at: Instant | null): string | null;
export function clock(at: Instant | null): string | null {
  if (at === null) return null;
  const { weekday, hour, minute } = localTime(dublin, at);
  const day = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"][weekday - 1];
  return `${day} ${String(hour).padStart(2, "0")}:${String(minute).padStart(2, "0")}`;
}

/** `14`, or `new 1` for one not tagged yet. */
export function short({ tag, nth }: PlannedPiece): string {
  return tag === null ? `new ${nth}` : String(tag);
}
