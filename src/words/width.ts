const ONE_CELL = /^[ -~]*$/;

/**
 * How many cells of a terminal a plain text takes.
 *
 * @example widthOf("smelt") // 5
 * @example widthOf("鮎") // 2
 */
export function widthOf(text: string): number {
  return ONE_CELL.test(text) ? text.length : countCells(text);
}

/** Apart, as classes of Unicode cost a cold start up to a millisecond wherever they are met. */
function countCells(text: string): number {
  // Marks that stand on the letter before them.
  const noCell = /^\p{M}$/u;
  // Wide and fullwidth blocks of Unicode's East Asian Width (UAX #11), and the pictographs shown as emoji.
  const twoCells =
    /^[\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\u9fff\ua000-\ua4cf\ua960-\ua97f\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff00-\uff60\uffe0-\uffe6\u{16fe0}-\u{18dff}\u{1b000}-\u{1b2ff}\u{1f1e6}-\u{1f1ff}\u{1f300}-\u{1faff}\u{20000}-\u{3fffd}\p{Emoji_Presentation}]$/u;
  let width = 0;
  for (const letter of text) width += noCell.test(letter) ? 0 : twoCells.test(letter) ? 2 : 1;
  return width;
}

/** The text cut to at most `cells`, with `~` where something was cut. `cutTo("two-tone dace", 8) === "two-ton~"` */
export function cutTo(text: string, cells: number): string {
  if (widthOf(text) <= cells) return text;
  let kept = "";
  let width = 0;
  for (const letter of text) {
    width += widthOf(letter);
    if (width > cells - 1) break;
    kept += letter;
  }
  return cells > 0 ? `${kept}~` : "";
}

/** The text cut or filled with spaces to exactly `cells`; a wide letter that does not fit leaves a space. */
export function fitTo(text: string, cells: number): string {
  const cut = cutTo(text, cells);
  return cut + " ".repeat(Math.max(0, cells - widthOf(cut)));
}

/** Breaks a text into lines of at most `cells`, at spaces; a longer word is broken where it must be. */
export function wrapTo(text: string, cells: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ").flatMap((whole) => breakWord(whole, cells))) {
    const joined = line === "" ? word : `${line} ${word}`;
    if (widthOf(joined) <= cells) line = joined;
    else {
      lines.push(line);
      line = word;
    }
  }
  return line === "" && lines.length > 0 ? lines : [...lines, line];
}

/** Parts of a word that each fit; a word that fits is one part. */
function breakWord(word: string, cells: number): string[] {
  if (widthOf(word) <= cells) return [word];
  const parts: string[] = [];
  let part = "";
  for (const letter of word) {
    if (part !== "" && widthOf(part + letter) > cells) {
      parts.push(part);
      part = "";
    }
    part += letter;
  }
  return [...parts, part];
}
