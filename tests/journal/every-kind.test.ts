import { expect, test } from "vitest";
import type { EventKind } from "../../src/journal/event.ts";
import { EVENT_SHAPES } from "../../src/journal/event-shapes.ts";
import { everyKind, taggings } from "./every-kind.ts";
import { anAct } from "./made-acts.ts";
import { scratchJournal } from "./scratch.ts";

test("every form of every kind is kept and read again as it was", async () => {
  const { journal } = await scratchJournal();
  const given = [...taggings, ...Object.values(everyKind).flat()];
  for (const event of given) await journal.append(anAct([event]));
  const { events, setAside } = await journal.read({ of: "all" });
  expect(setAside).toEqual([]);
  expect(events.map(({ seq, act, v, recorded, by, together, ...said }) => said)).toEqual(given);
});

/** Each field of a body taken out, or made into something else. */
function* damage(body: Readonly<Record<string, unknown>>): Generator<unknown> {
  for (const field of Object.keys(body)) {
    const { [field]: _, ...rest } = body;
    yield rest;
    yield { ...body, [field]: Symbol.iterator };
  }
}

const kinds = Object.keys(everyKind) as (keyof typeof everyKind)[];

test.each(kinds)("a %s of which any field is lost or spoilt is told from a sound one", (kind) => {
  const soundForm: Record<EventKind, (body: unknown) => boolean> = EVENT_SHAPES;
  for (const { kind: _, at, tag, station, ...body } of everyKind[kind]) {
    expect(soundForm[kind](body)).toBe(true);
    // What a change leaves out stays as it is, so only spoilt fields can be told there.
    const damaged = [...damage(body)].filter(
      (one) => kind !== "changed" || Object.values(one ?? {}).includes(Symbol.iterator),
    );
    expect(damaged.filter((one) => soundForm[kind](one))).toEqual([]);
  }
});
