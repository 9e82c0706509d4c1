import { isClosing, sayClosing } from "../words/say-closing.ts";
import type { Opened } from "./bench.ts";
import type { Done } from "./perform.ts";

/** What the maker should know before going home; nothing while the evening goes on. */
export async function sayLastWords(_done: Done, { workshop, speech }: Opened): Promise<readonly string[]> {
  const answer = await workshop.whatNow();
  return isClosing(answer) ? sayClosing(answer, speech) : [];
}
