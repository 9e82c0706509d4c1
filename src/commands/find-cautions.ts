import type { JournalEvent } from "../journal/event.ts";
import { cautionsFor } from "../safety/cautions.ts";
import { preparationsBefore } from "../shop/preparations-before.ts";
import { setUpWords } from "../shop/set-up-words.ts";
import { sayCautionShort } from "../words/say-caution.ts";
import type { Opened } from "./bench.ts";
import type { Done } from "./perform.ts";

/** One line for each caution of what was taken or readied that was read before; those ticked just now were read whole. */
export async function findCautions({ events, shop }: Done, { workshop }: Opened): Promise<readonly string[]> {
  const known = events.some(({ kind }) => kind === "readied") ? await workshop.shop() : shop;
  const names = new Set(events.flatMap((event) => namesOf(event, known)));
  for (const event of events) if (event.kind === "ticked") names.delete(event.caution);
  const { cautions } = await workshop.rules();
  return [...names].flatMap((name) => {
    const caution = cautions[name];
    return caution === undefined ? [] : [sayCautionShort(caution)];
  });
}

/** A readied set-up is known only by its words and station; the steps of pieces that use it say what to mind. */
function namesOf(event: JournalEvent, shop: Done["shop"]): readonly string[] {
  if (event.kind === "readied") {
    const steps = [...shop.pieces.values()].flatMap(({ route }) => route);
    const fits = steps.filter(({ station, setUp }) => station === event.station && setUp !== null);
    const same = fits.filter(({ setUp }) => setUp !== null && beginsAlike(setUp.do, event.setUp));
    return same.flatMap(({ setUp }) => setUp?.cautions ?? []);
  }
  if (event.kind !== "taken" || event.tag === null) return [];
  const piece = shop.pieces.get(event.tag);
  const step = piece?.route.find(({ name }) => name === event.step);
  if (piece === undefined || step === undefined) return [];
  if (event.part === "step") return cautionsFor(step, piece, "step");
  return preparationsBefore(piece, event.step).flatMap(({ cautions }) => cautions);
}

/** Whether a set-up's words are these, its colour filled in: `load {colour}` and `load ochre`. */
function beginsAlike(pattern: string, words: string): boolean {
  const [head = "", tail = ""] = setUpWords({ do: pattern }, "\u0000").split("\u0000");
  return words.startsWith(head) && words.endsWith(tail);
}
