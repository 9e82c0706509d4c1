import type { NewEvent, RouteChange } from "../journal/event.ts";
import { changeRoute } from "../shop/route.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import { begunAt, firstBegunAfter } from "./begun-step.ts";
import { checkTime } from "./check-time.ts";
import { checkName, checkText, checkThat } from "./check-value.ts";
import { type Decision, decided } from "./decision.ts";
import { findPiecesOut } from "./find-pieces.ts";
import { matchStep, matchStepAmong } from "./match-step.ts";
import { isRefused, type Refused, refuse } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/**
 * Puts a step into the route of these pieces alone, skips or swaps one: never one that is begun.
 *
 * Steps are checked as the route stands now: what is put after a step comes before all that waited for it.
 */
export function decideRoute(request: ActOf<"route">, shop: Shop): Decision {
  const pieces = findPiecesOut(request.tags, shop);
  if (isRefused(pieces)) return pieces;
  const unfit = request.why === null ? null : checkText("why", request.why);
  if (unfit) return unfit;
  const why = request.why?.trim() ?? null;
  const events: NewEvent[] = [];
  for (const piece of pieces) {
    const change = fitChange(piece, request.change);
    if (isRefused(change)) return change;
    const time = checkTime(request.at, [{ piece, concern: "piece" }], shop);
    if (isRefused(time)) return time;
    events.push({ kind: "routed", at: time.at, tag: piece.tag, station: null, change, why });
  }
  return decided(events, shop);
}

/** The change with its names made whole, or why it cannot be made to this piece. */
function fitChange(piece: Piece, asked: RouteChange): RouteChange | Refused {
  const change = matchNames(piece, asked);
  if (isRefused(change)) return change;
  const begun = refuseBegun(piece, change);
  if (begun) return begun;
  if (change.do === "swap" && change.like === change.step && change.coat === null) {
    return refuse({ code: "nothing changes", what: `${change.step} works like itself` });
  }
  if (change.do === "skip" && piece.route.length === 1) {
    return refuse({
      code: "unfit value",
      what: "step",
      value: change.step,
      expected: "not the only step left",
    });
  }
  const routed = changeRoute(piece, piece.definition, change);
  if (typeof routed === "string") {
    return refuse({
      code: "unfit value",
      what: "route",
      value: change.do,
      expected: `a change that fits: ${routed}`,
    });
  }
  return change;
}

function matchNames(piece: Piece, change: RouteChange): RouteChange | Refused {
  const place = matchStep(piece, change.do === "put" ? change.after : change.step);
  if (isRefused(place)) return place;
  if (change.do === "skip") return { ...change, step: place.name };
  // A step that this piece skips may still be the pattern of another.
  const skipped = piece.definition.steps.filter(({ name }) =>
    piece.route.every((step) => step.name !== name),
  );
  const like = matchStepAmong(piece.tag, [...piece.route, ...skipped], change.like);
  if (isRefused(like)) return like;
  if (change.do === "swap") return { ...change, step: place.name, like: like.name };
  const name = change.name.trim();
  const taken = piece.route.some((step) => step.name.toLowerCase() === name.toLowerCase());
  const unfit = checkName("name", name) ?? checkThat(!taken, "name", name, "one that no step of it has");
  return unfit ?? { ...change, name, after: place.name, like: like.name };
}

/** A step begun stays as it is, and nothing is put before one. */
function refuseBegun(piece: Piece, change: RouteChange): Refused | null {
  const { tag } = piece;
  if (change.do === "put") {
    const begun = firstBegunAfter(piece, change.after);
    return begun && refuse({ code: "already done", tag, ...begun });
  }
  const at = begunAt(piece, change.step);
  return at === null ? null : refuse({ code: "already done", tag, step: change.step, at });
}
