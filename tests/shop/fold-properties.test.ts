import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { JournalEvent } from "../../src/journal/event.ts";
import { holdsOn } from "../../src/safety/fit-to-start.ts";
import { coatState } from "../../src/shop/coat-state.ts";
import { foldShop } from "../../src/shop/fold.ts";
import { hookNeededUntil } from "../../src/shop/hook.ts";
import { setUpState } from "../../src/shop/set-up-state.ts";
import type { Piece, Shop } from "../../src/shop/shop.ts";
import { stepStates } from "../../src/shop/step-state.ts";
import { summarise } from "../../src/shop/summarise.ts";
import { MINUTE } from "../../src/time/instant.ts";
import { anyEvents, readingOf } from "../fixtures/any-events.ts";
import { walker, walkerRules } from "../fixtures/walker.ts";
import { at, dublin, eveningHours } from "../fixtures/week-time.ts";

const someMoment = fc
  .integer({ min: -200, max: 3_000 })
  .map((minutes) => ({ now: at("Mon 8:00") + minutes * MINUTE, zone: dublin, hours: eveningHours }));

const fold = (events: readonly JournalEvent[]) => foldShop(readingOf(events));

/** A shop without what every event changes: its own number, and the list of acts. */
function factsOf(shop: Shop) {
  const pieces = [...shop.pieces.values()].map((piece) => ({ ...piece, lastSeq: 0 }));
  const stations = [...shop.stations.values()]
    .filter(({ setUp, lastUsed, clearedAt }) => setUp !== null || lastUsed !== null || clearedAt !== null)
    .map((station) => ({ ...station, lastSeq: 0 }));
  return { pieces, stations, settings: shop.settings, ticks: shop.ticks, setAside: shop.setAside };
}

describe("any sequence of events", () => {
  test("folds without a throw, and every question about the shop has an answer", () => {
    fc.assert(
      fc.property(anyEvents, someMoment, (events, moment) => {
        const shop = fold(events);
        for (const piece of shop.pieces.values()) {
          expect([...stepStates(piece, moment).keys()]).toEqual(piece.route.map(({ name }) => name));
          const coat = coatState(piece, moment.now);
          if (coat !== null) expect(coat.progress).toBeGreaterThanOrEqual(0);
          const hook = hookNeededUntil(piece, moment.now);
          expect(hook === null || !Number.isNaN(hook)).toBe(true);
        }
        for (const { setUp } of shop.stations.values()) if (setUp !== null) setUpState(setUp, moment.now);
        for (const step of walker.steps) {
          const task = {
            tags: [1],
            step,
            part: "step",
            preparation: null,
            coats: walker.coats,
            leaves: [],
          } as const;
          for (const { until } of holdsOn(task, shop, walkerRules, moment)) {
            expect(until === null || until > moment.now).toBe(true);
          }
        }
        for (const tag of [1, 2, 3]) {
          const own = events.filter((event) => event.tag === tag || event.kind === "clock");
          const summary = summarise(tag, own, () => walker);
          expect(summary === null || summary.row.tag === tag).toBe(true);
        }
      }),
      { numRuns: 400 },
    );
  });

  test("every event set aside is told once, with its number and a reason, and never two sentences for one", () => {
    fc.assert(
      fc.property(anyEvents, (events) => {
        const { setAside } = fold(events);
        const seqs = setAside.map(({ seq }) => seq);
        expect(new Set(seqs).size).toBe(seqs.length);
        for (const { seq, why } of setAside) expect(why.startsWith(`${seq} (`)).toBe(true);
      }),
    );
  });

  test("a state is one thing: what is open has not shut, and nothing opens after it shuts", () => {
    fc.assert(
      fc.property(anyEvents, someMoment, (events, moment) => {
        for (const piece of fold(events).pieces.values()) {
          for (const state of stepStates(piece, moment).values()) {
            if (state.is === "open") {
              expect(state.since).toBeLessThanOrEqual(moment.now);
              expect(state.shuts === null || moment.now < state.shuts).toBe(true);
              expect(state.nextOpens !== null).toBe(state.opensAgain);
            }
            if (state.is === "shut") {
              expect(state.since).toBeLessThanOrEqual(moment.now);
              expect(state.shuts === null || moment.now < state.shuts).toBe(true);
            }
            if (state.is === "drying" && state.opens !== null) {
              expect(state.opens).toBeGreaterThan(moment.now);
              expect(state.shuts === null || state.opens <= state.shuts).toBe(true);
            }
          }
        }
      }),
      { numRuns: 300 },
    );
  });

  test("in whatever order the journal hands them over, the shop is the same", () => {
    const shuffled = anyEvents.chain((events) =>
      fc.shuffledSubarray([...events], { minLength: events.length }).map((mixed) => ({ events, mixed })),
    );
    fc.assert(
      fc.property(shuffled, ({ events, mixed }) => {
        expect(factsOf(fold(mixed))).toEqual(factsOf(fold(events)));
      }),
    );
  });
});

