import type { Tag } from "../journal/event.ts";
import { saySetUpSheet } from "../words/set-up-sheet.ts";
import type { Speech } from "../words/speech.ts";
import type { Workshop } from "../workshop/workshop.ts";

/** The set-up sheet of the step these pieces go on with, or of the one named. */
export async function sheetLines(
  tags: readonly Tag[],
  step: string | null,
  workshop: Workshop,
  speech: Speech,
): Promise<readonly string[]> {
  return saySetUpSheet(tags, step, await workshop.shop(), await workshop.rules(), speech);
}
