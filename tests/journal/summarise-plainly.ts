import type { JournalEvent } from "../../src/journal/event.ts";
import type { Summarise } from "../../src/journal/journal.ts";
import { MINUTE } from "../../src/time/instant.ts";

/**
 * Derived rows by a few rules of these tests alone: a piece is finished by its last hung step of the process, scrapped
 * by being scrapped, and gone from the rows when its tagging was undone. Clocks found wrong move what they stamped.
 */
export const summarisePlainly: Summarise = (tag, events, definition) => {
  const undone = new Set(events.flatMap((event) => (event.kind === "undone" ? [event.target] : [])));
  const live = events.filter(({ act }) => !undone.has(act));
  const tooLate = (seq: number) =>
    live.reduce(
      (sum, event) =>
        event.kind === "clock" && event.since <= seq && seq < event.seq ? sum + event.minutes : sum,
      0,
    );
  const at = (event: JournalEvent | undefined) =>
    event === undefined ? null : event.at - tooLate(event.seq) * MINUTE;
  const tagged = live.find((event) => event.kind === "tagged");
  if (tagged === undefined) return null;
  const process = definition(tagged.process);
  const lastStep = process.steps.at(-1)?.name;
  const finished = live.find((event) => event.kind === "hung" && event.step === lastStep);
  const scrapped = live.find((event) => event.kind === "scrapped");
  const taken = (step: string) => live.find((event) => event.kind === "taken" && event.step === step);
  return {
    row: {
      tag,
      out: finished === undefined && scrapped === undefined,
      name: tagged.name,
      process: tagged.process,
      processName: process.name,
      taggedAt: at(tagged) ?? 0,
      finishedAt: at(finished),
      scrappedAt: at(scrapped),
    },
    stepTimes: live.flatMap((event) => {
      if (event.kind !== "hung") return [];
      const begun = at(taken(event.step));
      const hung = at(event) ?? 0;
      if (begun === null) return [];
      const minutes = Math.round((hung - begun) / MINUTE / event.together);
      return [{ process: process.name, step: event.step, tag, pass: event.pass, minutes, at: hung }];
    }),
  };
};
