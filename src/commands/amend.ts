import { readTags } from "../words/read-tags.ts";
import type { Command } from "./command.ts";
import { perform } from "./perform.ts";

/**
 * A better time for an earlier act, by its tag or its number; or, after a wrong clock, for all it stamped.
 * What follows from the time (openings, shuts, learned minutes) moves with it, since only the fact is kept.
 */
export const amend: Command = {
  usage: ["amend TAG TIME", "amend act ACT TIME", "amend clock HOW-MUCH"],
  says: "gives an earlier act its true time, or sets right what a wrong clock wrote",
  options: {
    slow: { value: null, says: "the clock was behind, not ahead" },
    since: { value: "TIME", says: "since when it was wrong, as it showed then" },
    until: { value: "TIME", says: "when it was right again" },
  },
  examples: [
    ["amend 1 20:45", "the last act on 1 was at 20:45"],
    ['amend act 231 "yesterday 20:15"', "act 231 was then; undo --list shows the numbers"],
    ["amend clock 1h", "the clock was an hour ahead: what it wrote ahead of now is set back"],
    ["amend clock 1h --slow --since 17:00", "it was an hour behind: what it wrote since is set forward"],
  ],
  async run(words, bench) {
    const { speech } = await bench.open();
    const first = words.word();
    if (first === "clock") {
      const { amendClock } = await import("./amend-clock.ts");
      return amendClock(words, bench);
    }
    if (["slow", "since", "until"].some((option) => words.has(option))) {
      words.problems.push("--slow, --since and --until are of amend clock");
    }
    const number = first === "act" ? words.word() : first;
    const [target, ...more] = readTags(number ?? "") ?? [];
    if (target === undefined || more.length > 0) {
      words.problems.push(
        `say one tag, or act and its number${number === null ? "" : `, not "${number}"`}: amend 1 20:45`,
      );
    }
    const said = words.needRest("say when it was: amend 1 20:45");
    const time = said === "" ? speech.now : words.readMomentOf(said, speech);
    return perform(words, bench, {
      act: "amend",
      at: speech.now,
      target: first === "act" ? { act: target ?? 0 } : { tag: target ?? 0 },
      time,
    });
  },
};
