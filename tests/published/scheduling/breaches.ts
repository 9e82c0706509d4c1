/**
 * Reads an instance once more, in its own way, and looks at each of its constraints, minute by minute. It shares no
 * code with the reading of instances nor with the search.
 */
import type { ProjectInstance, ShopInstance } from "./instance.ts";

/** What is wrong with a schedule of a shop; `starts` by job and visit, one after the other. */
export function breachesOfShop(shop: ShopInstance, starts: readonly number[], waiting: boolean): string[] {
  const wrong: string[] = [];
  const busy = new Map<string, string>();
  let at = 0;
  for (const [job, line] of shop.jobs.entries()) {
    let ready = 0;
    for (const [visit, text] of line.split(" ").entries()) {
      const machine = text.slice(0, text.indexOf(":"));
      const lasts = Number(text.slice(text.indexOf(":") + 1));
      const start = starts[at++];
      const who = `visit ${visit} of job ${job}`;
      if (start === undefined || !Number.isInteger(start) || start < ready)
        wrong.push(`${who} starts too soon`);
      if (start === undefined) continue;
      if (!waiting && visit > 0 && start !== ready) wrong.push(`${who} has waited`);
      for (let minute = start; minute < start + lasts; minute++) {
        const other = busy.get(`${machine} at ${minute}`);
        if (other !== undefined) wrong.push(`${who} and ${other} are both on ${machine} at ${minute}`);
        busy.set(`${machine} at ${minute}`, who);
      }
      ready = start + lasts;
    }
  }
  if (at !== starts.length) wrong.push(`${starts.length} starts for ${at} visits`);
  return wrong;
}

/** What is wrong with a schedule of a project; `starts` by activity. */
export function breachesOfProject(project: ProjectInstance, starts: readonly number[]): string[] {
  const wrong: string[] = [];
  const lines = project.activities.flatMap((line) => line.split(";"));
  const most = project.capacities.split(" ");
  const used = new Map<string, number>();
  if (lines.length !== starts.length) wrong.push(`${starts.length} starts for ${lines.length} activities`);
  for (const [activity, line] of lines.entries()) {
    const [lasts = "", takes = "", arcs = ""] = line.split("/");
    const start = starts[activity] ?? Number.NaN;
    if (!(start >= 0)) wrong.push(`${activity} starts before 0`);
    for (let minute = start; minute < start + Number(lasts); minute++) {
      for (const [resource, demand] of takes.trim().split(" ").entries()) {
        const key = `${resource} at ${minute}`;
        used.set(key, (used.get(key) ?? 0) + Number(demand));
        if ((used.get(key) ?? 0) > Number(most[resource])) wrong.push(`too much is taken of ${key}`);
      }
    }
    for (const arc of arcs.trim().split(/\s+/)) {
      if (arc === "") continue;
      const [to, wait = lasts] = arc.split(":");
      if ((starts[Number(to)] ?? Number.NaN) >= start + Number(wait)) continue;
      wrong.push(`${to} does not keep ${wait} after ${activity}`);
    }
  }
  return wrong;
}
