import { cutTo, fitTo, widthOf, wrapTo } from "./width.ts";

/**
 * Rows of cells in columns two spaces apart, indented by two; the last column is cut where the terminal ends.
 *
 * @param columns width of the terminal; null: nothing is cut
 */
export function layOut(rows: readonly (readonly string[])[], columns: number | null): string[] {
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, index) => {
      widths[index] = Math.max(widths[index] ?? 0, widthOf(cell));
    });
  }
  return rows.map((row) => {
    const line = `  ${row.map((cell, index) => fitTo(cell, widths[index] ?? 0)).join("  ")}`.trimEnd();
    return columns === null ? line : cutTo(line, columns);
  });
}

/** The least room for words, however narrow the terminal. */
const LEAST_ROOM = 12;

/**
 * A line for a terminal, broken at spaces where it is longer: what goes on stands in by two more than the line does.
 *
 * @param columns width of the terminal; null: it stays one line
 * @example breakLine("  Never: sand beside a flame", 20) // "  Never: sand\n    beside a flame"
 */
export function breakLine(line: string, columns: number | null): string {
  if (columns === null || widthOf(line) <= columns) return line;
  const words = line.trimStart();
  const indent = " ".repeat(line.length - words.length);
  const [first, ...more] = wrapTo(words, Math.max(columns - indent.length - 2, LEAST_ROOM));
  return [`${indent}${first}`, ...more.map((text) => `${indent}  ${text}`)].join("\n");
}

/** Cells by which what goes on below a row stands in. */
const BELOW = 9;

/** A row of columns, and what is told of it beside them. */
interface RowWithRest {
  readonly cells: readonly string[];
  readonly rest: string;
}

/**
 * Rows of cells in columns as layOut has them, each with the rest of what it tells beside it. Where there is too little
 * room for that, it goes on below: nothing is cut.
 *
 * @returns the lines of each row
 */
export function layOutWithRest(rows: readonly RowWithRest[], columns: number | null): string[][] {
  const lines = layOut(
    rows.map(({ cells }) => cells),
    columns,
  );
  const margin = Math.max(0, ...lines.map(widthOf)) + 2;
  return rows.map(({ rest }, index) => {
    const line = lines[index] ?? "";
    if (rest === "") return [line];
    if (columns === null || margin + widthOf(rest) <= columns) return [fitTo(line, margin) + rest];
    return [line, ...wrapTo(rest, columns - BELOW).map((text) => " ".repeat(BELOW) + text)];
  });
}
