import { layOut } from "../words/lay-out.ts";
import { capital } from "../words/say-list.ts";
import type { Command, Options } from "./command.ts";
import { COMMON } from "./read-command.ts";

/** How to say one command: usage, options, examples. */
export function helpOf(word: string, command: Command): string[] {
  const options: Options = { ...command.options, ...COMMON };
  const rows = Object.entries(options).map(([name, { value, says }]) => [
    `--${name}${value === null ? "" : ` ${value}`}`,
    says,
  ]);
  return [
    ...command.usage.map((usage) => `dryline ${usage}`),
    `  ${capital(command.says)}.`,
    "",
    ...layOut(
      command.examples.map(([line, says]) => [`dryline ${line}`, says]),
      null,
    ),
    "",
    ...layOut(rows, null),
    ...(word === "help" ? ["", "dryline --version tells the version."] : []),
  ];
}
