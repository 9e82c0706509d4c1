import type { Coat } from "../process/coat.ts";
import type { Step } from "../process/step.ts";
import { MINUTE } from "../time/instant.ts";
import { type ShopFacts, type StandingFacts, setUpWords } from "./plan-shop.ts";
import type { PlanPlace, PlanSetUp, PlanStation, Problem, Standing } from "./problem.ts";

/** Gives the things of a shop their numbers in a problem, each when it is first named. */
export class Names {
  readonly setUps: PlanSetUp[] = [];
  readonly places: PlanPlace[] = [];
  readonly apart: (readonly [number, number])[] = [];
  readonly #facts: ShopFacts;
  readonly #emissions = new Map<string, number>();
  readonly #stations = new Map<string, number>();
  readonly #setUps = new Map<string, number>();
  readonly #places = new Map<string, number>();

  constructor(facts: ShopFacts) {
    this.#facts = facts;
    for (const room of facts.rooms.names) {
      for (const { these } of facts.context.rules.keepApart) {
        const [one, other] = these.map((what) => numberOf(this.#emissions, inRoom(what, room)));
        if (one !== undefined && other !== undefined) this.apart.push([one, other]);
      }
    }
  }

  /** A station is known from when a step or something standing there first names it. */
  station(name: string): number {
    return numberOf(this.#stations, name);
  }

  /** Something given off at a station or place, in its room. Null for what nothing keeps apart from. */
  emission(what: string, where: string | null): number | null {
    return this.#emissions.get(inRoom(what, this.#facts.rooms.of(where))) ?? null;
  }

  /** Whether two emissions must not be in the room together. */
  keepApart(one: number, other: number): boolean {
    return this.apart.some(([a, b]) => (a === one && b === other) || (a === other && b === one));
  }

  /** Null for a place that is never full. */
  place(name: string): number | null {
    const hooks = this.#facts.places.get(name)?.hooks;
    if (hooks === undefined) return null;
    const number = numberOf(this.#places, name);
    this.places[number] = { name, hooks };
    return number;
  }

  /** The set-up of a step for a pass of a colour and its coat; two are the same where their words are. Null: it needs none. */
  setUp({ setUp, station, givesOff }: Step, colour: string | null, coat: Coat | null): number | null {
    if (setUp === null) return null;
    const what = setUpWords(setUp, colour);
    const key = `${station}\n${what}`;
    const known = this.#setUps.get(key);
    if (known !== undefined) return known;
    const gives = givesOff.flatMap(({ what, lasts }) => (lasts === "while set up" ? [what] : []));
    return this.#add(key, {
      station: this.station(station),
      minutes: setUp.takes,
      keeps: this.#keepsOf(station, what) ?? this.#facts.keepsToday(setUp.keeps, coat),
      putAway: setUp.putAway,
      gives: this.#known(gives, station),
    });
  }

  /** Every station named so far, with what stands there now. */
  stations(): PlanStation[] {
    const standing = new Map(
      this.#facts.standing.map((one) => [this.station(one.station), this.#standing(one)]),
    );
    return [...this.#stations].map(([name, number]) => ({ name, standing: standing.get(number) ?? null }));
  }

  /** What is in the air now; the warmth of a pot that stands, until it could be put away. */
  air(): Problem["air"] {
    const { now } = this.#facts.context;
    return this.#facts.air.flatMap(({ what, room, until, from }) => {
      const number = this.#emissions.get(inRoom(what, room));
      if (number === undefined || from.kind === "in hand") return [];
      if (until !== null) return [{ what: number, until: Math.ceil((until - now) / MINUTE) }];
      const set =
        from.kind === "set-up" ? this.#facts.standing.find((one) => one.station === from.station) : null;
      return [{ what: number, until: set?.setUp.putAwayMinutes ?? 0 }];
    });
  }

  #standing({ station, setUp }: StandingFacts): Standing {
    const { now } = this.#facts.context;
    const key = `${station}\n${setUp.what}`;
    const number =
      this.#setUps.get(key) ??
      this.#add(key, {
        station: this.station(station),
        minutes: 0,
        keeps: setUp.keeps,
        putAway: setUp.putAwayMinutes,
        gives: this.#known(setUp.givesOff, station),
      });
    return {
      setUp: number,
      ready: Math.ceil((setUp.ready - now) / MINUTE),
      lastUsed: setUp.lastUsed === null ? null : Math.floor((setUp.lastUsed - now) / MINUTE),
      served: setUp.served,
    };
  }

  /** A cup keeps as the one that stands there does; null: none does, or it is no cup. */
  #keepsOf(station: string, what: string): PlanSetUp["keeps"] | null {
    const stands = this.#facts.standing.find((one) => one.station === station && one.setUp.what === what);
    return stands?.setUp.keeps.way === "mix" ? stands.setUp.keeps : null;
  }

  #add(key: string, setUp: PlanSetUp): number {
    const number = numberOf(this.#setUps, key);
    this.setUps[number] = setUp;
    return number;
  }

  #known(emissions: readonly string[], station: string): number[] {
    return emissions.map((what) => this.emission(what, station)).filter((number) => number !== null);
  }
}

const inRoom = (what: string, room: string): string => `${room}\n${what}`;

function numberOf(numbers: Map<string, number>, name: string): number {
  let number = numbers.get(name);
  if (number === undefined) {
    number = numbers.size;
    numbers.set(name, number);
  }
  return number;
}
