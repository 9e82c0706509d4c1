import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decide } from "../../src/acts/decide.ts";
import type { ActRequest } from "../../src/acts/request.ts";
import type { ProcessDefinition } from "../../src/process/definition.ts";
import type { Piece, Shop } from "../../src/shop/shop.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { walker } from "../fixtures/walker.ts";
import { type Answer, Bench, refusalOf } from "./bench.ts";
import { anyRequests, askedAt, branching, type Timeless } from "./random-requests.ts";

/** Plays requests in order at one bench of four pieces and looks at each answer. */
function play(
  requests: readonly Timeless[],
  definition: ProcessDefinition,
  look: (bench: Bench, request: ActRequest, answer: Answer, before: Shop) => void,
): Bench {
  const bench = new Bench("Mon 18:00", definition);
  bench.tag(3, { scheme: [{ colour: "ochre", minutes: null, flashOff: 5 }] });
  bench.tag(1);
  for (const timeless of requests) {
    bench.clock += timeless.wait * MINUTE;
    const request = askedAt(timeless, bench.clock);
    const before = bench.shop;
    look(bench, request, bench.ask(request), before);
  }
  return bench;
}

/** What of a shop undo gives back: all but the next tag, the journal's own numbers, and when it was written. */
function state({ pieces, stations, settings, ticks, acts, setAside }: Shop) {
  const whole = [...pieces.values()].map(({ lastSeq: _, ...piece }) => piece);
  const places = [...stations.values()]
    .map(({ lastSeq: _, ...station }) => station)
    // A station nobody has worked at and one never heard of are the same.
    .filter(({ setUp, lastUsed, clearedAt }) => setUp ?? lastUsed ?? clearedAt);
  return { whole, places, settings, ticks, acts, setAside };
}

const check = (
  definition: ProcessDefinition,
  look: (bench: Bench, request: ActRequest, answer: Answer, before: Shop) => void,
) =>
  fc.assert(
    fc.property(anyRequests, (requests) => void play(requests, definition, look)),
    { numRuns: 25 },
  );

describe.each([walker, branching])("whatever is asked of a $name, in any order", (definition) => {
  test("nothing throws, and all that is allowed fits", () => {
    check(definition, (bench) => expect(bench.shop.setAside).toEqual([]));
  });

  test("the work of a piece stays in its order: taken before hung, each step after those it waits for", () => {
    check(definition, (bench) => {
      for (const piece of bench.shop.pieces.values()) expect(disorder(piece)).toEqual([]);
    });
  });

  test("a refusal writes nothing and says which exit it is", () => {
    check(definition, (bench, _, answer, before) => {
      if (!("refusal" in answer)) return;
      expect(bench.shop).toEqual(before);
      expect([2, 3]).toContain(answer.refusal.exit);
    });
  });

  test("several tags are done all or none", () => {
    check(definition, (_, request, answer) => {
      if ("refusal" in answer || !("tags" in request) || request.act === "change") return;
      const touched = new Set(answer.events.map(({ tag }) => tag));
      expect([...new Set(request.tags)].every((tag) => touched.has(tag))).toBe(true);
    });
  });

  test("an act undone leaves the shop as it was before it", () => {
    check(definition, (bench, request, answer, before) => {
      if ("refusal" in answer || request.act === "undo") return;
      const undone = decide({ act: "undo", at: bench.clock, target: null }, bench.shop, bench.context);
      expect(undone).toMatchObject({ expects: { newest: bench.events.length } });
      const length = bench.events.length;
      bench.undo();
      expect(state(bench.shop)).toEqual(state(before));
      bench.events.splice(length);
    });
  });

  test("what the clock alone holds back is not held back for the same reason once its time has come", () => {
    check(definition, (bench, request, answer) => {
      if (request.act !== "take" || !("refusal" in answer) || answer.refusal.until === null) return;
      const { until, code } = answer.refusal;
      if (request.at !== bench.clock) return;
      expect(until).toBeGreaterThan(bench.clock);
      const then = { ...bench.context, now: until };
      const later = decide({ ...request, at: until }, bench.shop, then);
      if (!("refusal" in later)) return;
      expect(later.refusal.code === code && sameReason(answer, later)).toBe(false);
    });
  });

  test("an act is expected to find each piece it touches as it was seen", () => {
    check(definition, (bench, request, answer, before) => {
      if ("refusal" in answer) return;
      const again = decide(request, before, bench.context);
      const expected = "refusal" in again ? {} : again.expects.tags;
      const known = answer.events.flatMap(({ tag }) => (tag !== null && before.pieces.has(tag) ? [tag] : []));
      for (const tag of known) expect(expected[tag]).toBe(before.pieces.get(tag)?.lastSeq);
    });
  });
});

/** Passes that were hung before they were taken, before the tagging, or before a step that must come first. */
function disorder({ route, work, taggedAt }: Piece): readonly string[] {
  const liveHangs = (step: string) => work.get(step)?.hangs.slice(work.get(step)?.voided) ?? [];
  return route.flatMap(({ name, after }) => {
    const before = after.flatMap((step) => liveHangs(step).map(({ hungAt }) => hungAt));
    const first = Math.max(taggedAt, ...before);
    const wrong = liveHangs(name).filter(
      ({ takenAt, hungAt }) => hungAt < (takenAt ?? hungAt) || hungAt < first,
    );
    return wrong.map(({ pass }) => `${name} ${pass}`);
  });
}

/** The same step of the same piece, or a hold by the same things. */
function sameReason(one: Answer, later: { readonly refusal: ReturnType<typeof refusalOf> }): boolean {
  const first = refusalOf(one);
  const { refusal } = later;
  if (first.code === "held" && refusal.code === "held") {
    return refusal.holds.some((hold) => first.holds.some((old) => old.because === hold.because));
  }
  return "tag" in first && "tag" in refusal && first.tag === refusal.tag;
}
