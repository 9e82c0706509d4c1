import type { Key } from "./state.ts";

/** The flags Ink gives with an input. */
export interface InkKey {
  readonly upArrow: boolean;
  readonly downArrow: boolean;
  readonly pageUp: boolean;
  readonly pageDown: boolean;
  readonly return: boolean;
  readonly escape: boolean;
  readonly backspace: boolean;
  readonly delete: boolean;
  readonly ctrl: boolean;
  readonly meta: boolean;
  readonly tab: boolean;
}

/** Keys of one input, which may hold several characters (`abc`), as a fast hand or a paste sends them. */
export function keysOf(input: string, flags: InkKey): Key[] {
  if (flags.upArrow) return [{ name: "up" }];
  if (flags.downArrow) return [{ name: "down" }];
  if (flags.pageUp) return [{ name: "pageUp" }];
  if (flags.pageDown) return [{ name: "pageDown" }];
  if (flags.return) return [{ name: "enter" }];
  if (flags.escape) return [{ name: "escape" }];
  if (flags.backspace || flags.delete) return [{ name: "backspace" }];
  if (flags.ctrl || flags.meta || flags.tab) return [];
  return [...input].flatMap((char): Key[] => {
    if (char === "\r" || char === "\n") return [{ name: "enter" }];
    return isControl(char) ? [] : [{ name: "char", char }];
  });
}

/** A control character of ASCII or of ISO 8859, as a paste may hold: no key of a hand's, and a terminal obeys it. */
function isControl(char: string): boolean {
  return char < " " || (char >= "\u007f" && char <= "\u009f");
}
