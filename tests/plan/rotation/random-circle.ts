import { chanceFrom } from "../../../src/plan/chance.ts";
import type { Circle, CircleSetUp } from "../../../src/plan/rotation/circle.ts";

/** The same with air that is unfit for some of its tasks at times. */
export function inUnfitAir(circle: Circle, seed: number): Circle {
  const chance = chanceFrom(seed + 1_000);
  const tasks = circle.tasks.map((task) => {
    if (chance() < 0.4) return task;
    const from = Math.floor(chance() * circle.period);
    const second = from + 4 + Math.floor(chance() * 3);
    return {
      ...task,
      unfit: [
        [from, from + 1 + Math.floor(chance() * 3)],
        [second, second + 2],
      ] as const,
    };
  });
  return { ...circle, tasks };
}

/**
 * A circle of a quarter of an hour drawn from a seed: few enough minutes that every rotation of it can be tried. It has
 * all that files of rotations lack: heat, pot life, putting away, hooks freed by the next step, two pairs of hands.
 */
export function randomCircle(seed: number): Circle {
  const chance = chanceFrom(seed);
  const pick = (from: number, to: number): number => from + Math.floor(chance() * (to - from + 1));
  const count = pick(3, 4);
  const period = pick(14, 18);
  const hands = chance() < 0.25 ? 2 : 1;
  const split = pick(5, 8);
  const sessions =
    chance() < 0.4
      ? [
          { opens: 1, closes: split },
          { opens: split + 1, closes: period - 2 },
        ]
      : [{ opens: 1, closes: period - 2 }];
  const setUps = Array.from({ length: 2 }, (_, number): CircleSetUp => {
    const keeps = pick(0, 2);
    return {
      station: chance() < 0.7 ? 0 : number,
      minutes: pick(1, 2),
      keeps:
        keeps === 0
          ? { way: "load" }
          : keeps === 1
            ? { way: "heat", minutes: pick(0, 12) }
            : { way: "mix", minutes: pick(3, 8), serves: pick(1, 3) },
      putAway: chance() < 0.5 ? 0 : 1,
      apartFrom: [],
    };
  });
  const tasks = Array.from({ length: count }, () => {
    const minutes = pick(1, 2);
    return { minutes, stays: minutes, setUp: chance() < 0.7 ? pick(0, 1) : null, fixed: null };
  });
  const clears = tasks.map(() => tasks.map(() => (chance() < 0.15 ? pick(1, 5) : 0)));
  const stationOf = (task: number): number | null => {
    const setUp = tasks[task]?.setUp ?? null;
    return setUp === null ? null : (setUps[setUp]?.station ?? null);
  };
  const minutesOf = (task: number): number => tasks[task]?.minutes ?? 0;
  const apart = tasks.map((_, one) =>
    tasks.map((_, other) => {
      const free = minutesOf(one) + (clears[one]?.[other] ?? 0);
      const back = clears[other]?.[one] ?? 0;
      const share = stationOf(one) !== null && stationOf(one) === stationOf(other);
      return hands === 1 || share || free > minutesOf(one) || back > 0 ? free : null;
    }),
  );
  return {
    period,
    hands,
    sessions,
    tasks,
    lags: Array.from({ length: count - 1 }, (_, from) => {
      const least = minutesOf(from) + pick(0, period);
      return { from, to: from + 1, least, most: chance() < 0.5 ? null : least + pick(1, period) };
    }),
    apart,
    apartFromSetUp: apart,
    setUps,
    holds: tasks.flatMap((_, task) =>
      chance() < 0.4
        ? [
            {
              of: 0,
              task,
              after: minutesOf(task),
              minutes: pick(2, period + 4),
              freedBy: chance() < 0.5 && task + 1 < count ? task + 1 : null,
            },
          ]
        : [],
    ),
    room: [pick(1, 2)],
    pieces: [{ begins: [0], ends: [{ task: count - 1, minutes: minutesOf(count - 1) }] }],
  };
}
