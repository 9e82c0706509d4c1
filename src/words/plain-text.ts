/** ASCII that is printed, and the sign of degrees, which stands in every line about the air. */
const SURELY_PLAIN = /^[ -~\u00b0]*$/;

/**
 * Text from a file, a note or a name, made safe for a screen: one line, no control characters or escape sequences,
 * nothing that hides or turns round what stands beside it.
 *
 * @example plainText("level\nthe \u001b[31mrun\u001b[0m") // "level the run"
 */
export function plainText(text: string): string {
  return SURELY_PLAIN.test(text) ? text : strip(text);
}

/** Apart, as classes of Unicode cost a cold start up to a millisecond wherever they are met. */
function strip(text: string): string {
  // Escape sequences of terminals: CSI, OSC and its kin to their end (or to the end of the line), and two-character ones.
  const escapes =
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what this looks for.
    /(?:\u001b\[|\u009b)[0-?]*[ -/]*[@-~]|(?:\u001b[PX\]^_]|[\u0090\u0098\u009d-\u009f])[^\u0007\u001b\u009c\n]*(?:\u0007|\u001b\\|\u009c)?|\u001b[ -/]*[0-~]?/g;
  // Everything that ends a line or moves on a line, for which one space stands.
  const breaks = /[\t\n\v\f\r\u0085\u2028\u2029]+/g;
  // What is left to strip: control characters; marks that turn the writing direction or hide; fillers, joiners and
  // variation selectors, of which terminals disagree how wide they are; lone surrogates.
  const unseen = /[\p{Cc}\p{Cf}\p{Cs}\p{Default_Ignorable_Code_Point}]/gu;
  return text.replace(escapes, "").replace(breaks, " ").replace(unseen, "");
}
