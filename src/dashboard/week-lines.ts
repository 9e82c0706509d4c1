import type { Speech } from "../words/speech.ts";
import type { Workshop } from "../workshop/workshop.ts";

export async function weekLines(_workshop: Workshop, _speech: Speech): Promise<readonly string[]> {
  return [];
}
