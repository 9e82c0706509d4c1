import fc from "fast-check";
import type {
  PlanPiece,
  PlanSession,
  PlanSetUp,
  Problem,
  Task,
  UnfitSpan,
  Wait,
} from "../../src/plan/problem.ts";
import { usualPrices } from "../../src/plan/score.ts";

/** Three emissions: dust, vapour, wet coat. Dust keeps apart from a wet coat, heat (3) from vapour. */
const dust = 0;
const vapour = 1;
const wet = 2;
const heat = 3;

const stations = ["bench", "spray corner", "lead pot", "cup"];

const setUps: PlanSetUp[] = [
  { station: 1, minutes: 5, keeps: { way: "load" }, putAway: 4, gives: [] },
  { station: 1, minutes: 6, keeps: { way: "load" }, putAway: 0, gives: [] },
  { station: 2, minutes: 20, keeps: { way: "heat", minutes: 25 }, putAway: 5, gives: [heat] },
  { station: 3, minutes: 4, keeps: { way: "mix", minutes: 30, serves: 2 }, putAway: 0, gives: [] },
];

/** Evenings of 60 to 240 minutes, one a day, the first one open (or not) at minute 0. */
const sessions: fc.Arbitrary<PlanSession[]> = fc
  .tuple(
    fc.integer({ min: -60, max: 120 }),
    fc.array(fc.integer({ min: 60, max: 240 }), { minLength: 4, maxLength: 14 }),
  )
  .map(([shift, lengths]) =>
    lengths
      .map((length, day) => ({ opens: day * 1440 + shift, closes: day * 1440 + shift + length }))
      .filter(({ closes }) => closes > 0),
  );

const preparation = { minutes: 5, settles: 0, gives: [{ what: dust, lasts: 0, fromSetUp: false }] };

/** A plain wait, a window with preparation after it, wet on wet, or one that only a mend follows. */
const windows: fc.Arbitrary<Pick<Wait, "windows" | "mend">> = fc
  .tuple(fc.constantFrom("plain", "scuff", "wet on wet", "mend", "steps"), fc.integer({ min: 0, max: 900 }))
  .map(([kind, opens]) => {
    if (kind === "plain") return { windows: [{ opens, shuts: null, preparation: null }], mend: null };
    const later = { opens: opens + 1440, shuts: null, preparation };
    if (kind === "scuff") {
      return { windows: [{ opens, shuts: opens + 1440, preparation: null }, later], mend: null };
    }
    if (kind === "mend") return { windows: [{ opens, shuts: opens + 1200, preparation: null }], mend: 10 };
    if (kind === "steps") {
      let most = 0;
      const reached = Array.from({ length: 400 }, (_, step) => {
        most = Math.max(most, step * 60 + opens + (step % 7 < 3 ? 60 : 0));
        return most;
      });
      return { windows: [{ opens: { every: 60, reached }, shuts: null, preparation: null }], mend: null };
    }
    return { windows: [{ opens: 0, shuts: 120, preparation: null }, later], mend: null };
  });

const work = fc.record({
  minutes: fc.integer({ min: 1, max: 50 }),
  kind: fc.constantFrom("shape", "load", "other load", "pour", "cup", "varnish"),
  mayStop: fc.boolean(),
  hook: fc.boolean(),
  looks: fc.constantFrom([], [], [5], [5, 15]),
  wait: windows,
  /** Nights, or some hours of each day, in which the air is unfit for it. */
  unfit: fc.option(fc.tuple(fc.integer({ min: 0, max: 1439 }), fc.integer({ min: 1, max: 1200 })), {
    nil: null,
    freq: 2,
  }),
  /** Waits for the task before the last one too, so that pieces are not only lines. */
  joins: fc.boolean(),
});

