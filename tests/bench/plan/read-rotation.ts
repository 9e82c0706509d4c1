import type { Circle, CircleSetUp } from "../../../src/plan/rotation/circle.ts";
import { FileTrouble } from "./family.ts";
import type { RotationFile } from "./rotation-file.ts";

/** A rotation file as the solver's problem, for a period that is a multiple of its day. */
export function readRotation(file: RotationFile, period: number): Circle {
  const { steps, edges, exclusions, finalCure } = file;
  checkRotationFile(file, period);
  const { setUps, ofStep } = readSetUps(file);
  const apart = (fromSetUp: boolean) =>
    steps.map((one, first) =>
      steps.map((other, then) => {
        const marks = exclusions.map(({ after, forbids }) =>
          other.tags.includes(forbids) ? (one.marks[after] ?? 0) : 0,
        );
        const least = one.p + Math.max(0, ...marks);
        const change = changeover(setUps, ofStep[first] ?? null, ofStep[then] ?? null);
        return fromSetUp ? least : Math.max(least, one.p + change);
      }),
    );
  const numbers = steps.map((_, index) => index);
  return {
    period,
    hands: 1,
    sessions: readSessions(file, period),
    tasks: steps.map(({ p }, index) => ({ minutes: p, stays: p, setUp: ofStep[index] ?? null, fixed: null })),
    lags: edges.map(([from, to, least, most]) => {
      const minutes = steps[from]?.p ?? 0;
      return { from, to, least: minutes + least, most: most === null ? null : minutes + most };
    }),
    apart: apart(false),
    apartFromSetUp: apart(true),
    setUps,
    holds: steps.flatMap(({ p, hold }, task) =>
      hold === null || file.hooks === null
        ? []
        : [{ of: 0, task, after: p, minutes: hold.minutes, freedBy: null }],
    ),
    room: file.hooks === null ? [] : [file.hooks],
    pieces: [
      {
        begins: numbers.filter((index) => edges.every(([, to, least]) => to !== index || least < 0)),
        ends: numbers
          .filter((index) => edges.every(([from, , least]) => from !== index || least < 0))
          .map((task) => ({ task, minutes: (steps[task]?.p ?? 0) + finalCure })),
      },
    ],
  };
}

function checkRotationFile({ steps, edges, day, bench }: RotationFile, period: number): void {
  const whole = (value: unknown): boolean => Number.isInteger(value);
  if (!Array.isArray(steps) || steps.length === 0 || !Array.isArray(edges)) {
    throw new FileTrouble("a rotation file has steps and edges");
  }
  if (![day, ...(bench ?? [Number.NaN]), ...steps.map(({ p }) => p)].every(whole)) {
    throw new FileTrouble("day, bench and every step's p are whole minutes");
  }
  if (edges.some(([from, to]) => steps[from] === undefined || steps[to] === undefined)) {
    throw new FileTrouble("an edge goes from or to a step that there is not");
  }
  if (period < day || period % day !== 0) {
    throw new FileTrouble(`the period ${period} is no multiple of the day of ${day} minutes`);
  }
}

function readSessions({ day, bench: [opens, closes] }: RotationFile, period: number): Circle["sessions"] {
  return Array.from({ length: period / day }, (_, index) => ({
    opens: index * day + opens,
    closes: index * day + closes,
  }));
}

/** A set-up for each family of a station that has any. */
function readSetUps({ steps, setups }: RotationFile) {
  const stations = Object.keys(setups);
  const families: string[] = [];
  const setUps: CircleSetUp[] = [];
  const ofStep = steps.map(({ station, family }) => {
    const rule = station === null ? undefined : setups[station];
    if (station === null || rule === undefined) return null;
    const name = JSON.stringify([station, family]);
    const known = families.indexOf(name);
    if (known >= 0) return known;
    setUps.push({
      station: stations.indexOf(station),
      minutes: rule.minutes,
      keeps: { way: "load" },
      putAway: 0,
      apartFrom: [],
    });
    return families.push(name) - 1;
  });
  return { setUps, ofStep };
}

/** Minutes of set-up between two steps of one station, at the least. */
function changeover(setUps: readonly CircleSetUp[], from: number | null, to: number | null): number {
  const before = from === null ? undefined : setUps[from];
  const after = to === null ? undefined : setUps[to];
  return before === undefined || after === undefined || from === to || before.station !== after.station
    ? 0
    : after.minutes;
}
