import { NO_PLACE, type ShopAir } from "../cure/hanging-air.ts";
import { cupEnd } from "../cure/pot-life.ts";
import type { Coat } from "../process/coat.ts";
import { type Instant, MINUTE } from "../time/instant.ts";
import { setUpWords } from "./set-up-words.ts";
import type { Piece, Shop, StandingSetUp, StationState } from "./shop.ts";

/**
 * The stations with their cups as they keep in the shop's air since they were mixed, instead of as their files say:
 * warmth makes them shorter. Cups of which no piece out says what coat is in them stay as they are.
 */
export function cupsInAir(
  stations: Shop["stations"],
  pieces: ReadonlyMap<number, Piece>,
  air: ShopAir,
): Shop["stations"] {
  if (![...stations.values()].some(({ setUp }) => setUp?.keeps.way === "mix")) return stations;
  return new Map([...stations].map(([name, state]) => [name, cupInAir(state, pieces, air)]));
}

function cupInAir(state: StationState, pieces: ReadonlyMap<number, Piece>, air: ShopAir): StationState {
  const { setUp, station } = state;
  if (setUp === null || setUp.keeps.way !== "mix") return state;
  const minutes = setUp.keptByFile ?? setUp.keeps.minutes;
  const known = air.at(NO_PLACE, setUp.ready) !== null;
  const ends = known
    ? coatsOf(station, setUp, pieces).map((coat) => cupEnd(coat, minutes, setUp.ready, air))
    : [];
  const until = ends.reduce<Instant | null>(
    (first, end) => (first === null ? end : Math.min(first, end)),
    null,
  );
  const { keptByFile: _, ...plain } = setUp;
  if (until === null) return { ...state, setUp: { ...plain, keeps: { ...setUp.keeps, minutes } } };
  const keeps = { ...setUp.keeps, minutes: Math.floor((until - setUp.ready) / MINUTE) };
  return { ...state, setUp: { ...plain, keeps, keptByFile: minutes } };
}

/** The coats that pieces out are to have from a set-up at a station: one, unless two processes call theirs alike. */
function coatsOf(
  station: string,
  { what }: StandingSetUp,
  pieces: ReadonlyMap<number, Piece>,
): readonly Coat[] {
  const coats = new Map<string, Coat>();
  for (const { route, coats: known, scheme } of pieces.values()) {
    for (const step of route) {
      if (step.station !== station || step.setUp?.keeps.way !== "mix" || step.coat === null) continue;
      const coat = known[step.coat];
      const colours = [null, ...scheme.map(({ colour }) => colour)];
      const { setUp } = step;
      if (coat !== undefined && colours.some((colour) => setUpWords(setUp, colour) === what))
        coats.set(coat.name, coat);
    }
  }
  return [...coats.values()];
}
