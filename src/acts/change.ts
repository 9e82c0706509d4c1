import type { EventBody, NewEvent } from "../journal/event.ts";
import { handsOf } from "../shop/hands.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import { checkDetails } from "./check-details.ts";
import { checkTime } from "./check-time.ts";
import { checkName, checkThat, firstRefusal } from "./check-value.ts";
import { type Decision, decided } from "./decision.ts";
import { findPieces, refuseEnded } from "./find-pieces.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

type Changes = Omit<Extract<EventBody, { kind: "changed" }>, "kind">;

const HIGHEST_WEIGHT = 1_000;

/**
 * Changes what is said of pieces: name, scheme, due date, price, buyer, weight. Of an ended one only the price.
 *
 * @returns events for those pieces alone that it changes; refused when it changes none
 */
export function decideChange(request: ActOf<"change">, shop: Shop): Decision {
  const pieces = findPieces(request.tags, shop);
  if (isRefused(pieces)) return pieces;
  const changes = saidChanges(request);
  const unfit = firstRefusal([
    changes.name === undefined ? null : checkName("name", changes.name),
    ...checkDetails(changes),
    changes.weight === undefined ? null : checkWeight(changes.weight),
  ]);
  if (unfit) return unfit;
  const { price: _, ...beyondPrice } = changes;
  const ended = Object.keys(beyondPrice).length > 0 ? refuseEnded(pieces) : null;
  if (ended) return ended;
  const events: NewEvent[] = [];
  for (const piece of pieces) {
    const painting = changes.scheme ? refusePainting(piece) : null;
    if (painting) return painting;
    if (!isNews(piece, changes)) continue;
    const concern = changes.scheme ? "piece" : "nothing";
    const time = checkTime(request.at, [{ piece, concern }], shop);
    if (isRefused(time)) return time;
    events.push({ kind: "changed", at: time.at, tag: piece.tag, station: null, ...changes });
  }
  if (events.length === 0) return refuse({ code: "nothing changes", what: sayChanges(changes) });
  return decided(events, shop);
}

/** Only what the request names: a detail left out stays as it is. */
function saidChanges({ act: _, at: __, tags: ___, name, ...others }: ActOf<"change">): Changes {
  const said = Object.entries(others).filter(([, value]) => value !== undefined);
  return { ...Object.fromEntries(said), ...(name === undefined ? {} : { name: name.trim() }) };
}

function checkWeight(weight: number): Refused | null {
  const fit = weight > 0 && weight <= HIGHEST_WEIGHT;
  return checkThat(fit, "weight", weight, `above 0, at most ${HIGHEST_WEIGHT}; 1 is usual`);
}

/** A scheme is not changed under the brush: the pass in hand would lose its place in it. */
function refusePainting(piece: Piece): Refused | null {
  const { running, lying } = handsOf(piece);
  const painted = [running, ...lying].find((hand) =>
    piece.route.some(({ name, passes }) => name === hand?.step && passes === "scheme"),
  );
  return painted
    ? refuse({ code: "already in hand", tag: piece.tag, step: painted.step, since: painted.since })
    : null;
}

function isNews(piece: Piece, changes: Changes): boolean {
  return Object.entries(changes).some(
    ([key, value]) => JSON.stringify(value) !== JSON.stringify(piece[key as keyof Changes]),
  );
}

function sayChanges(changes: Changes): string {
  const said = Object.keys(changes).map((key) => (key === "weight" ? "which comes first" : key));
  return said.join(", ") || "nothing said";
}
