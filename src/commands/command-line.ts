import { breakLine } from "../words/lay-out.ts";
import { plainText } from "../words/plain-text.ts";
import { Bench, type CommandContext } from "./bench.ts";
import { answerExit, printAnswer, sayProblems } from "./print-answer.ts";
import { readCommand } from "./read-command.ts";

/** Exit codes: done; our own fault; the words or a file are wrong; refused for safety or state. */
export type ExitCode = 0 | 1 | 2 | 3;

/**
 * Runs one command line: reads the words, does it, prints what came of it.
 *
 * @param argv what was typed after `dryline`
 * @returns the exit code; throws only for a fault of our own
 */
export async function runCommandLine(argv: readonly string[], context: CommandContext): Promise<ExitCode> {
  const line = await readCommand(argv);
  if ("problems" in line) return sayProblems(line.problems, argv.includes("--json"), context);
  if (line.words.has("help")) {
    const { helpOf } = await import("./help-of.ts");
    for (const said of helpOf(line.word, line.command))
      context.out(`${breakLine(plainText(said), context.columns)}\n`);
    return 0;
  }
  const bench = new Bench(context, line.words.has("json"));
  try {
    const answer = await line.command.run(line.words, bench);
    await printAnswer(answer, bench);
    await bench.doubtClock();
    await bench.tellFileTroubles();
    return answerExit(answer);
  } catch (thrown) {
    const { sayTrouble } = await import("./say-trouble.ts");
    const trouble = sayTrouble(thrown);
    if (trouble === null) throw thrown;
    return sayProblems([trouble], bench.json, context);
  } finally {
    await bench.close();
  }
}
