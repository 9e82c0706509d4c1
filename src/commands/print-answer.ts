import { isoMoment } from "../words/iso-moment.ts";
import { breakLine } from "../words/lay-out.ts";
import { plainText } from "../words/plain-text.ts";
import { capital } from "../words/say-list.ts";
import { sayRefusal } from "../words/say-refusal.ts";
import type { Bench, CommandContext } from "./bench.ts";
import type { Answer } from "./command.ts";

/** The exit code of an answer. */
export function answerExit(answer: Answer): 0 | 2 | 3 {
  if ("problems" in answer) return 2;
  return "refusal" in answer ? answer.refusal.exit : 0;
}

/**
 * Prints what came of a command: what was done on stdout, what was wrong or refused on stderr; under `--json` one
 * object on stdout either way.
 */
export async function printAnswer(answer: Answer, bench: Bench): Promise<void> {
  const { context, json } = bench;
  if ("problems" in answer) {
    sayProblems(answer.problems, json, context);
  } else if ("refusal" in answer) {
    const { refusal, help } = answer;
    const { speech } = await bench.open();
    const message = plainText(
      help === undefined
        ? sayRefusal(refusal, speech)
        : `${sayRefusal(refusal, speech).slice(0, -1)}: ${help}.`,
    );
    const until = refusal.until === null ? {} : { until: isoMoment(refusal.until, speech.zone) };
    if (json) printJson({ error: { code: refusal.code, message, ...until } }, context);
    else context.err(`${breakLine(message, context.columns)}\n`);
  } else if (json) {
    printJson(answer.json, context);
  } else {
    const lines = answer.text.map((line) => breakLine(plainText(line).trimEnd(), context.columns));
    context.out(lines.map((line) => `${line}\n`).join(""));
  }
}

/** `perch.yaml:12:11 ...`: said as it is, so that editors can jump there. */
const STANDS_IN_FILE = /^\S+:\d+:\d+ /;

/** Prints what is wrong with the words or a file, a line each. */
export function sayProblems(problems: readonly string[], json: boolean, context: CommandContext): 2 {
  const said = problems.map((problem) =>
    plainText(STANDS_IN_FILE.test(problem) ? problem : `${capital(problem)}.`),
  );
  const shown = (line: string) => (STANDS_IN_FILE.test(line) ? line : breakLine(line, context.columns));
  if (json) printJson({ error: { code: "wrong words", message: said.join(" ") } }, context);
  else for (const line of said) context.err(`${shown(line)}\n`);
  return 2;
}

function printJson(value: object, context: CommandContext): void {
  // What JSON lets through unescaped and a terminal might obey.
  const escaped = JSON.stringify(value).replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, escapeLetter);
  context.out(`${escaped}\n`);
}

/** A letter as JSON's own escape, one for each half of a surrogate pair. */
function escapeLetter(letter: string): string {
  return [...Array(letter.length).keys()]
    .map((index) => `\\u${letter.charCodeAt(index).toString(16).padStart(4, "0")}`)
    .join("");
}
