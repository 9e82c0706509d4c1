import { saySetUpSheet } from "../words/set-up-sheet.ts";
import type { Opened } from "./bench.ts";
import type { Done } from "./perform.ts";

/** The set-up sheet of what was just taken, after an empty line. */
export async function sheetOf(
  { events, shop }: Done,
  { workshop, speech }: Opened,
): Promise<readonly string[]> {
  const taken = events.flatMap((event) => (event.kind === "taken" && event.tag !== null ? [event] : []));
  const rules = await workshop.rules();
  const steps = [...new Set(taken.map(({ step }) => step))];
  return steps.flatMap((step) => {
    const tags = taken.flatMap((event) => (event.step === step && event.tag !== null ? [event.tag] : []));
    return ["", ...saySetUpSheet(tags, step, shop, rules, speech)];
  });
}
