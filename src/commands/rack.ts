import { isoMoment } from "../words/iso-moment.ts";
import { layOut } from "../words/lay-out.ts";
import { sayClock } from "../words/say-time.ts";
import { sayOpening, sayPrepared, sayStage } from "../words/say-waiting.ts";
import { AS_OF, type Command } from "./command.ts";
import { preparedJson, waitingJson } from "./now-json.ts";

/** All that is out, by tag: the waits of `now` with places and dry-hard. */
export const rack: Command = {
  usage: ["rack"],
  says: "every piece that is out: where it hangs, how far it is, when it opens and shuts",
  options: AS_OF,
  examples: [
    ["rack", "what hangs now"],
    ["rack --at 23:00", "how far all will be at eleven"],
  ],
  async run(words, bench) {
    const { workshop, speech } = await bench.open();
    const asked = words.moment("at", speech);
    words.nothingMore();
    if (words.problems.length > 0) return { problems: words.problems };
    const answer = await workshop.whatNow(asked ?? undefined);
    const then = { ...speech, now: answer.at };
    const rows = answer.waiting.map((row) => [
      `${row.tag} ${row.name}`,
      row.place ?? "-",
      sayStage(row),
      row.step,
      sayOpening(row, then),
      row.hard !== null && row.hard > answer.at ? `dry-hard ${sayClock(row.hard, then)}` : "",
    ]);
    const stations = answer.prepared.map((row) => `  ${sayPrepared(row, then)}`);
    const text =
      rows.length + stations.length === 0
        ? ["Nothing is out."]
        : [...layOut(rows, bench.context.columns), ...stations];
    return {
      text,
      json: {
        at: isoMoment(answer.at, then.zone),
        pieces: answer.waiting.map((row) => waitingJson(row, then)),
        prepared: answer.prepared.map((row) => preparedJson(row, then)),
      },
    };
  },
};
