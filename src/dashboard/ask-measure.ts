import type { Tag } from "../journal/event.ts";
import { measurementsAsked } from "../shop/measurements-asked.ts";
import { sayList } from "../words/say-list.ts";
import type { Workshop } from "../workshop/workshop.ts";
import type { Happened } from "./state.ts";

/** Asks for the value of what a step wants measured on pieces, or what any step of them wants; what is missing first. */
export async function askMeasure(
  tags: readonly Tag[],
  step: string | null,
  workshop: Workshop,
): Promise<Happened> {
  const shop = await workshop.shop({ of: "tags", tags });
  const pieces = tags.flatMap((tag) => shop.pieces.get(tag) ?? []);
  const [needed] = [...measurementsAsked(pieces, step), ...measurementsAsked(pieces, null)];
  if (needed === undefined) {
    const text = `No step of ${sayList(tags)} wants anything measured; dryline measure keeps other things.`;
    return { is: "told", message: { text, tone: "told" } };
  }
  const { what, unit, atMost } = needed;
  return {
    is: "overlay",
    overlay: {
      is: "type",
      title: `${what} of ${sayList(tags)} in ${unit}, at most ${atMost}`,
      typed: "",
      purpose: { for: "measure", tags, what, unit },
    },
  };
}