const piece = fc.record({
  release: fc.constantFrom(0, 0, 300),
  due: fc.option(fc.integer({ min: 0, max: 9000 }), { nil: null }),
  weight: fc.constantFrom(1, 1, 3),
  underLimit: fc.boolean(),
  work: fc.array(work, { minLength: 1, maxLength: 7 }),
  /** How its first task stands: to do, in hand, or done some minutes ago. */
  first: fc.oneof(
    fc.constantFrom("to do" as const, "to do" as const, "in hand" as const),
    fc.integer({ min: 0, max: 600 }),
  ),
});

type Work = typeof work extends fc.Arbitrary<infer W> ? W : never;

function daily([from, length]: readonly [number, number]): readonly UnfitSpan[] {
  return Array.from({ length: 15 }, (_, day) => {
    const begins = (day - 1) * 1440 + from;
    return [begins, begins + length] as const;
  });
}

function taskOf(given: Work, number: number, place: number, before: readonly number[]): Task {
  const setUp = { shape: null, load: 0, "other load": 1, pour: 2, cup: 3, varnish: null }[given.kind];
  const coat = given.kind !== "shape" && given.kind !== "pour";
  return {
    piece: number,
    minutes: given.minutes,
    station: setUp === null ? 0 : (setUps[setUp]?.station ?? 0),
    setUp,
    release: 0,
    waits: before.map((on) => ({ on, ...given.wait })),
    ...(given.unfit === null ? {} : { unfit: daily(given.unfit) }),
    mayStop: given.mayStop && !coat,
    hook: given.hook ? { place: 0, until: 600 } : null,
    gives: [
      ...(given.kind === "shape" ? [{ what: dust, lasts: 0, fromSetUp: true }] : []),
      ...(given.kind === "varnish" ? [{ what: vapour, lasts: 40, fromSetUp: false }] : []),
      ...(coat ? [{ what: wet, lasts: 45, fromSetUp: false }] : []),
    ],
    looks: coat ? given.looks : [],
    running: false,
    ended: place < 0 ? 0 : null,
  };
}

/** Shops of one to six pieces: every kind of set-up, window, wait and exclusion, work in hand and work done. */
export const randomProblem: fc.Arbitrary<Problem> = fc
  .record({
    sessions,
    hands: fc.constantFrom(1, 1, 1, 2),
    hooks: fc.integer({ min: 1, max: 4 }),
    mostOut: fc.option(fc.integer({ min: 1, max: 3 }), { nil: null }),
    pot: fc.boolean(),
    pieces: fc.array(piece, { minLength: 1, maxLength: 6 }),
  })
  .map((given) => {
    const tasks: Task[] = [];
    let inHand = 0;
    const pieces = given.pieces.map((made, number): PlanPiece => {
      const own: number[] = [];
      for (const [step, each] of made.work.entries()) {
        const before = each.joins ? own.slice(-2) : own.slice(-1);
        const task = taskOf(each, number, step, before);
        const first = step === 0 ? made.first : "to do";
        own.push(tasks.length);
        if (first === "to do" || (first === "in hand" && inHand > 0)) tasks.push(task);
        else if (first === "in hand") {
          inHand++;
          tasks.push({ ...task, running: true });
        } else if (typeof first === "number") tasks.push({ ...task, ended: -first });
      }
      const begun = own.some((index) => tasks[index]?.running === true || tasks[index]?.ended !== null);
      return {
        release: begun ? 0 : made.release,
        due: made.due,
        weight: made.weight,
        cure: 0,
        begun,
        underLimit: made.underLimit,
        hook: null,
      };
    });
    return {
      origin: 0,
      horizon: 14 * 1440,
      sessions: given.sessions,
      hands: given.hands,
      stations: stations.map((name, index) => ({
        name,
        standing: index === 2 && given.pot ? { setUp: 2, ready: -10, lastUsed: null, served: 0 } : null,
      })),
      setUps,
      places: [{ name: "rack", hooks: given.hooks }],
      apart: [
        [dust, wet],
        [heat, vapour],
      ],
      air: [],
      looks: [],
      mostOut: given.mostOut,
      prices: usualPrices,
      pieces,
      tasks,
    };
  });
