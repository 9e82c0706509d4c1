import type { Cell } from "./styled-line.ts";
import { cellsOf, writeCells } from "./styled-line.ts";

const ENTER = "\u001b[?1049h\u001b[?25l\u001b[2J";
const LEAVE = "\u001b[m\u001b[?25h\u001b[?1049l";
const BEGIN = "\u001b[?2026h";
const END = "\u001b[?2026l";
/** A run of cells that stayed is written again where moving over it would cost as many bytes. */
const CLOSE_BY = 8;

export interface ScreenSize {
  readonly columns: number;
  readonly rows: number;
}

/**
 * Puts whole frames on a terminal and owns its alternate screen and cursor. Only what changed is written: the
 * cells of a line that differ, at their place, one write a frame, between the marks of a synchronised update.
 *
 * Ink's own ways of drawing wipe the scrollback or slip by a line when a frame is as tall as the screen.
 */
export class Presenter {
  readonly #write: (text: string) => void;
  #size: ScreenSize;
  /** Lines on the screen now; null: not known, the next frame is painted whole. */
  #shown: readonly string[] | null = null;
  #entered = false;

  constructor(write: (text: string) => void, size: ScreenSize) {
    this.#write = write;
    this.#size = size;
  }

  /** Takes the alternate screen. */
  enter(): void {
    if (this.#entered) return;
    this.#entered = true;
    this.#shown = null;
    this.#write(ENTER);
  }

  /** Gives the terminal back as it was. Safe to call twice. */
  leave(): void {
    if (!this.#entered) return;
    this.#entered = false;
    this.#write(LEAVE);
  }

  /** The next frame is painted whole, on an empty screen. */
  resize(size: ScreenSize): void {
    this.#size = size;
    this.#shown = null;
  }

  /** Shows a frame, cut to the screen's height. */
  show(frame: string): void {
    if (!this.#entered) return;
    const lines = frame.split("\n").slice(0, this.#size.rows);
    const before = this.#shown;
    let text = before === null ? "\u001b[2J" : "";
    for (let row = 0; row < Math.max(lines.length, before?.length ?? 0); row++) {
      const line = lines[row] ?? "";
      const old = before?.[row] ?? "";
      if (line === old) continue;
      text += before === null ? `${place(row, 0)}${line}\u001b[m` : changeLine(row, old, line);
    }
    this.#shown = lines;
    if (text !== "") this.#write(`${BEGIN}${text}${END}`);
  }
}

/** What turns the line on the screen into the new one. */
function changeLine(row: number, old: string, line: string): string {
  const from = cellsOf(old);
  const to = cellsOf(line);
  // A wide character takes two places: columns can then not be counted in characters.
  if (hasWide(from) || hasWide(to)) return `${place(row, 0)}\u001b[2K${writeCells(to)}`;
  let text = "";
  let column = 0;
  while (column < to.length) {
    if (same(from[column], to[column])) {
      column++;
      continue;
    }
    const end = endOfRun(from, to, column);
    text += place(row, column) + writeCells(to.slice(column, end));
    column = end;
  }
  return from.length > to.length ? `${text}${place(row, to.length)}\u001b[K` : text;
}

/** Where a run of changed cells ends: the first changed cell after which at least CLOSE_BY stayed. */
function endOfRun(from: readonly Cell[], to: readonly Cell[], start: number): number {
  let end = start + 1;
  for (let column = end; column < to.length && column - end < CLOSE_BY; column++) {
    if (!same(from[column], to[column])) end = column + 1;
  }
  return end;
}

/** A cell beyond the line's end is a blank without style. */
function same(a: Cell | undefined, b: Cell | undefined): boolean {
  return (a?.char ?? " ") === (b?.char ?? " ") && (a?.style ?? "") === (b?.style ?? "");
}

function place(row: number, column: number): string {
  return `\u001b[${row + 1};${column + 1}H`;
}

/** Everything from the Hangul Jamo on may be wide, and combining marks take no place: both count as "not one". */
function hasWide(cells: readonly Cell[]): boolean {
  return cells.some(({ char }) => (char.codePointAt(0) ?? 0) >= 0x300 && !/[\u2190-\u25ff]/.test(char));
}
