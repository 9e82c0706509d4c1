import { sayAct } from "../words/say-done.ts";
import type { Bench } from "./bench.ts";
import type { Answer, Command } from "./command.ts";
import { perform } from "./perform.ts";

/** Takes an act back by another act: nothing is ever lost. The list shows the numbers by which older ones are named. */
export const undo: Command = {
  usage: ["undo", "undo ACT", "undo --list"],
  says: "takes your last act back, or an older one that nothing leans on",
  options: { list: { value: null, says: "shows the last acts with their numbers" } },
  examples: [
    ["undo", "takes back the last act, and says which"],
    ["undo --list", "the last acts with their numbers, newest first"],
    ["undo 231", "takes back act 231, if nothing later leans on it"],
  ],
  async run(words, bench) {
    if (words.has("list")) return listActs(bench);
    const { speech } = await bench.open();
    const said = words.word();
    if (said !== null && !/^\d{1,12}$/.test(said)) {
      words.problems.push(`"${said}" is no number of an act: "dryline undo --list" shows them`);
    }
    return perform(words, bench, {
      act: "undo",
      at: speech.now,
      target: said === null ? null : Number(said),
    });
  },
};

/** The newest acts of this maker's that stand, newest first, each with the number that `undo ACT` takes. */
async function listActs(bench: Bench): Promise<Answer> {
  const { workshop, speech } = await bench.open();
  const shop = await workshop.shop();
  const acts = shop.acts
    .filter(({ by }) => by === workshop.by)
    .map((record) => ({ act: record.act, said: sayAct(record, shop, speech) }))
    .reverse();
  const text = acts.map(({ act, said }) => `${String(act).padStart(6)}  ${said}`);
  return { text: text.length > 0 ? text : ["Nothing has been done yet."], json: { acts } };
}
