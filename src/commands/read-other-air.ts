import { type Air, readAir } from "../process/quantity-form.ts";
import type { CommandWords } from "./command-words.ts";

/** The air of `--air 27C,45%`; null: none was said, or it could not be read, and the problem told. */
export function readOtherAir(words: CommandWords): Air | null {
  const said = words.option("air");
  if (said === null) return null;
  const air = readAir(said.replace(/,\s*/, " "));
  if (air === null) words.problems.push(`--air "${said}" is no air: write 27C,45% or 80F,45%`);
  return air;
}
