import type { Tag } from "../journal/event.ts";
import { hoursOf } from "../shop/settings-at.ts";
import { stepState } from "../shop/step-state.ts";
import { sayList } from "../words/say-list.ts";
import type { Speech } from "../words/speech.ts";
import type { Workshop } from "../workshop/workshop.ts";
import { numbered } from "./numbered.ts";
import type { TypedMend } from "./read-mend.ts";
import type { Happened } from "./state.ts";

/** Asks from which step pieces go on after a mend: any that is done, or can be worked. */
export async function askMend(
  tags: readonly Tag[],
  { what, minutes }: TypedMend,
  workshop: Workshop,
  speech: Speech,
): Promise<Happened> {
  const shop = await workshop.shop({ of: "tags", tags });
  const at = { now: speech.now, zone: speech.zone, hours: hoursOf(shop.settings) };
  const [first, ...others] = tags.flatMap((tag) => shop.pieces.get(tag) ?? []);
  const steps = (first?.route ?? [])
    .map(({ name }) => name)
    .filter((name) => first !== undefined && stepState(first, name, at).is !== "blocked")
    .filter((name) => others.every(({ route }) => route.some((step) => step.name === name)));
  if (steps.length === 0) {
    const text = `There is no step that ${sayList(tags)} could go on from.`;
    return { is: "told", message: { text, tone: "refused" } };
  }
  const choices = numbered(steps, (goOnFrom) => ({
    label: goOnFrom,
    effect: {
      do: "perform",
      request: { act: "mend", at: speech.now, tags, what, minutes, goOnFrom },
    },
  }));
  const title = `${sayList(tags)}, ${what}: from which step does it go on?`;
  return { is: "overlay", overlay: { is: "choose", title, lines: [], choices } };
}
