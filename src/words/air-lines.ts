import { type AirWords, meaningOf, readAirFields, readAirWords, type SaidAir } from "./read-air.ts";

/** Readings longer apart than this are told: between them the air is only drawn straight. */
const GAP = 3 * 3_600_000;

/** What became of a line: a reading, or why there is none. */
export type AirLineRead = { readonly line: number } & (SaidAir | { readonly problem: string });

/**
 * Reads readings line by line as any logger or sensor tool prints them: JSON, bare words, or a table whose first line
 * names its columns. Lines may come in pieces of any size.
 */
export class AirLines {
  readonly #as: () => AirWords;
  #rest = "";
  #line = 0;
  #columns: { readonly by: string; readonly meanings: readonly (string | null)[] } | null = null;

  /** @param as asked anew for each line: time passes while a pipe is open */
  constructor(as: () => AirWords) {
    this.#as = as;
  }

  /** Takes a piece of what was printed, and gives what its whole lines say. */
  take(text: string): readonly AirLineRead[] {
    const lines = (this.#rest + text).split(/\r\n|\n|\r(?!$)/);
    this.#rest = lines.pop() ?? "";
    return lines.flatMap((line) => this.#read(line));
  }

  /**
   * What was left without an end of line when the pipe was closed. The last figure of a table's row may then be cut off:
   * 55 % broken off is 5 %.
   */
  end(): readonly AirLineRead[] {
    const rest = this.#rest;
    this.#rest = "";
    const isRow = this.#columns !== null && !rest.includes("{");
    return this.#read(rest).map((one) =>
      "problem" in one || !isRow
        ? one
        : { ...one, doubt: one.doubt ?? "its line has no end, so it may be cut off" },
    );
  }

  #read(text: string): readonly AirLineRead[] {
    this.#line++;
    const plain = text.replace(/^\uFEFF/, "").trim();
    if (plain === "" || plain.startsWith("#") || this.#takesAsHeader(plain)) return [];
    return [{ line: this.#line, ...this.#readLine(plain) }];
  }

  #readLine(plain: string): SaidAir | { readonly problem: string } {
    if (this.#columns === null || plain.includes("{")) return readAirWords(plain, this.#as());
    const fields = new Map<string, unknown>();
    for (const [index, cell] of plain.split(this.#columns.by).entries()) {
      const meaning = this.#columns.meanings[index] ?? null;
      const value = cell.trim().replaceAll(/^"|"$/g, "");
      // A comma that parts no columns is a decimal one.
      const plainValue = this.#columns.by === "," ? value : value.replace(/^(\s*-?\d+),(\d+)/, "$1.$2");
      if (meaning !== null) fields.set(meaning, plainValue);
    }
    return readAirFields(fields, this.#as());
  }

  /** A line that names columns: a temperature and a humidity among them, and no figure. */
  #takesAsHeader(plain: string): boolean {
    const by = [";", "\t", ","].find((mark) => plain.includes(mark));
    if (by === undefined || plain.includes("{")) return false;
    const meanings = plain.split(by).map(meaningOf);
    const hasTemperature = meanings.some((one) => one !== null && /celsius|fahrenheit|temperature/.test(one));
    if (!hasTemperature || !meanings.includes("humidity")) return false;
    this.#columns = { by, meanings };
    return true;
  }
}

/** Clocks of other zones are off by whole half hours, by up to 14 hours; a reading sent at once is as old as it takes. */
const ZONE_STEP = 30 * 60_000;
const FARTHEST_ZONE = 14 * 3_600_000;
const AT_ONCE = 3 * 60_000;

/** Whether a reading that has just come is as old as if its sensor's clock were in another zone. */
export function isOldAsByZone(at: number, now: number): boolean {
  const behind = now - at;
  const off = Math.abs(behind - ZONE_STEP * Math.round(behind / ZONE_STEP));
  return behind > ZONE_STEP - AT_ONCE && behind < FARTHEST_ZONE + AT_ONCE && off <= AT_ONCE;
}

/**
 * Spans without a reading among those of one pipe, longer than three hours.
 *
 * @param moments in any order
 */
export function gapsBetween(
  moments: readonly number[],
): readonly { readonly from: number; readonly to: number }[] {
  const sorted = moments.toSorted((a, b) => a - b);
  return sorted.flatMap((from, index) => {
    const to = sorted[index + 1];
    return to === undefined || to - from <= GAP ? [] : [{ from, to }];
  });
}
