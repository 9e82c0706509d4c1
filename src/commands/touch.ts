import type { Touch } from "../journal/event.ts";
import { sayTouched } from "../words/say-touch.ts";
import { type Command, WHEN } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { perform } from "./perform.ts";

const FOUND: readonly Touch[] = ["tacky", "dry", "hard"];

/** What a finger found on the newest coat: it opens what only a touch can open, and puts back what was still tacky. */
export const touch: Command = {
  usage: ["touch TAGS tacky|dry|hard"],
  says: "what a finger found: the newest coat is at least, or not yet, so far",
  options: WHEN,
  examples: [
    ["touch 14 tacky", "not dry yet: it dries on until a later touch says dry or hard"],
    ["touch 14 dry", "at least tack-free"],
    ["touch 1 hard --at 20:00", "at least dry-hard, at eight"],
  ],
  async run(words, bench) {
    const { speech } = await bench.open();
    const tags = words.needTags();
    const found = readTouch(words);
    const request = { act: "touch", at: words.when(speech), tags, found } as const;
    return perform(words, bench, request, async ({ shop }) =>
      tags.flatMap((tag) => {
        const piece = shop.pieces.get(tag);
        return piece === undefined ? [] : sayTouched(piece, speech);
      }),
    );
  },
};

function readTouch(words: CommandWords): Touch {
  const said = words.word();
  const found = FOUND.find((touch) => touch === said?.toLowerCase());
  if (found === undefined)
    words.problems.push(
      `say what the touch found: tacky, dry or hard${said === null ? "" : `, not "${said}"`}`,
    );
  return found ?? "tacky";
}
