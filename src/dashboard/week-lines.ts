import { weekNeeds, weekReview } from "../pace/week.ts";
import { localTime } from "../time/civil.ts";
import { sayWeek } from "../words/say-week.ts";
import type { Speech } from "../words/speech.ts";
import type { Workshop } from "../workshop/workshop.ts";

/** The review of the week that runs now. */
export async function weekLines(workshop: Workshop, speech: Speech): Promise<readonly string[]> {
  const asked = {
    date: localTime(speech.zone, speech.now).date,
    zone: speech.zone,
    now: speech.now,
    firstWeekday: workshop.taste.firstDayOfWeek,
  };
  const needs = weekNeeds(asked);
  const [shop, rows] = await Promise.all([
    workshop.shop({ of: "span", ...needs.span }),
    workshop.journal.pieces(needs.rows.from, needs.rows.to),
  ]);
  return sayWeek(weekReview({ ...asked, shop, rows }), speech);
}
