import type { ActRequest } from "../acts/request.ts";
import type { JournalEvent, Tag } from "../journal/event.ts";
import { hoursOf } from "../shop/settings-at.ts";
import type { Shop } from "../shop/shop.ts";
import { stepStates } from "../shop/step-state.ts";
import { isoMoment } from "../words/iso-moment.ts";
import { sayCaution } from "../words/say-caution.ts";
import { sayDone } from "../words/say-done.ts";
import { sayReckoned } from "../words/say-reckoned.ts";
import type { Speech } from "../words/speech.ts";
import type { Outcome } from "../workshop/workshop.ts";
import type { Bench, Opened } from "./bench.ts";
import type { Answer } from "./command.ts";
import type { CommandWords } from "./command-words.ts";

/** An act that was done, for commands that have more to say of it. */
export type Done = Extract<Outcome, { done: number }>;

/** What a command adds to the answer of its act. */
export type Adding = (done: Done, opened: Opened) => Promise<readonly string[]>;

/**
 * Does one act and says what came of it, or why not. Nothing is done while any word was not understood.
 *
 * @param adding further lines, once it is done
 */
export async function perform(
  words: CommandWords,
  bench: Bench,
  request: ActRequest,
  adding: Adding = async () => [],
): Promise<Answer> {
  words.nothingMore();
  if (words.problems.length > 0) return { problems: words.problems };
  const opened = await bench.open();
  const before = request.act === "undo" ? await opened.workshop.shop() : undefined;
  const outcome = await performReading(request, bench, opened);
  if ("refusal" in outcome) return withHelp(outcome.refusal);
  const said = sayDone(outcome.events, outcome.shop, opened.speech, before);
  const added = await adding(outcome, opened);
  return { text: [...said, ...added], json: doneJson(outcome, [...said, ...added], opened.speech) };
}

/** Does the act; where a caution is unread and a maker can be asked, shows it whole and ticks it on a yes. */
async function performReading(
  request: ActRequest,
  bench: Bench,
  { workshop, speech }: Opened,
): Promise<Outcome> {
  const outcome = await workshop.perform(request);
  if (!("refusal" in outcome) || outcome.refusal.code !== "read the caution") return outcome;
  if (!bench.mayAsk || !("ticked" in request)) return outcome;
  const { cautions } = outcome.refusal;
  const rules = await workshop.rules();
  for (const name of cautions) {
    const caution = rules.cautions[name];
    const reckoned = sayReckoned(name, await workshop.shop(), speech);
    if (caution !== undefined) bench.tell([...sayCaution(caution, reckoned), ""]);
    if (!(await bench.agrees(`Read "${name}"? y to tick it:`))) return outcome;
  }
  return performReading({ ...request, ticked: [...request.ticked, ...cautions] }, bench, await bench.open());
}

/** Adds how to say it on a command line, where the refusal can be met by words of the same line. */
function withHelp(refusal: Extract<Outcome, { refusal: unknown }>["refusal"]): Answer {
  switch (refusal.code) {
    case "read the caution": {
      const ticks = refusal.cautions.map((name) => `--ticked "${name}"`).join(" ");
      return { refusal, help: `"dryline help '${refusal.cautions[0]}'" shows it, ${ticks} ticks it` };
    }
    case "too early":
    case "too late":
    case "held":
      return { refusal, help: '--anyway "why"' };
    default:
      return { refusal };
  }
}

/** The act and its pieces for other programs: what each piece goes on with, and when. */
function doneJson({ done, events, shop }: Done, said: readonly string[], speech: Speech): object {
  const tags = [...new Set(events.flatMap(({ tag }: JournalEvent) => (tag === null ? [] : [tag])))];
  return { act: done, done: said, pieces: tags.flatMap((tag) => pieceJson(tag, shop, speech)) };
}

/** What a piece can go on with and when; steps that are done or wait for others are left out. */
function pieceJson(tag: Tag, shop: Shop, speech: Speech): readonly object[] {
  const piece = shop.pieces.get(tag);
  if (piece === undefined) return [];
  const at = { now: speech.now, zone: speech.zone, hours: hoursOf(shop.settings) };
  const moment = (instant: number | null) => (instant === null ? null : isoMoment(instant, speech.zone));
  const next = [...stepStates(piece, at)]
    .filter(([, { is }]) => is !== "blocked" && is !== "done" && is !== "ended")
    .map(([step, state]) => ({
      step,
      state: state.is,
      opens: state.is === "drying" ? moment(state.opens) : null,
      shuts: "shuts" in state ? moment(state.shuts) : null,
    }));
  return [{ tag, name: piece.name, ended: piece.end?.how ?? null, next }];
}