describe("pieces that have nothing to do with each other", () => {
  /** Events of two tags, each in its own order, without what corrects by number. */
  const twoPieces = anyEvents.map((events) => ({
    one: events.filter(({ tag, kind }) => tag === 1 && isPlain(kind)),
    two: events.filter(({ tag, kind }) => tag === 2 && isPlain(kind)),
  }));

  test("come out the same however their events are mixed: the order of independent tags does not matter", () => {
    fc.assert(
      fc.property(twoPieces, fc.array(fc.boolean(), { maxLength: 60 }), ({ one, two }, turns) => {
        const inTurn = foldOf(mix(one, two, turns));
        const oneFirst = foldOf([...one, ...two]);
        for (const tag of [1, 2]) expect(inTurn.get(tag)).toEqual(oneFirst.get(tag));
      }),
    );
  });

  test("a piece read alone is the piece read among all: no batch of the journal changes it", () => {
    fc.assert(
      fc.property(anyEvents, (events) => {
        const whole = fold(events);
        const undone = new Set(events.flatMap((event) => (event.kind === "undone" ? [event.target] : [])));
        for (const tag of [1, 2]) {
          // What corrects by act reaches over tags in these wild journals: a real one writes it once for each tag.
          const own = events.filter((event) => event.tag === tag || isCorrection(event.kind));
          if (own.some(({ act }) => undone.has(act))) continue;
          expect(fold(own).pieces.get(tag)).toEqual(whole.pieces.get(tag));
        }
      }),
    );
  });
});

describe("the newest act taken back", () => {
  test("leaves the shop exactly as before it, but for the list of acts and the tags handed out", () => {
    fc.assert(
      fc.property(anyEvents, (events) => {
        const newest = events.at(-1)?.act ?? 0;
        const before = events.filter(({ act }) => act !== newest);
        const last = events.filter(({ act }) => act === newest);
        // A journal whose later acts correct the newest does not exist, and these are drawn at random.
        if (
          before.some(
            (event) => (event.kind === "undone" || event.kind === "amended") && event.target >= newest,
          )
        )
          return;
        if (last.some((event) => event.kind === "undone" && event.target === newest)) return;
        const tail = events.length;
        const undone = last.map(
          (event, index): JournalEvent => ({
            ...event,
            seq: tail + 1 + index,
            act: tail + 1,
            kind: "undone",
            target: newest,
          }),
        );
        const { setAside: told, ...state } = factsOf(fold([...events, ...undone]));
        const { setAside: toldBefore, ...stateBefore } = factsOf(fold(before));
        expect(state).toEqual(stateBefore);
        // A tagging taken back may leave more to tell (events of a tag that is no more), never less.
        expect(told).toEqual(expect.arrayContaining([...toldBefore]));
      }),
      { numRuns: 300 },
    );
  });
});

function isCorrection(kind: JournalEvent["kind"]): boolean {
  return kind === "undone" || kind === "amended" || kind === "clock";
}

function isPlain(kind: JournalEvent["kind"]): boolean {
  return !isCorrection(kind);
}

/** The two lists as one, a turn at a time; each keeps its own order. */
function mix(
  one: readonly JournalEvent[],
  two: readonly JournalEvent[],
  turns: readonly boolean[],
): JournalEvent[] {
  const lists = [[...one], [...two]];
  const mixed = turns.flatMap((first) => lists[first ? 0 : 1]?.splice(0, 1) ?? []);
  return [...mixed, ...lists.flat()];
}

/** Folds events numbered anew; acts and newest numbers, which name the order itself, are left out. */
function foldOf(events: readonly JournalEvent[]): Map<number, Piece> {
  const numbered = events.map((event, index) => ({ ...event, seq: index + 1, act: index + 1 }));
  const plain = (piece: Piece): Piece => ({
    ...piece,
    lastSeq: 0,
    hand: piece.hand && { ...piece.hand, act: 0 },
    alsoLeft: piece.alsoLeft.map((hand) => ({ ...hand, act: 0 })),
  });
  return new Map([...fold(numbered).pieces].map(([tag, piece]) => [tag, plain(piece)]));
}
