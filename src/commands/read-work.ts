import type { Anyway } from "../acts/request.ts";
import type { Tag } from "../journal/event.ts";
import type { Piece } from "../shop/shop.ts";
import type { Workshop } from "../workshop/workshop.ts";
import type { CommandWords } from "./command-words.ts";

/** The reason for going on although something speaks against it; null: none given. */
export function readAnyway(words: CommandWords): Anyway | null {
  const reason = words.option("anyway");
  return reason === null ? null : { reason };
}

/** The words after the tags, split where the last of them is a colour of the scheme: `detail ochre`. */
export async function splitColour(
  words: CommandWords,
  tags: readonly Tag[],
  workshop: Workshop,
): Promise<{ readonly step: string | null; readonly colour: string | null }> {
  const { step, last } = await splitLast(words, tags, workshop, ({ scheme }) =>
    scheme.map(({ colour }) => colour),
  );
  return { step, colour: last };
}

/** The same where the last is an answer of a step with answers: `water test tune`, or `tune` alone. */
export async function splitResult(
  words: CommandWords,
  tags: readonly Tag[],
  workshop: Workshop,
): Promise<{ readonly step: string | null; readonly result: string | null }> {
  const { step, last } = await splitLast(words, tags, workshop, ({ route }) =>
    route.flatMap(({ result }) => (result === null ? [] : Object.keys(result))),
  );
  return { step, result: last };
}

/** Takes the words that are left as a step, but for the last words where those are one of `special`; a step's name wins. */
async function splitLast(
  words: CommandWords,
  tags: readonly Tag[],
  workshop: Workshop,
  special: (piece: Piece) => readonly string[],
): Promise<{ readonly step: string | null; readonly last: string | null }> {
  const said = words.rest();
  if (said === null) return { step: null, last: null };
  const shop = await workshop.shop({ of: "tags", tags });
  const pieces = tags.flatMap((tag) => shop.pieces.get(tag) ?? []);
  const lower = said.toLowerCase();
  if (pieces.some(({ route }) => route.some(({ name }) => name.toLowerCase() === lower))) {
    return { step: said, last: null };
  }
  const last = pieces
    .flatMap(special)
    .find((word) => lower === word.toLowerCase() || lower.endsWith(` ${word.toLowerCase()}`));
  if (last === undefined) return { step: said, last: null };
  const step = said.slice(0, said.length - last.length).trim();
  return { step: step === "" ? null : step, last };
}
