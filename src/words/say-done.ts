import type { JournalEvent } from "../journal/event.ts";
import { workedMinutes } from "../shop/forgotten-minutes.ts";
import { likelyHard } from "../shop/likely-hard.ts";
import { lastHang, workOf } from "../shop/passes.ts";
import { setUpState } from "../shop/set-up-state.ts";
import type { ActRecord, Piece, Shop } from "../shop/shop.ts";
import { findStep } from "../shop/steps.ts";
import { plainText } from "./plain-text.ts";
import { sayEvent } from "./say-event.ts";
import { sayLikely } from "./say-how-sure.ts";
import { capital, sayTags } from "./say-list.ts";
import { sayNext } from "./say-next.ts";
import { sayClock } from "./say-time.ts";
import { sayKeepsTill } from "./say-waiting.ts";
import type { Speech } from "./speech.ts";

/**
 * What an act did and what comes of it, a sentence or two for each group of pieces that fared alike.
 *
 * @param before the shop before the act: names what an undo took back
 * @example sayDone(events, shop, speech) // ["14 hung 19:04, first clear. Opens 23:04, shuts Tue 19:04."]
 */
export function sayDone(
  events: readonly JournalEvent[],
  shop: Shop,
  speech: Speech,
  before?: Shop,
): string[] {
  const undone = events.flatMap((event) => (event.kind === "undone" ? [event.target] : []));
  if (undone.length > 0)
    return [...new Set(undone)].map((target) => sayUndone(target, before ?? shop, speech));
  return sayGrouped(telling(events), (event) => {
    const said = `${sayEvent(event, shop, speech)}.`;
    const next = sayFollowing(event, shop, speech);
    return next === "" ? said : `${said} ${next}`;
  });
}

/**
 * One act that stands, named for the list of those that can be undone.
 *
 * @example sayAct(record, shop, speech) // "14 hung 19:04, first clear"
 */
export function sayAct(record: ActRecord, shop: Shop, speech: Speech): string {
  return sayGrouped(telling(record.events), (event) => sayEvent(event, shop, speech)).join("; ");
}

/**
 * The events that tell an act. An amended act is written once for its station too: its pieces have told it. A clock set
 * right for a span is written as two corrections: the first has told it.
 */
function telling(events: readonly JournalEvent[]): readonly JournalEvent[] {
  const pieces = events.some(({ tag }) => tag !== null);
  const clock = events.find(({ kind }) => kind === "clock");
  return events.filter(
    (event) =>
      !(event.kind === "amended" && event.tag === null && pieces) &&
      !(event.kind === "clock" && event !== clock),
  );
}

/** What an undone act had been; an older act than those at hand goes by its number. */
function sayUndone(target: number, before: Shop, speech: Speech): string {
  const record = before.acts.find(({ act }) => act === target);
  return record === undefined ? `Act ${target} is undone.` : `Undone: ${sayAct(record, before, speech)}.`;
}

/** Pieces of which the same is said share a line. */
function sayGrouped(events: readonly JournalEvent[], say: (event: JournalEvent) => string): string[] {
  const groups = new Map<string, number[]>();
  for (const event of events.toSorted((a, b) => rankOf(a) - rankOf(b))) {
    const said = say(event);
    const tags = groups.get(said) ?? [];
    if (event.tag !== null) tags.push(event.tag);
    groups.set(said, tags);
  }
  return [...groups].map(([said, tags]) =>
    plainText(tags.length === 0 ? capital(said) : `${sayTags(tags)} ${said}`),
  );
}

/** What an act was for comes first, then what stood ready for it, then what was read. */
function rankOf({ kind }: JournalEvent): number {
  if (kind === "ticked") return 2;
  return kind === "readied" ? 1 : 0;
}

/** Events that change what comes next for their piece. */
const TURNING = new Set(["tagged", "routed", "left", "hung", "touched", "mended", "amended"]);

/** Events after which it is told how sure the predicted time of the coat is. */
const DRYING = new Set(["hung", "touched", "moved", "amended"]);

/** What comes next for the piece of an event; nothing where the event changes nothing about that. */
function sayFollowing(event: JournalEvent, shop: Shop, speech: Speech): string {
  if (event.kind === "readied") return sayCup(event, shop, speech);
  const piece = event.tag === null ? undefined : shop.pieces.get(event.tag);
  if (piece === undefined) return "";
  const hung = event.kind === "hung" && event.part === "step" ? event.step : null;
  const next = TURNING.has(event.kind) ? sayNext(piece, hung, shop, speech) : "";
  const hard = DRYING.has(event.kind) ? likelyHard(piece, shop, speech.now) : null;
  const sure = hard === null ? "" : `${capital(sayLikely(hard, speech))}.`;
  return [next, sure, sayLongInHand(event, piece, speech)].filter((said) => said !== "").join(" ");
}

/** That a step hung long after it was taken may really have been hung back then: its waits would count from there. */
function sayLongInHand(event: JournalEvent, piece: Piece, speech: Speech): string {
  if (event.kind !== "hung" || event.part !== "step" || event.guessed) return "";
  const hang = lastHang(workOf(piece, event.step));
  const isLong = hang !== null && workedMinutes(findStep(piece, event.step), hang.minutes) !== hang.minutes;
  if (!isLong || hang.takenAt === null) return "";
  const since = sayClock(hang.takenAt, speech);
  return `It was in hand since ${since}: if it was hung then, dryline amend TAG TIME sets it right.`;
}

/** How long a cup just mixed keeps in this air, where that is not as its file says. */
function sayCup(event: Extract<JournalEvent, { kind: "readied" }>, shop: Shop, speech: Speech): string {
  const setUp = shop.stations.get(event.station ?? "")?.setUp;
  if (setUp?.act !== event.act || setUp.keptByFile === undefined) return "";
  const { until } = setUpState(setUp, setUp.ready);
  return until === null ? "" : `${capital(sayKeepsTill(until, setUp.keptByFile, speech))}.`;
}
