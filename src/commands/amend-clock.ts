import type { Seq } from "../journal/event.ts";
import type { Shop } from "../shop/shop.ts";
import { parseDuration } from "../time/duration.ts";
import type { Instant } from "../time/instant.ts";
import type { Bench } from "./bench.ts";
import type { Answer } from "./command.ts";
import type { CommandWords } from "./command-words.ts";
import { perform } from "./perform.ts";

/**
 * Sets right what a wrong clock wrote: that it was ahead by so much, or with `--slow` behind, since a time it showed.
 * Not said since when, all it wrote ahead of now is meant; a slow clock leaves no such trace, so it must be said.
 */
export async function amendClock(words: CommandWords, bench: Bench): Promise<Answer> {
  const { workshop, speech } = await bench.open();
  const said = words.needRest("say by how much the clock was wrong: amend clock 1h");
  const minutes = parseDuration(said);
  if (minutes === null && said !== "")
    words.problems.push(`"${said}" is no length of time: write 20m or "1 h 30"`);
  const slow = words.has("slow");
  const from = words.moment("since", speech);
  const to = words.moment("until", speech);
  if (slow && from === null) {
    words.problems.push("say since when it was slow, as it showed then: --since 18:00");
  }
  if (to !== null && from === null) words.problems.push("say since when too: --since 18:00 --until 19:00");
  const shop = await workshop.shop();
  const since = from === null ? null : firstRecorded(shop, from, 0);
  if (from !== null && since === null) words.problems.push("nothing was written since then");
  return perform(words, bench, {
    act: "clock",
    at: speech.now,
    minutes: (minutes ?? 0) * (slow ? -1 : 1),
    since,
    until: to === null || since === null ? null : firstRecorded(shop, to, since),
  });
}

/** The first event after another that was written down at a time or later, by the clock of then; null: none was. */
function firstRecorded(shop: Shop, from: Instant, after: Seq): Seq | null {
  const events = shop.acts.flatMap(({ events }) => events);
  return events.find(({ seq, recorded }) => seq > after && recorded >= from)?.seq ?? null;
}
