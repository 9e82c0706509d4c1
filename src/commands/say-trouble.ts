import { JournalTrouble } from "../journal/trouble.ts";
import { plainText } from "../words/plain-text.ts";
import { NoFolder } from "../workshop/open-workshop.ts";
import { NoHomeFolder } from "../workshop/places-on-disk.ts";

/** One sentence for a journal or a folder that cannot be used; null: something else was thrown, a fault of our own. */
export function sayTrouble(trouble: unknown): string | null {
  const known =
    trouble instanceof JournalTrouble || trouble instanceof NoFolder || trouble instanceof NoHomeFolder;
  // It names a path, and a path may hold anything.
  return known ? plainText(trouble.message.replace(/\.$/, "")) : null;
}
