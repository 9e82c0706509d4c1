import type { Piece, Shop } from "../shop/shop.ts";
import { checkTime } from "./check-time.ts";
import { checkName, checkThat, firstRefusal } from "./check-value.ts";
import { type Decision, decided } from "./decision.ts";
import { findPieces } from "./find-pieces.ts";
import { matchName } from "./match-name.ts";
import { isRefused, type Refused } from "./refuse.ts";
import type { ActOf } from "./request.ts";

/** Green sapwood holds up to 249 % of its dry weight in water (Wood Handbook FPL-GTR-282, table 4-1, from memory). */
const MOST_PERCENT = 300;

/**
 * Keeps what was measured on pieces: grams, wood moisture, runs left.
 *
 * `measure 3 moisture 8 %` is what `needs: { wood moisture: at most 10 % }` asks for.
 */
export function decideMeasure(request: ActOf<"measure">, shop: Shop): Decision {
  const pieces = findPieces(request.tags, shop);
  if (isRefused(pieces)) return pieces;
  const { value } = request;
  const unfit = firstRefusal([
    checkName("what was measured", request.what),
    checkThat(Number.isFinite(value), "measured value", value, "a number"),
    checkName("unit", request.unit),
    checkRange(value, request.unit.trim()),
  ]);
  if (unfit) return unfit;
  const time = checkTime(
    request.at,
    pieces.map((piece) => ({ piece, concern: "nothing" })),
    shop,
  );
  if (isRefused(time)) return time;
  const unit = request.unit.trim();
  return decided(
    pieces.map((piece) => ({
      kind: "measured",
      at: time.at,
      tag: piece.tag,
      station: null,
      what: nameMeasurement(piece, request.what),
      value,
      unit,
    })),
    shop,
  );
}

/** A minus or a digit too many is a slip of the keys, and could open the lead pot to damp wood. */
function checkRange(value: number, unit: string): Refused | null {
  if (unit === "%") {
    return checkThat(
      value >= 0 && value <= MOST_PERCENT,
      "percentage",
      value,
      `a number from 0 to ${MOST_PERCENT}`,
    );
  }
  return checkThat(value >= 0 || /^°/.test(unit), "measured value", value, "a number from 0 on");
}

/** The name by which a step of the piece asks for it, if one does: "moisture" is its `wood moisture`. */
function nameMeasurement(piece: Piece, said: string): string {
  const asked = new Set(piece.route.flatMap(({ needs }) => needs.map(({ what }) => what)));
  const match = matchName(said, [...asked]);
  return "found" in match ? match.found : said.trim();
}
