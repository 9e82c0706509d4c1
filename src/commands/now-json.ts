import type { HandRow, HeldRow, NowAnswer, PreparedRow, WaitingRow, WorkRow } from "../plan/now-answer.ts";
import type { ColdAhead } from "../shop/cold-ahead.ts";
import type { Instant } from "../time/instant.ts";
import { isoMoment } from "../words/iso-moment.ts";
import { sayHold } from "../words/say-hold.ts";
import { sayPreparation } from "../words/say-state.ts";
import { sayWarning } from "../words/say-warning.ts";
import { sayIfLeft, sayWhy } from "../words/say-work.ts";
import type { Speech } from "../words/speech.ts";

/**
 * The answer of `now` for other programs: names as on the screen, moments in ISO 8601 with the shop's offset,
 * durations in minutes.
 */
export function nowJson(answer: NowAnswer, speech: Speech): object {
  const moment = momentsOf(speech);
  const { bench } = answer;
  return {
    at: moment(answer.at),
    basis: answer.basis,
    plan: answer.plan.is,
    inHand: answer.inHand.map((row) => handJson(row, speech)),
    work: answer.work.map((row) => workJson(row, speech)),
    waiting: answer.waiting.map((row) => waitingJson(row, speech)),
    held: answer.held.map((row) => heldJson(row, speech)),
    prepared: answer.prepared.map((row) => preparedJson(row, speech)),
    bench: {
      closes: moment(bench.closes),
      minutesLeft: bench.minutesLeft,
      opensNext: moment(bench.opensNext),
    },
    air: answer.air && {
      celsius: answer.air.celsius,
      humidity: answer.air.humidityPercent,
      rests: answer.air.rests,
    },
    cold: answer.cold.map((cold) => coldJson(cold, speech)),
  };
}

/** A coat that the cold ahead holds up: also those of `air`. */
export function coldJson({ tag, coldest, hard }: ColdAhead, speech: Speech): object {
  const moment = momentsOf(speech);
  return { tag, celsius: coldest.celsius, at: moment(coldest.at), hard: moment(hard) };
}

/** One waiting piece: also the rows of `rack`. */
export function waitingJson(row: WaitingRow, speech: Speech): object {
  const moment = momentsOf(speech);
  return {
    tag: row.tag,
    name: row.name,
    step: row.step,
    state: row.state,
    stage: row.stage,
    progress: row.progress,
    since: moment(row.since),
    opens: moment(row.opens),
    shuts: moment(row.shuts),
    hard: moment(row.hard),
    place: row.place,
  };
}

/** One station with what stands there. */
export function preparedJson(row: PreparedRow, speech: Speech): object {
  const moment = momentsOf(speech);
  const { station, setUp, state, until, keptByFile } = row;
  return {
    station,
    setUp,
    state,
    until: moment(until),
    ...(keptByFile === undefined ? {} : { predicted: true, keptByFile }),
  };
}

function workJson(row: WorkRow, speech: Speech): object {
  const moment = momentsOf(speech);
  const { preparation, finishLeft, others } = row.ifLeft;
  return {
    tags: row.tags,
    name: row.name,
    step: row.step,
    part: row.part,
    station: row.station,
    colour: row.colour,
    minutes: row.minutes,
    setUp: row.setUp === null ? null : { what: row.setUp.what, minutes: row.setUp.minutes },
    opens: moment(row.opens),
    shuts: moment(row.shuts),
    beginBy: moment(row.beginBy),
    why: sayWhy(row.why, speech),
    ifLeft: {
      preparation: preparation === null ? null : sayPreparation(preparation),
      finish: moment(finishLeft),
      text: sayIfLeft(row.ifLeft, row, speech),
    },
    othersIfLeft:
      others === null
        ? null
        : {
            preparation: others.amends,
            promisesBroken: others.broken,
            delay: others.delay,
            later: others.later,
          },
    warning: row.warning === null ? null : sayWarning(row.warning, speech),
  };
}

function handJson(row: HandRow, speech: Speech): object {
  const { tags, step, part, station, left, usualMinutes } = row;
  return {
    tags,
    step,
    part,
    station,
    since: momentsOf(speech)(row.since),
    left,
    forgotten: row.forgotten !== null,
    usualMinutes,
  };
}

function heldJson(row: HeldRow, speech: Speech): object {
  return {
    tags: row.tags,
    name: row.name,
    step: row.step,
    preparation: row.preparation?.do ?? null,
    because: sayHold(row.because, null, speech),
    also: (row.also ?? []).map((hold) => ({
      because: sayHold(hold, null, speech),
      until: momentsOf(speech)(hold.until),
    })),
    until: momentsOf(speech)(row.until),
  };
}

/** A moment as ISO 8601 in the shop's zone; null stays null. */
function momentsOf(speech: Speech): (at: Instant | null) => string | null {
  return (at) => (at === null ? null : isoMoment(at, speech.zone));
}
