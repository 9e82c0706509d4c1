import type { JournalEvent, RouteChange } from "../journal/event.ts";
import { preparationsBefore } from "../shop/preparations-before.ts";
import type { Piece, Shop } from "../shop/shop.ts";
import { sayMoney } from "./say-money.ts";
import { saySetting } from "./say-setting.ts";
import { sayEnd } from "./say-state.ts";
import { sayClock, sayDate, sayWait } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/**
 * What an event says happened, to follow the tags it happened to; an event of no piece is a whole clause.
 *
 * @example sayEvent(hung, shop, speech) // "hung 19:04, first clear"
 */
export function sayEvent(event: JournalEvent, shop: Shop, speech: Speech): string {
  const at = sayClock(event.at, speech);
  const piece = event.tag === null ? undefined : shop.pieces.get(event.tag);
  switch (event.kind) {
    case "tagged": {
      const hung = event.hung;
      const already = hung === null ? "" : `, hanging since ${sayClock(hung.since, speech)}, ${hung.step}`;
      const due = event.due === null ? "" : `, due ${sayDate(event.due, speech)}`;
      return `tagged, ${event.name}${due}${already}`;
    }
    case "changed":
      return sayChanged(event, speech);
    case "routed":
      return sayRoute(event.change);
    case "taken":
      return `in hand ${at}, ${sayWork(event, piece)}`;
    case "left":
      return `put down half-done ${at}, ${sayWork({ ...event, colour: null, another: false }, piece)}`;
    case "hung": {
      const result = event.result === null ? "" : `: ${event.result}`;
      const place = event.place === null || event.place === "rack" ? "" : `, in the ${event.place}`;
      return `hung ${at}${event.guessed ? " as usual" : ""}, ${sayWork(event, piece)}${result}${place}`;
    }
    case "readied": {
      const ready = event.ready > speech.now ? "will be ready" : "ready";
      return `${event.setUp} ${ready} ${sayClock(event.ready, speech)} at the ${event.station}`;
    }
    case "put away":
      return `${event.station} put away ${at}`;
    case "touched":
      return `touched ${at}, ${event.found}`;
    case "moved":
      return `moved to the ${event.place} ${at}`;
    case "measured":
      return `measured ${at}, ${event.what} ${event.value} ${event.unit}`.trimEnd();
    case "mended":
      return `mended ${at}, ${event.what}, ${sayWait(event.minutes)}`;
    case "scrapped":
      return `scrapped ${at}: ${event.why}`;
    case "gone":
      return `${sayEnd(event.how)} ${at}${event.to === null ? "" : `, to ${event.to}`}`;
    case "noted":
      return `noted ${at}, "${event.text}"`;
    case "ticked":
      return `"${event.caution}" read ${at}`;
    case "amended":
      return `amended, that was ${sayClock(event.time, speech)}`;
    case "undone":
      return `act ${event.target} undone`;
    case "settled":
      return saySetting(event.setting, speech);
    case "clock":
      return `what a wrong clock wrote is set ${event.minutes < 0 ? "forward" : "back"} ${sayWait(Math.abs(event.minutes))}`;
  }
}

/** Which work a take, leave or hang was: its step, the colour, or what its late window asked for. */
function sayWork(
  event: {
    readonly step: string;
    readonly part: string;
    readonly colour: string | null;
    readonly another: boolean;
  },
  piece: Piece | undefined,
): string {
  if (event.part === "preparation") {
    const preparations = piece === undefined ? [] : preparationsBefore(piece, event.step);
    const asked = new Set(preparations.map((preparation) => preparation.do));
    return `${asked.size === 1 ? [...asked].join("") : "preparation"} for ${event.step}`;
  }
  const colour = event.colour === null ? "" : `, ${event.colour}`;
  return `${event.step}${colour}${event.another ? " (another pass)" : ""}`;
}

/** Each detail that was changed, in the order of a tag. */
function sayChanged(event: Extract<JournalEvent, { kind: "changed" }>, speech: Speech): string {
  const said: string[] = [];
  if (event.name !== undefined) said.push(`named ${event.name}`);
  if (event.scheme !== undefined) said.push(`scheme ${event.scheme.map(({ colour }) => colour).join(", ")}`);
  if (event.due !== undefined)
    said.push(event.due === null ? "not due any more" : `due ${sayDate(event.due, speech)}`);
  if (event.price !== undefined)
    said.push(event.price === null ? "no price" : `price ${sayMoney(event.price)}`);
  if (event.for !== undefined) said.push(event.for === null ? "for nobody yet" : `for ${event.for}`);
  if (event.weight !== undefined) said.push(event.weight > 1 ? "comes first" : "comes in its turn again");
  return said.join(", ");
}

function sayRoute(change: RouteChange): string {
  switch (change.do) {
    case "put":
      return `also gets ${change.name} after ${change.after}`;
    case "skip":
      return `goes without ${change.step}`;
    case "swap":
      return change.like === change.step && change.coat !== null
        ? `gets ${change.step} in ${change.coat.name}`
        : `gets ${change.like} in place of ${change.step}${change.coat === null ? "" : `, in ${change.coat.name}`}`;
  }
}
