import { matchName } from "../acts/match-name.ts";
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

/**
 * The words after the tags, split where the last of them is a colour of the scheme: `detail ochre`. What names no step
 * is the colour where pieces are painted without a scheme.
 */
export async function splitColour(
  words: CommandWords,
  tags: readonly Tag[],
  workshop: Workshop,
): Promise<{ readonly step: string | null; readonly colour: string | null }> {
  const pieces = await piecesOf(words, tags, workshop);
  const { step, last } = splitLast(words, pieces, ({ scheme }) => scheme.map(({ colour }) => colour));
  return step !== null && last === null && pieces.length > 0 && pieces.every((piece) => isColour(step, piece))
    ? { step: null, colour: step }
    : { step, colour: last };
}

/** Whether words that are no step's, nor nearly, can only be the colour of a pass: what goes before it is done. */
function isColour(said: string, { route, scheme, coats, work }: Piece): boolean {
  const preparations = Object.values(coats).flatMap(({ windows }) =>
    windows.flatMap(({ first }) => first?.do ?? []),
  );
  const names = [...route.map(({ name }) => name), ...preparations];
  const match = matchName(said, names);
  const isNoStep = "nearest" in match && match.nearest === null;
  const painted = route.filter(({ passes }) => passes === "scheme");
  const isDue = painted.some(({ after }) => after.every((step) => work.get(step)?.completed));
  return isNoStep && scheme.length === 0 && isDue;
}

/** The same where the last is an answer of a step with answers: `water test tune`, or `tune` alone. */
export async function splitResult(
  words: CommandWords,
  tags: readonly Tag[],
  workshop: Workshop,
): Promise<{ readonly step: string | null; readonly result: string | null }> {
  const { step, last } = splitLast(words, await piecesOf(words, tags, workshop), ({ route }) =>
    route.flatMap(({ result }) => (result === null ? [] : Object.keys(result))),
  );
  return { step, result: last };
}

/**
 * Takes the words that are left as a step, but for the last words where those are one of `special`. What is said whole
 * goes before what is only begun, a step before the others.
 */
function splitLast(
  words: CommandWords,
  pieces: readonly Piece[],
  special: (piece: Piece) => readonly string[],
): { readonly step: string | null; readonly last: string | null } {
  const said = words.rest();
  if (said === null) return { step: null, last: null };
  const steps = unique(pieces.flatMap(({ route }) => route.map(({ name }) => name)));
  const specials = unique(pieces.flatMap(special));
  const whole = (word: string, names: readonly string[]) =>
    names.find((name) => name.toLowerCase() === word.toLowerCase()) ?? null;
  const begun = (word: string, names: readonly string[]) => {
    const match = matchName(word, names);
    return "found" in match ? match.found : null;
  };
  if (whole(said, steps) !== null) return { step: said, last: null };
  const split = splitAt(said, (word) => whole(word, specials));
  if (split !== null) return split;
  if (!("nearest" in matchName(said, steps))) return { step: said, last: null };
  return splitAt(said, (word) => begun(word, specials)) ?? { step: said, last: null };
}

/** Splits before the first word from which on `find` knows the rest; null: from none. */
function splitAt(said: string, find: (words: string) => string | null) {
  const words = said.split(/\s+/);
  for (let first = 0; first < words.length; first++) {
    const last = find(words.slice(first).join(" "));
    if (last !== null) return { step: first === 0 ? null : words.slice(0, first).join(" "), last };
  }
  return null;
}

function unique(names: readonly string[]): readonly string[] {
  return [...new Set(names)];
}

/** The pieces meant, read only where more was said than their tags. */
async function piecesOf(
  words: CommandWords,
  tags: readonly Tag[],
  workshop: Workshop,
): Promise<readonly Piece[]> {
  if (words.ahead().length === 0) return [];
  const shop = await workshop.shop({ of: "tags", tags });
  return tags.flatMap((tag) => shop.pieces.get(tag) ?? []);
}
