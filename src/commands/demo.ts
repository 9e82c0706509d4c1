import { makeDemoShop } from "../workshop/demo-shop.ts";
import type { Workshop } from "../workshop/workshop.ts";
import type { Bench } from "./bench.ts";
import type { Answer, Command } from "./command.ts";
import { sayNow } from "./now.ts";
import { nowJson } from "./now-json.ts";

export const demo: Command = {
  usage: ["demo"],
  says: "a made-up shop in mid-rotation with a month behind it, safe to play with",
  options: { speed: { value: "N", says: "minutes that pass in a minute, 1 to 3600" } },
  examples: [
    ["demo", "the dashboard of a shop that is not yours"],
    ["demo --speed 60", "a minute passes in a second"],
  ],
  async run(words, bench) {
    const speed = words.count("speed") ?? 1;
    words.nothingMore();
    if (speed > 3600) words.problems.push(`--speed ${speed} is too fast: write 1 to 3600`);
    if (words.problems.length > 0) return { problems: words.problems };
    if (bench.mayAsk) bench.tell(["Making a shop with a month behind it ..."]);
    const shop = await makeDemoShop({ speed });
    try {
      if (!bench.mayAsk) return await tellNow(shop.workshop, bench);
      await bench.context.openDashboard(shop.workshop);
      return { text: ["The demo shop is gone again; your own was never touched."], json: {} };
    } finally {
      shop.workshop.close();
      shop.remove();
    }
  },
};

/** Without a terminal the demo tells what `now` tells, of the made-up shop. */
async function tellNow(workshop: Workshop, bench: Bench): Promise<Answer> {
  const [answer, zone] = await Promise.all([workshop.whatNow(), workshop.zone()]);
  const speech = { zone, now: answer.at, clock24: true };
  return { text: sayNow(answer, speech, bench.context.columns), json: nowJson(answer, speech) };
}
