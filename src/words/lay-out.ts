import { cutTo, fitTo, widthOf } from "./width.ts";

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
