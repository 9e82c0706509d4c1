import type { Plan } from "../../../src/plan/plan.ts";
import type { Gives, PlanSetUp, Problem, Task } from "../../../src/plan/problem.ts";
import type { ShopFile, ShopPiece, ShopSetUp, ShopSolution, ShopStep } from "./shop-file.ts";

/** Turns a shop/1 file into a problem: hard windows, its own prices, hooks that stay taken, every first load free. */
export function problemOfShop(file: ShopFile): Problem {
  const numbers = new Numbers(file);
  let first = 0;
  const tasks = file.pieces.flatMap((piece, index) => {
    const own = piece.steps.map((step, number) => taskOf(piece, index, step, number, first, numbers));
    first += piece.steps.length;
    return own;
  });
  return {
    origin: 0,
    horizon: file.horizon,
    sessions: file.sessions.map(([opens, closes]) => ({ opens, closes })),
    hands: file.operators,
    stations: numbers.stations.map((name) => ({
      name,
      standing: file.setups[name]?.type === "family" ? "any" : null,
    })),
    setUps: numbers.setUps,
    places: numbers.places.map((name) => ({ name, hooks: file.holders[name] ?? 0 })),
    apart: file.exclusions.map(({ after, forbids }) => [
      numbers.emission(`after ${after}`),
      numbers.emission(`forbidden ${forbids}`),
    ]),
    air: [],
    looks: [],
    mostOut: file.wipCap,
    prices: { late: file.objective.tardy, flow: file.objective.flow, amends: 0, setUp: 0 },
    pieces: file.pieces.map(({ release, due, weight, finalCure }) => ({
      release,
      due,
      weight,
      cure: finalCure,
      begun: false,
      underLimit: true,
      hook: null,
    })),
    tasks,
  };
}

/** The starts of a plan of such a problem, and the cups mixed though one was still good; null: something found no time. */
export function solutionOf(file: ShopFile, { visits, unplaced }: Plan): ShopSolution | null {
  if (unplaced.length > 0) return null;
  const starts = file.pieces.map(({ steps }) => steps.map(() => 0));
  const forceSetup = file.pieces.map(({ steps }) => steps.map(() => false));
  const places = file.pieces.flatMap(({ steps }, piece) =>
    steps.map((step, number) => ({ piece, step, number })),
  );
  const mixed = new Map<string, number>();
  for (const { task, start, end, setUp } of visits) {
    const place = places[task];
    const own = starts[place?.piece ?? -1];
    if (place === undefined || own === undefined) continue;
    own[place.number] = start;
    const { station } = place.step;
    const rule = station === null ? undefined : file.setups[station];
    if (station === null || rule?.type !== "mix" || setUp === 0) continue;
    const forced = forceSetup[place.piece];
    if (forced !== undefined) forced[place.number] = end - (mixed.get(station) ?? -Infinity) <= rule.potLife;
    mixed.set(station, start);
  }
  return forceSetup.flat().some(Boolean) ? { starts, forceSetup } : { starts };
}

function taskOf(
  piece: ShopPiece,
  index: number,
  step: ShopStep,
  number: number,
  first: number,
  numbers: Numbers,
): Task {
  return {
    piece: index,
    minutes: step.p,
    station: step.station === null ? null : numbers.stations.indexOf(step.station),
    setUp: numbers.setUp(step),
    release: 0,
    waits: piece.edges
      .filter(([, to]) => to === number)
      .map(([from, , opens, shuts]) => ({
        on: first + from,
        windows: [{ opens, shuts, preparation: null }],
        mend: null,
      })),
    mayStop: false,
    hook: numbers.hook(step),
    gives: numbers.gives(step),
    looks: [],
    running: false,
    ended: null,
  };
}

/** The numbers that names get: a set-up for each station and family, an emission for each mark and each tag. */
class Numbers {
  readonly stations: readonly string[];
  readonly places: readonly string[];
  readonly setUps: PlanSetUp[] = [];
  readonly #setUpNames: string[] = [];
  readonly #emissions: string[] = [];
  readonly #file: ShopFile;

  constructor(file: ShopFile) {
    this.#file = file;
    const used = file.pieces.flatMap(({ steps }) => steps.flatMap(({ station }) => station ?? []));
    this.stations = [...new Set([...Object.keys(file.setups), ...used])];
    this.places = Object.keys(file.holders);
  }

  setUp({ station, family }: ShopStep): number | null {
    const made = station === null ? undefined : this.#file.setups[station];
    if (station === null || made === undefined || (made.type === "family" && family === null)) return null;
    const name = made.type === "family" ? `${station} ${family}` : station;
    const known = this.#setUpNames.indexOf(name);
    if (known >= 0) return known;
    const { minutes } = made;
    const place = this.stations.indexOf(station);
    this.setUps.push({ station: place, minutes, keeps: keeps(made), putAway: 0, gives: [] });
    return this.#setUpNames.push(name) - 1;
  }

  hook({ hold }: ShopStep): Task["hook"] {
    const place = hold === null ? -1 : this.places.indexOf(hold.holder);
    return hold === null || place < 0 ? null : { place, until: hold.minutes, stays: true };
  }

  gives({ tags, marks }: ShopStep): Gives[] {
    return [
      ...tags.map((tag) => ({ what: this.emission(`forbidden ${tag}`), lasts: 0, fromSetUp: true })),
      ...Object.entries(marks).map(([mark, lasts]) => ({
        what: this.emission(`after ${mark}`),
        lasts,
        fromSetUp: false,
      })),
    ];
  }

  emission(name: string): number {
    const known = this.#emissions.indexOf(name);
    return known >= 0 ? known : this.#emissions.push(name) - 1;
  }
}

function keeps(setUp: ShopSetUp): PlanSetUp["keeps"] {
  if (setUp.type === "heat") return { way: "heat", minutes: setUp.keep };
  if (setUp.type === "mix") {
    return { way: "mix", minutes: setUp.potLife, serves: Number.POSITIVE_INFINITY };
  }
  return { way: "load" };
}
