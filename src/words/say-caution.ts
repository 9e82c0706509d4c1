import type { Caution } from "../safety/rules.ts";
import { plainText } from "./plain-text.ts";
import { capital } from "./say-list.ts";

/**
 * The whole text of a caution, a line each: what it is, do, never, what is reckoned for this shop today, where it is
 * published, who comes first.
 */
export function sayCaution(caution: Caution, reckoned: readonly string[] = []): string[] {
  return [
    `${capital(caution.name)}. ${caution.whatItIs}`,
    ...caution.do.map((line) => `  Do: ${line}`),
    // Lines of the shipped file stand by themselves: "Never leave it alone".
    ...caution.never.map((line) => (/^never\b/i.test(line) ? `  ${line}` : `  Never: ${line}`)),
    ...reckoned.map((line) => `  Here: ${line}`),
    ...caution.sources.map((line) => `  Source: ${line}`),
    caution.closing,
  ].map(plainText);
}

/**
 * The one line for a caution that was read before.
 *
 * @example sayCautionShort(caution) // "Molten lead: keep water away, air moving, face and hands covered"
 */
export function sayCautionShort(caution: Caution): string {
  return plainText(caution.line);
}
