import { aimAt, hoursOf } from "../shop/settings-at.ts";
import type { Shop } from "../shop/shop.ts";
import { addDays, localTime } from "../time/civil.ts";
import { MINUTE } from "../time/instant.ts";
import { sessionsBetween } from "../time/sessions.ts";
import { weekOf, weekSpan } from "../time/weeks.ts";
import { sayCautionShort } from "../words/say-caution.ts";
import { sayAct } from "../words/say-done.ts";
import { sayWeekday } from "../words/say-time.ts";
import type { Speech } from "../words/speech.ts";
import type { Workshop } from "../workshop/workshop.ts";
import type { Facts } from "./state.ts";

/** How far the shared clock may reach to either side of now, in minutes. */
const REACH = 4 * 1440;

/** Reads everything the picture is made of, as it is at this moment. */
export async function readFacts(workshop: Workshop): Promise<Facts> {
  const [answer, shop, zone, library] = await Promise.all([
    workshop.whatNow(),
    workshop.shop(),
    workshop.zone(),
    workshop.readLibrary(),
  ]);
  const speech: Speech = {
    zone,
    now: answer.at,
    clock24: workshop.taste.clock === "24 h",
    units: workshop.taste.units,
  };
  const newest = shop.acts.findLast(({ by }) => by === workshop.by);
  return {
    answer,
    speech,
    sessions: sessionsBetween(
      hoursOf(shop.settings),
      zone,
      answer.at - REACH * MINUTE,
      answer.at + REACH * MINUTE,
    ),
    week: await sayWeekSoFar(workshop, shop, speech),
    newestAct: newest === undefined ? null : { act: newest.act, words: sayAct(newest, shop, speech) },
    fileProblems: library.problems,
    processes: library.processes.map(({ definition }) => definition.name),
    cautions: Object.fromEntries(
      Object.values(library.rules.cautions).map((caution) => [caution.name, sayCautionShort(caution)]),
    ),
  };
}

/** `since Mon 3 off the rack, aim 5`: finished pieces of the week that holds now. */
async function sayWeekSoFar(workshop: Workshop, shop: Shop, { zone, now }: Speech): Promise<string> {
  const today = localTime(zone, now).date;
  const { start } = weekOf(today, workshop.taste.firstDayOfWeek);
  const { from } = weekSpan(start, zone);
  const rows = await workshop.journal.pieces(from, now + MINUTE);
  const finished = rows.filter(
    ({ finishedAt }) => finishedAt !== null && finishedAt >= from && finishedAt <= now,
  );
  const aim = aimAt(shop.settings, addDays(start, 6))?.finishedPerWeek ?? null;
  const hoped = aim === null ? "" : `, aim ${aim}`;
  return `since ${sayWeekday(workshop.taste.firstDayOfWeek)}: ${finished.length} finished${hoped}`;
}
