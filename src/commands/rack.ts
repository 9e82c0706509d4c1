import type { Tag } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import { isoMoment } from "../words/iso-moment.ts";
import { layOut } from "../words/lay-out.ts";
import { sayHowSure } from "../words/say-how-sure.ts";
import { sayTags } from "../words/say-list.ts";
import { sayClock } from "../words/say-time.ts";
import { sayOpening, sayPrepared, sayStage } from "../words/say-waiting.ts";
import type { Speech } from "../words/speech.ts";
import { AS_OF, type Command } from "./command.ts";
import { preparedJson, waitingJson } from "./now-json.ts";

/** All that is out, by tag: the waits of `now` with places and dry-hard. Of tags that are named, how sure that is. */
export const rack: Command = {
  usage: ["rack [TAG...]"],
  says: "every piece that is out: where it hangs, how far it is, when it opens and shuts",
  options: AS_OF,
  examples: [
    ["rack", "what hangs now"],
    ["rack 14", "this one, and how sure its times are"],
    ["rack --at 23:00", "how far all will be at eleven"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const asked = words.moment("at", speech, "near");
    const tags = words.tags();
    words.nothingMore();
    if (words.problems.length > 0) return { problems: words.problems };
    const answer = await workshop.whatNow(asked ?? undefined);
    const then = { ...speech, now: answer.at };
    const strange = tags.filter((tag) => answer.waiting.every((row) => row.tag !== tag));
    if (strange.length > 0)
      return { problems: [`${sayTags(strange)} ${strange.length === 1 ? "is" : "are"} not out`] };
    const isAsked = ({ tag }: { readonly tag: Tag }) => tags.length === 0 || tags.includes(tag);
    const waiting = answer.waiting.filter(isAsked);
    const rows = waiting.map((row) => [
      `${row.tag} ${row.name}`,
      row.place ?? "-",
      sayStage(row),
      row.step,
      sayOpening(row, then),
      row.hard !== null && row.hard > answer.at ? `dry-hard ${sayClock(row.hard, then)}` : "",
    ]);
    const more =
      tags.length === 0
        ? answer.prepared.map((row) => sayPrepared(row, then))
        : howSure(tags, await workshop.shop(undefined, asked ?? undefined), then);
    const text =
      rows.length + more.length === 0
        ? ["Nothing is out."]
        : [...layOut(rows, bench.context.columns), ...more.map((line) => `  ${line}`)];
    return {
      text,
      json: {
        at: isoMoment(answer.at, then.zone),
        pieces: waiting.map((row) => waitingJson(row, then)),
        prepared: answer.prepared.map((row) => preparedJson(row, then)),
      },
    };
  },
};

/** How sure the predicted times of these pieces are. */
function howSure(tags: readonly Tag[], shop: Shop, speech: Speech): string[] {
  return tags.flatMap((tag) => {
    const piece = shop.pieces.get(tag);
    return piece === undefined ? [] : sayHowSure(piece, shop, speech);
  });
}
