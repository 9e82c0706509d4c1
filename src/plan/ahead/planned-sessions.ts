import type { Instant } from "../../time/instant.ts";
import { at } from "../at.ts";
import type { Visit } from "../plan.ts";
import type { PlannedSession } from "../plan-answer.ts";
import type { PlanSession } from "../problem.ts";
import { plannedRows } from "./planned-rows.ts";
import { momentOf, type PlannedShop } from "./planned-shop.ts";
import { putAwayAfter } from "./put-away.ts";

/** The bench sessions that open before a moment, each with its work; first of all what goes on outside bench hours. */
export function plannedSessions(shop: PlannedShop, until: Instant): PlannedSession[] {
  const { sessions, tasks } = shop.made.problem;
  const visits = shop.plan.visits.map((visit) => ({ visit, session: sessionOf(sessions, visit) }));
  const outside = visits.filter(({ session }) => session === null).map(({ visit }) => visit);
  const planned = sessions.flatMap((session, index) => {
    const hours = at(shop.facts.sessions, index);
    const own = visits.filter((one) => one.session === session).map(({ visit }) => visit);
    return hours.opens < until ? [{ ...plannedSession(shop, session, own, hours.closes), ...hours }] : [];
  });
  const running = outside.filter(({ task }) => tasks[task]?.running === true);
  if (running.length === 0) return planned;
  const [opens, closes] = [Math.min(...running.map(handsFrom)), Math.max(...running.map(({ end }) => end))];
  const outsideHours = plannedSession(shop, { opens, closes }, running, momentOf(shop, closes));
  return [{ ...outsideHours, outsideHours: true }, ...planned];
}

/** What is in hand may run over the end of a session, or go on where there is none. */
function sessionOf(sessions: readonly PlanSession[], visit: Visit): PlanSession | null {
  return sessions.find(({ opens, closes }) => handsFrom(visit) >= opens && handsFrom(visit) < closes) ?? null;
}

/** @param ends the moment it closes, of which `closes` is the last whole minute from now */
function plannedSession(
  shop: PlannedShop,
  { opens, closes }: PlanSession,
  visits: readonly Visit[],
  ends: Instant,
): PlannedSession {
  const putAway = putAwayAfter(shop, { opens, closes }, visits, ends);
  const open = closes - Math.max(0, opens);
  const worked = visits.reduce((sum, visit) => sum + Math.min(visit.end, closes) - handsFrom(visit), 0);
  const away = putAway.reduce((sum, { minutes }) => sum + minutes, 0);
  return {
    opens: momentOf(shop, opens),
    closes: momentOf(shop, closes),
    outsideHours: false,
    rows: plannedRows(shop, visits),
    putAway,
    free: Math.max(0, open * shop.made.problem.hands - worked - away),
  };
}

const handsFrom = ({ start, setUp }: Visit): number => start - setUp;
