/** One character of a line with the styles it is shown in, as the numbers of SGR (ECMA-48), `1;36`. */
export interface Cell {
  readonly char: string;
  readonly style: string;
}

/** SGR numbers that switch a style off, each with the test of what it switches off. */
const OFF: Readonly<Record<number, (on: number) => boolean>> = {
  22: (on) => on === 1 || on === 2,
  23: (on) => on === 3,
  24: (on) => on === 4,
  27: (on) => on === 7,
  29: (on) => on === 9,
  39: (on) => (on >= 30 && on <= 37) || (on >= 90 && on <= 97),
  49: (on) => (on >= 40 && on <= 47) || (on >= 100 && on <= 107),
};

// biome-ignore lint/suspicious/noControlCharactersInRegex: SGR sequences begin with ESC
const PIECES = /\u001b\[([0-9;]*)m|([\s\S])/gu;

/**
 * Takes a line apart into cells, so that two pictures of it can be compared cell by cell. Colours beyond the
 * sixteen are not used here. `"\u001b[1mab\u001b[22mc"` gives a and b with style `1`, c with none.
 */
export function cellsOf(line: string): Cell[] {
  const cells: Cell[] = [];
  let on: number[] = [];
  let style = "";
  for (const [, codes, char] of line.matchAll(PIECES)) {
    if (char !== undefined) {
      cells.push({ char, style });
      continue;
    }
    for (const code of (codes ?? "").split(";").map(Number)) {
      const endsSome = OFF[code];
      if (code === 0) on = [];
      else if (endsSome !== undefined) on = on.filter((one) => !endsSome(one));
      else if (!on.includes(code)) on = [...on, code];
    }
    style = on.join(";");
  }
  return cells;
}

/** The cells as a terminal must be told them, with the style switched only where it changes and off at the end. */
export function writeCells(cells: readonly Cell[]): string {
  let text = "";
  let style = "";
  for (const cell of cells) {
    if (cell.style !== style) {
      text += cell.style === "" ? "\u001b[m" : `\u001b[0;${cell.style}m`;
      style = cell.style;
    }
    text += cell.char;
  }
  return style === "" ? text : `${text}\u001b[m`;
}
