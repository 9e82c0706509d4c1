import type { Tag } from "../journal/event.ts";
import { sayAmounts, saySetUpSheet } from "../words/set-up-sheet.ts";
import type { Opened } from "./bench.ts";
import type { Done } from "./perform.ts";

/** The set-up sheet of what was just taken, after an empty line. */
export async function sheetOf(done: Done, { workshop, speech }: Opened): Promise<readonly string[]> {
  const rules = await workshop.rules();
  return takenTogether(done).flatMap(({ tags, step }) => [
    "",
    ...saySetUpSheet(tags, step, done.shop, rules, speech),
  ]);
}

/** What is to be weighed or measured out for what was just taken, all pieces together. */
export function amountsOf(done: Done, { speech }: Opened): readonly string[] {
  const events = done.events.filter((event) => event.kind === "taken" && event.part === "step");
  return takenTogether({ events }).flatMap(({ tags, step }) => sayAmounts(tags, step, done.shop, speech));
}

/** The pieces taken, by step. */
function takenTogether({
  events,
}: Pick<Done, "events">): readonly { readonly step: string; readonly tags: readonly Tag[] }[] {
  const taken = events.flatMap((event) => (event.kind === "taken" && event.tag !== null ? [event] : []));
  return [...new Set(taken.map(({ step }) => step))].map((step) => ({
    step,
    tags: taken.flatMap((event) => (event.step === step && event.tag !== null ? [event.tag] : [])),
  }));
}
