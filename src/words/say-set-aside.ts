import type { Shop } from "../shop/shop.ts";
import { plainText } from "./plain-text.ts";

/**
 * That events of the journal fit nothing and so do not count, as a sentence; nothing where there are none. No act of this
 * program leaves such: a newer one, or damage, does.
 *
 * @example "An event of the journal does not count: 12 (hung of 14) fits nothing: "seal" is done. Do it again if it is missing."
 */
export function saySetAside(setAside: Shop["setAside"]): readonly string[] {
  const [first] = setAside;
  if (first === undefined) return [];
  const { seq, why } = first;
  const said = why.startsWith(`${seq} `) ? why : `${seq}, ${why}`;
  const which =
    setAside.length === 1
      ? "An event of the journal does not count"
      : `${setAside.length} events of the journal do not count, the first`;
  return [plainText(`${which}: ${said}. Do it again if it is missing.`)];
}
