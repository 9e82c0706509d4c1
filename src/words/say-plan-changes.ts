import type { WhatIf } from "../plan/ahead/what-if.ts";
import type { PlanChanges } from "../plan/plan-answer.ts";
import { plainText } from "./plain-text.ts";
import { sayList } from "./say-list.ts";
import { sayPlannedPiece } from "./say-planned-row.ts";
import { sayDayHours } from "./say-setting.ts";
import { sayClock, sayDate, sayWait } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/**
 * What a what-if changes against the plan without it, the latest first.
 *
 * @example sayChanges(changes, speech)
 * // ["", "If the bench is shut Sat", "  14 smelt walker finished Sat 15:20, not Fri 19:10", "  late by it: 14 smelt walker"]
 */
export function sayChanges(changes: PlanChanges, whatIf: WhatIf, speech: Speech): string[] {
  const { finishes, newlyLate, nowOnTime, amends } = changes;
  const lines = finishes.map((one) => {
    const who = sayPlannedPiece(one.piece);
    if (one.with === null) return `${who} not finished in the days looked at`;
    if (one.without === null)
      return `${who} finished ${sayClock(one.with, speech)}, not beyond the days looked at`;
    const than = one.with > one.without ? "not" : "sooner than";
    return `${who} finished ${sayClock(one.with, speech)}, ${than} ${sayClock(one.without, speech)}`;
  });
  if (newlyLate.length > 0) lines.push(`late by it: ${sayList(newlyLate.map(sayPlannedPiece))}`);
  if (nowOnTime.length > 0) lines.push(`on time by it: ${sayList(nowOnTime.map(sayPlannedPiece))}`);
  if (amends !== 0) {
    lines.push(`${sayWait(Math.abs(amends))} ${amends > 0 ? "more" : "less"} of preparing and mending`);
  }
  if (lines.length === 0) lines.push("nothing, for the pieces that are tagged");
  return ["", `If ${sayWhatIf(whatIf, speech)}`, ...lines.map((line) => `  ${line}`)];
}

/** What is supposed. `the bench is shut Sat, is open 18:00 to 22:00 Thu, and 6 carved walker are tagged now` */
function sayWhatIf({ days, added }: WhatIf, speech: Speech): string {
  const open = new Map<string, string[]>();
  for (const { date, hours } of days) {
    const said = hours.length === 0 ? "shut" : `open ${sayDayHours(hours, speech)}`;
    open.set(said, [...(open.get(said) ?? []), sayDate(date, speech)]);
  }
  const bench = [...open].map(([said, dates]) => `is ${said} ${sayList(dates)}`);
  const more = added.map(({ count, definition, due }) => {
    const promised = due === null ? "" : `, promised ${sayDate(due, speech)}`;
    return `${count} ${definition.name} ${count === 1 ? "is" : "are"} tagged now${promised}`;
  });
  return plainText(sayList([...(bench.length === 0 ? [] : [`the bench ${sayList(bench)}`]), ...more]));
}
