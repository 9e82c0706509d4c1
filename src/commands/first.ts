import type { Tag } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import { sayDelays } from "../words/say-delays.ts";
import { type Command, WHEN } from "./command.ts";
import { perform } from "./perform.ts";

/** How much dearer it is to leave a piece that comes first; 1 is usual. */
const FIRST_WEIGHT = 10;

/**
 * "This one first": a greater weight in the plan. Whom it delays is found by planning with and without it, and said
 * before it is done; at a terminal the maker is asked.
 */
export const first: Command = {
  usage: ["first TAGS"],
  says: "these pieces come first; tells whom that delays before it is done",
  options: WHEN,
  examples: [["first 5", "5 comes first; undo takes it back"]],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const tags = words.needTags();
    const at = words.when(speech);
    words.nothingMore();
    if (words.problems.length > 0) return { problems: words.problems };
    const shop = await workshop.shop();
    const delays = sayDelays(tags, await workshop.compareFinishes(shop, withFirst(shop, tags)), speech);
    if (bench.mayAsk && tags.every((tag) => shop.pieces.has(tag))) {
      bench.tell(delays);
      if (!(await bench.agrees("Shall it come first? y:")))
        return { text: ["Nothing was changed."], json: { act: null } };
    }
    const answer = await perform(words, bench, { act: "change", at, tags, weight: FIRST_WEIGHT });
    return "text" in answer && !bench.mayAsk ? { ...answer, text: [...delays, ...answer.text] } : answer;
  },
};

/** The shop as it would be with these pieces first. */
function withFirst(shop: Shop, tags: readonly Tag[]): Shop {
  const pieces = new Map(
    [...shop.pieces].map(([tag, piece]) => [
      tag,
      tags.includes(tag) ? { ...piece, weight: FIRST_WEIGHT } : piece,
    ]),
  );
  return { ...shop, pieces };
}
