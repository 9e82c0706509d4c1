import { ShopAir } from "../cure/hanging-air.ts";
import type { JournalEvent, Seq, Tag } from "../journal/event.ts";
import type { Reading } from "../journal/journal.ts";
import type { Instant } from "../time/instant.ts";
import { actRecords } from "./act-records.ts";
import { foldPieceEvent } from "./fold-piece.ts";
import { foldSetting, NOTHING_SETTLED } from "./fold-settings.ts";
import { clearStation, emptyStation, readyStation, workAtStation } from "./fold-station.ts";
import { liveEvents } from "./live-events.ts";
import { workOf } from "./passes.ts";
import type { Misfit, PieceDraft } from "./piece-draft.ts";
import type { Piece, Shop, StationState } from "./shop.ts";
import { findStep } from "./steps.ts";
import { tagPiece } from "./tag-piece.ts";

/** The shop while it is being folded. */
interface Draft {
  readonly reading: Reading;
  readonly tagged: ReadonlySet<Tag>;
  readonly pieces: Map<Tag, PieceDraft>;
  readonly stations: Map<string, StationState>;
  readonly ticks: Shop["ticks"][number][];
  readonly setAside: Shop["setAside"][number][];
  settings: Shop["settings"];
}

/**
 * The shop as a reading of the journal leaves it: facts alone, the same from the same events however they were read.
 * Never throws: an event that fits nothing is set aside with a sentence.
 *
 * @param until facts of pieces and stations dated after it are left out; settings are taken as known now
 */
export function foldShop(reading: Reading, until: Instant = Number.POSITIVE_INFINITY): Shop {
  const live = liveEvents(reading.events).filter(({ at, kind }) => at <= until || kind === "settled");
  const draft: Draft = {
    reading,
    tagged: new Set(
      reading.events.flatMap(({ kind, tag }) => (kind === "tagged" && tag !== null ? [tag] : [])),
    ),
    pieces: new Map(),
    stations: new Map(),
    ticks: [],
    setAside: [...reading.setAside],
    settings: NOTHING_SETTLED,
  };
  for (const event of live) {
    const misfit = event.tag === null ? foldShopEvent(draft, event) : foldTagged(draft, event, event.tag);
    if (misfit !== null) draft.setAside.push({ seq: event.seq, why: sayMisfit(event, misfit) });
  }
  stampNewest(draft);
  return {
    newest: reading.newest,
    newestRecorded: reading.newestRecorded,
    nextTag: reading.nextTag,
    pieces: draft.pieces,
    stations: draft.stations,
    settings: draft.settings,
    air: new ShopAir(new Map()),
    ticks: draft.ticks,
    acts: actRecords(live),
    setAside: draft.setAside,
  };
}

/** Folds an event of a piece. @returns why it does not fit, or null */
function foldTagged(draft: Draft, event: JournalEvent, tag: Tag): Misfit {
  const before = draft.pieces.get(tag);
  // A reading may hold a late event of an old piece without the piece: that is no misfit.
  if (before === undefined && !draft.tagged.has(tag) && tag < draft.reading.nextTag) return null;
  if (before === undefined) return begin(draft, event, tag);
  const misfit = foldPieceEvent(before, event);
  if (misfit === null && (event.kind === "hung" || event.kind === "left")) tellStation(draft, event, before);
  return misfit;
}

function begin(draft: Draft, event: JournalEvent, tag: Tag): Misfit {
  if (event.kind !== "tagged") return `there is no ${tag}`;
  const { definitions } = draft.reading;
  const definition = Object.hasOwn(definitions, event.process) ? definitions[event.process] : undefined;
  if (definition === undefined) return "its process is not in the journal";
  const piece = tagPiece(event, tag, definition);
  if (typeof piece === "string") return piece;
  draft.pieces.set(tag, piece);
  return null;
}

/** Tells the station of work that ended there. */
function tellStation(
  draft: Draft,
  event: Extract<JournalEvent, { kind: "hung" | "left" }>,
  piece: Piece,
): void {
  const step = findStep(piece, event.step);
  if (step === undefined) return;
  const station = event.station ?? step.station;
  const colour = workOf(piece, step.name).hangs.at(-1)?.colour ?? null;
  draft.stations.set(station, workAtStation(stationOf(draft, station), step, event, colour));
}

/** Folds an event off the pieces. @returns why it does not fit, or null */
function foldShopEvent(draft: Draft, event: JournalEvent): Misfit {
  switch (event.kind) {
    case "settled":
      draft.settings = foldSetting(draft.settings, event.setting, event.at);
      return null;
    case "ticked":
      draft.ticks.push({ caution: event.caution, at: event.at });
      return null;
    case "readied":
    case "put away": {
      if (event.station === null) return "it names no station";
      const state = stationOf(draft, event.station);
      const after = event.kind === "readied" ? readyStation(state, event) : clearStation(state, event);
      if (typeof after === "string") return after;
      draft.stations.set(event.station, after);
      return null;
    }
    case "noted":
    case "amended":
    case "undone":
    case "clock":
      return null;
    default:
      return "it names no tag";
  }
}

function stationOf(draft: Draft, name: string): StationState {
  return draft.stations.get(name) ?? emptyStation(name);
}

/** Gives pieces and stations the newest event of theirs, whether it stands or not: what an append is held against. */
function stampNewest({ reading, pieces, stations, settings }: Draft): void {
  const ofTag = new Map<Tag, Seq>();
  const ofStation = new Map<string, Seq>();
  for (const { seq, tag, station } of [...reading.events, ...reading.setAside]) {
    if (tag !== null) ofTag.set(tag, Math.max(seq, ofTag.get(tag) ?? 0));
    if (station !== null) ofStation.set(station, Math.max(seq, ofStation.get(station) ?? 0));
  }
  const pace = { factors: new Map<string, number>(), touchesCount: settings.touchesCount };
  for (const piece of pieces.values()) piece.pace = pace;
  for (const piece of pieces.values()) piece.lastSeq = ofTag.get(piece.tag) ?? piece.lastSeq;
  for (const [name, lastSeq] of ofStation) {
    stations.set(name, { ...(stations.get(name) ?? emptyStation(name)), lastSeq });
  }
}

/** `12 (hung of 14) fits nothing: "seal" is done` */
function sayMisfit({ seq, kind, tag }: JournalEvent, why: string): string {
  return `${seq} (${kind}${tag === null ? "" : ` of ${tag}`}) fits nothing: ${why}`;
}
