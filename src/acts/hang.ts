import type { NewEvent } from "../journal/event.ts";
import { backTo } from "../shop/hook.ts";
import type { Shop } from "../shop/shop.ts";
import type { Instant } from "../time/instant.ts";
import { matchAnswer } from "./answer.ts";
import { hangTime } from "./as-usual.ts";
import { checkTime } from "./check-time.ts";
import { checkName, checkWhole, firstRefusal } from "./check-value.ts";
import { chooseWork, type Work } from "./choose-work.ts";
import type { DecideContext } from "./context.ts";
import { type Decision, decided } from "./decision.ts";
import { leaveOwnWork } from "./free-hands.ts";
import { isRefused, type Refused } from "./refuse.ts";
import type { ActOf } from "./request.ts";
import { setUpsFor } from "./set-ups-for.ts";
import { matchCautions, tickedEvents } from "./tick.ts";

/** A flash-off longer than this is a slip of the keys. */
const LONGEST_FLASH_OFF = 24 * 60;

type Hang = ActOf<"hang">;

/**
 * Says that hands-on work is done: every wait counts from here. What was not taken first may be hung all the same: its
 * hands-on time is then not known. Nothing is held back for safety, for what is said has been done already.
 *
 * A step with a result is hung with its answer, one of a scheme with its colour and flash-off as sprayed.
 */
export function decideHang(request: Hang, shop: Shop, context: DecideContext): Decision {
  const unfit = firstRefusal([
    request.flashOff === null ? null : checkWhole("flash-off", request.flashOff, 0, LONGEST_FLASH_OFF),
    request.place === null ? null : checkName("place", request.place),
  ]);
  if (unfit) return unfit;
  const asked = request.asUsual ? context.now : request.at;
  const works = chooseWork(request, "hang", asked, shop, context);
  if (isRefused(works)) return works;
  const hung: NewEvent[] = [];
  for (const work of works) {
    const time = request.asUsual ? hangTime(work, context) : { at: asked };
    if (isRefused(time)) return time;
    const event = hangOne(request, work, time.at, shop);
    if (isRefused(event)) return event;
    hung.push(event);
  }
  const at = Math.max(...hung.map((event) => event.at));
  const left = leaveOwnWork(works, at, shop, context);
  if (isRefused(left)) return left;
  const setUps = setUpsFor(
    works.filter(({ begun }) => !begun),
    shop,
    at,
  );
  if (isRefused(setUps)) return setUps;
  const ticked = matchCautions(request.ticked, shop, context.rules);
  if (isRefused(ticked)) return ticked;
  const stations = works.flatMap(({ step }) => (step.setUp ? step.station : []));
  return decided([...left, ...setUps.readied, ...tickedEvents(ticked, at), ...hung], shop, stations);
}

/** The event that hangs one piece, or why its answer or its time is not fit. */
function hangOne(request: Hang, work: Work, asked: Instant, shop: Shop): NewEvent | Refused {
  const { piece, step, pass, part, colour, another, overrides } = work;
  const time = checkTime(asked, [{ piece, concern: { step: step.name } }], shop);
  if (isRefused(time)) return time;
  const result = matchAnswer(request.result, work);
  if (isRefused(result)) return result;
  return {
    kind: "hung",
    at: time.at,
    tag: piece.tag,
    station: step.station,
    step: step.name,
    pass,
    part,
    place: request.place?.trim() ?? (part === "step" ? (step.place ?? backTo(piece, step, time.at)) : null),
    colour,
    another,
    flashOff: part === "step" ? request.flashOff : null,
    result: result.answer,
    guessed: request.asUsual,
    overrides,
  };
}
