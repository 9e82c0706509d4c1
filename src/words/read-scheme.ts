import type { SchemePass } from "../journal/event.ts";
import { parseDuration } from "../time/duration.ts";

/** Colour, then perhaps minutes, then perhaps a stroke and the flash-off. */
const PASS = /^(.*?\S)(?:\s+(\d[^/]*?))?(?:\s*\/\s*(\d.*))?$/;

/**
 * A scheme as it is said: colours in their order, each with its minutes and, after a stroke, its flash-off.
 *
 * @example readScheme("ochre 10/5, green 6") // ochre 10 min and 5 of flash-off; green 6, its flash-off not said
 */
export function readScheme(
  text: string,
): { readonly scheme: readonly SchemePass[] } | { readonly problem: string } {
  const scheme: SchemePass[] = [];
  for (const part of text.split(",").map((said) => said.trim())) {
    const pass = readPass(part);
    if (pass === null) {
      return {
        problem: `"${part}" is no pass of a scheme: say colour, minutes and flash-off, as ochre 10/5`,
      };
    }
    scheme.push(pass);
  }
  return { scheme };
}

/** A scheme in the words readScheme reads back. `sayScheme(scheme) === "ochre 10/5, green 6"` */
export function sayScheme(scheme: readonly SchemePass[]): string {
  return scheme
    .map(({ colour, minutes, flashOff }) => {
      const worked = minutes === null ? colour : `${colour} ${minutes}`;
      return flashOff === null ? worked : `${worked}/${flashOff}`;
    })
    .join(", ");
}

/** Null: no pass. A colour neither begins with a digit, holds a stroke nor ends with a minus: then a figure was meant. */
function readPass(part: string): SchemePass | null {
  const [, colour, worked, flash] = PASS.exec(part) ?? [];
  if (colour === undefined || /^\d|\/|\s[-−]\d/.test(colour)) return null;
  const minutes = worked === undefined ? null : readMinutes(worked);
  const flashOff = flash === undefined ? null : readMinutes(flash);
  if ((worked !== undefined && minutes === null) || (flash !== undefined && flashOff === null)) return null;
  return { colour, minutes, flashOff };
}

/** A bare number is minutes. */
function readMinutes(text: string): number | null {
  return parseDuration(/^\d+$/.test(text.trim()) ? `${text.trim()} min` : text);
}
