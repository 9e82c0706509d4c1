import type { BenchNow, PreparedRow, WaitingRow } from "../plan/now-answer.ts";
import type { Instant, Minutes } from "../time/instant.ts";
import { plainText } from "./plain-text.ts";
import { NEVER_IN_THIS_AIR } from "./say-state.ts";
import { sayClock, sayWait } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/** How far a piece is, for a row: `first clear is dust-free, 31 %`; a piece without a coat tells its next step. */
export function sayStage({ state, stage, progress, step }: WaitingRow): string {
  if (state === "not begun") return plainText(`${step} not begun`);
  if (state === "in hand") return plainText(`${step} in hand`);
  if (state === "left") return plainText(`${step} half-done`);
  // A coat whose sheet names no stage, only a flash-off, is neither wet nor hard once that is over.
  const isUnnamed = stage === null || (stage === "wet" && progress >= 1);
  return isUnnamed ? "" : `${stage} ${Math.floor(progress * 100)} %`;
}

/**
 * When a waiting piece opens and shuts, with both ends where a step was begun and never said done.
 *
 * @example sayOpening(row, speech) // "opens 23:04, shuts Tue 19:04"
 * @example sayOpening(tacky, speech) // "tacky: a touch must say dry"
 */
export function sayOpening(row: WaitingRow, speech: Speech): string {
  if (row.because === "tacky") return "was tacky: a touch must say dry";
  if (row.because === "air") return NEVER_IN_THIS_AIR;
  if (row.state === "drying" && row.opens === null) return "opens by a touch alone: feel it";
  const said: string[] = [];
  if (row.opens !== null && row.state !== "shut") {
    const verb = row.opens > speech.now ? "opens" : "open since";
    said.push(`${verb} ${sayEnds(row.opens, row.otherEnd?.opens ?? null, speech)}`);
  }
  if (row.shuts !== null) {
    const verb = row.state === "shut" || row.shuts <= speech.now ? "shut" : "shuts";
    said.push(`${verb} ${sayEnds(row.shuts, row.otherEnd?.shuts ?? null, speech)}`);
  }
  return said.join(", ");
}

/** A moment, or both ends of when it can be, where a step was begun and never said done. */
function sayEnds(one: number, other: number | null, speech: Speech): string {
  if (other === null || other === one) return sayClock(one, speech);
  const [early, late] = one < other ? [one, other] : [other, one];
  return `between ${sayClock(early, speech)} and ${sayClock(late, speech)}`;
}

/**
 * What stands at a station and for how long.
 *
 * @example sayPrepared(row, speech) // "lead pot: melt lead, keeps till 21:03, 5 min to put away"
 */
export function sayPrepared(row: PreparedRow, speech: Speech): string {
  const putAway = row.putAwayMinutes > 0 ? `, ${sayWait(row.putAwayMinutes)} to put away` : "";
  return plainText(`${row.station}: ${row.setUp}, ${sayKeeping(row, speech)}${putAway}`);
}

function sayKeeping({ state, ready, until, keptByFile }: PreparedRow, speech: Speech): string {
  switch (state) {
    case "getting ready":
      return `ready ${sayClock(ready, speech)}`;
    case "ready":
      if (until === null) return "until another load";
      return sayKeepsTill(until, keptByFile, speech);
    case "kept too long":
      return until === null ? "kept too long" : `kept too long, since ${sayClock(until, speech)}`;
    case "all served":
      return "has served all it can";
  }
}

/**
 * Until when something keeps; of a cup in known air, that it is predicted.
 *
 * @example sayKeepsTill(until, 30, speech) // "keeps till 19:13 (predicted; 30 min by its file)"
 */
export function sayKeepsTill(until: Instant, keptByFile: Minutes | undefined, speech: Speech): string {
  const predicted = keptByFile === undefined ? "" : ` (predicted; ${sayWait(keptByFile)} by its file)`;
  return `keeps till ${sayClock(until, speech)}${predicted}`;
}

/**
 * The bench hours as they stand.
 *
 * @example sayBench(bench, speech) // "bench till 21:00, 2 h 18 left"
 * @example sayBench(shut, speech) // "bench shut till Tue 18:00"
 */
export function sayBench(bench: BenchNow, speech: Speech): string {
  const assumed = bench.assumedHours ? " (hours assumed: say yours)" : "";
  if (bench.closes !== null) {
    const ofIt = bench.putAway <= bench.minutesLeft ? " of it" : "";
    const putAway = bench.putAway > 0 ? `, ${sayWait(bench.putAway)}${ofIt} to put away` : "";
    return `bench till ${sayClock(bench.closes, speech)}, ${sayWait(bench.minutesLeft)} left${putAway}${assumed}`;
  }
  const opens = bench.opensNext === null ? "" : ` till ${sayClock(bench.opensNext, speech)}`;
  return `bench shut${opens}${assumed}`;
}
