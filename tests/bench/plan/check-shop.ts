import type { ShopFile, ShopPiece, ShopSolution, ShopStep } from "./shop-file.ts";

/** A solution judged: what is wrong with it (empty: nothing), and its objective. */
export interface Judged {
  readonly wrong: readonly string[];
  readonly objective: number;
}

/** A step with its times. */
interface Timed {
  readonly name: string;
  readonly step: ShopStep;
  readonly piece: ShopPiece;
  readonly setUp: number;
  readonly start: number;
  readonly end: number;
}

/**
 * Judges the starts of a shop/1 solution from the file alone: rule by rule as the format says, with its objective. It
 * shares no code with what plans, and knows nothing of problems and plans.
 */
export function checkShop(file: ShopFile, solution: ShopSolution): Judged {
  const timed = withSetUps(file, solution);
  const completions = file.pieces.map(
    (piece) =>
      Math.max(...timed.filter((one) => one.piece === piece).map(({ end }) => end)) + piece.finalCure,
  );
  const wrong = [
    ...wrongTimes(file, solution),
    ...wrongWaits(file, solution),
    ...timed.flatMap((one) => wrongSession(file, one)),
    ...wrongTogether(file, timed),
    ...wrongExclusions(file, timed),
    ...wrongHolds(file, timed),
    ...wrongLimit(file, timed, completions),
  ];
  const { tardy, flow } = file.objective;
  const objective = file.pieces.reduce((sum, { due, weight, release }, index) => {
    const done = completions[index] ?? Number.NaN;
    return sum + tardy * weight * Math.max(0, done - due) + flow * (done - release);
  }, 0);
  return { wrong, objective };
}

/** Walks each station in order of time, and says who has to set up there. */
function withSetUps(file: ShopFile, { starts, forceSetup }: ShopSolution): Timed[] {
  const all = file.pieces.flatMap((piece, p) =>
    piece.steps.map((step, s) => {
      const start = starts[p]?.[s] ?? Number.NaN;
      const forced = forceSetup?.[p]?.[s] === true;
      return { name: `P${p + 1}.${s}`, step, piece, forced, start, end: start + step.p };
    }),
  );
  all.sort((a, b) => a.start - b.start);
  const lastEnd = new Map<string, number>();
  const family = new Map<string, string | null>();
  const mixed = new Map<string, number>();
  return all.map(({ forced, ...one }) => {
    const { station } = one.step;
    const rule = station === null ? undefined : file.setups[station];
    if (station === null || rule === undefined) return { ...one, setUp: 0 };
    let needed = false;
    if (rule.type === "family") needed = family.has(station) && family.get(station) !== one.step.family;
    if (rule.type === "heat") needed = one.start - (lastEnd.get(station) ?? -Infinity) > rule.keep;
    if (rule.type === "mix") needed = one.end - (mixed.get(station) ?? -Infinity) > rule.potLife;
    const made = needed || forced;
    if (made && rule.type === "mix") mixed.set(station, one.start);
    family.set(station, one.step.family);
    lastEnd.set(station, one.end);
    return { ...one, setUp: made ? rule.minutes : 0 };
  });
}

function wrongTimes({ pieces }: ShopFile, { starts }: ShopSolution): string[] {
  return pieces.flatMap(({ steps }, p) =>
    steps.flatMap((_, s) => (Number.isInteger(starts[p]?.[s]) ? [] : [`P${p + 1}.${s} has no start`])),
  );
}

function wrongWaits({ pieces }: ShopFile, { starts }: ShopSolution): string[] {
  return pieces.flatMap(({ steps, edges }, p) =>
    edges.flatMap(([from, to, least, most]) => {
      const wait =
        (starts[p]?.[to] ?? Number.NaN) - (starts[p]?.[from] ?? Number.NaN) - (steps[from]?.p ?? 0);
      return wait >= least && wait <= (most ?? Infinity) ? [] : [`P${p + 1}.${to} waits ${wait} min`];
    }),
  );
}

function wrongSession({ sessions }: ShopFile, { name, piece, start, setUp, end }: Timed): string[] {
  const wrong: string[] = [];
  if (start - setUp < piece.release) wrong.push(`${name} is begun before its release`);
  if (!sessions.some(([open, close]) => start - setUp >= open && end <= close)) {
    wrong.push(`${name} is not within a session`);
  }
  return wrong;
}

/** At any time at most as many at work as there are operators. */
function wrongTogether({ operators }: ShopFile, timed: readonly Timed[]): string[] {
  return timed.flatMap(({ name, start, setUp }) => {
    const from = start - setUp;
    const busy = timed.filter((other) => other.start - other.setUp <= from && other.end > from).length;
    return busy > operators ? [`${busy} are at work as ${name} begins`] : [];
  });
}

function wrongExclusions({ exclusions }: ShopFile, timed: readonly Timed[]): string[] {
  return exclusions.flatMap(({ after, forbids }) =>
    timed.flatMap((one) => {
      const mark = one.step.marks[after];
      if (mark === undefined) return [];
      return timed
        .filter((other) => other !== one && other.step.tags.includes(forbids))
        .filter((other) => other.start - other.setUp < one.end + mark && other.end > one.start)
        .map((other) => `${other.name} runs within ${after} of ${one.name}`);
    }),
  );
}

/** A holder that the file does not count has room for all. */
function wrongHolds({ holders }: ShopFile, timed: readonly Timed[]): string[] {
  const held = timed.flatMap(({ name, step, end }) =>
    step.hold === null ? [] : [{ name, holder: step.hold.holder, from: end, until: end + step.hold.minutes }],
  );
  return held.flatMap(({ name, holder, from, until }) => {
    const taken = held.filter((other) => other.holder === holder && other.from <= from && other.until > from);
    return until > from && taken.length > (holders[holder] ?? Infinity)
      ? [`${name} finds no place on ${holder}`]
      : [];
  });
}

function wrongLimit(file: ShopFile, timed: readonly Timed[], completions: readonly number[]): string[] {
  const { wipCap, pieces } = file;
  if (wipCap === null) return [];
  const begins = pieces.map((piece) =>
    Math.min(...timed.filter((one) => one.piece === piece).map(({ start, setUp }) => start - setUp)),
  );
  return begins.flatMap((from, index) => {
    const out = begins.filter((begin, other) => begin <= from && (completions[other] ?? Infinity) > from);
    return out.length > wipCap ? [`${out.length} are out as P${index + 1} begins`] : [];
  });
}
