import type { Answer, Command } from "./command.ts";
import { bashCompletion, fishCompletion, zshCompletion } from "./completion-scripts.ts";
import { readSubword } from "./read-subword.ts";

/**
 * Prints a script for the shell. The script asks back by `completion for -- WORDS`, so that tags and names are those of
 * this minute; that way of asking is the scripts' own and not told in help.
 */
export const completion: Command = {
  usage: ["completion bash|zsh|fish"],
  says: "a script that completes commands, options, tags and names in your shell",
  options: {},
  examples: [
    ["completion bash >> ~/.bashrc", "for bash"],
    ["completion zsh >> ~/.zshrc", "for zsh"],
    ["completion fish > ~/.config/fish/completions/dryline.fish", "for fish"],
  ],
  async run(words, bench): Promise<Answer> {
    if (words.ahead()[0] === "for") {
      words.word();
      const { complete } = await import("./complete.ts");
      const found = await complete([...words.ahead()], bench);
      const text = found.map(({ word, says }) => (says === "" ? word : `${word}\u0020\u0020${says}`));
      return { text, json: { completions: found } };
    }
    const shell = readSubword(words, ["bash", "zsh", "fish"], "bash");
    words.nothingMore();
    if (words.problems.length > 0) return { problems: words.problems };
    const script = { bash: bashCompletion, zsh: zshCompletion, fish: fishCompletion }[shell];
    return { text: script.trimEnd().split("\n"), json: { shell, script } };
  },
};
