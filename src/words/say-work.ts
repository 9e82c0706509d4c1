import type { HandRow, HeldRow, IfLeft, LeftOthers, Why, WorkRow } from "../plan/now-answer.ts";
import type { Preparation } from "../process/coat.ts";
import { MINUTE, type Minutes } from "../time/instant.ts";
import { plainText } from "./plain-text.ts";
import { rowTags, sayTags } from "./say-list.ts";
import { sayPreparation } from "./say-state.ts";
import { sayClock, sayWait } from "./say-time.ts";
import type { Speech } from "./speech.ts";

/** One row of work as its cells; command and dashboard lay them out each in their own way. */
export interface WorkWords {
  /** `13 perch walker`, `16-18`, `a new one` */
  readonly who: string;
  /** `last clear`, `scuff, then first clear`, `base colours, ochre` */
  readonly what: string;
  /** `8 min + melt lead 20 min`, `18 min, melt lead stands ready` */
  readonly effort: string;
  /** `begin by 19:34`, `any time` */
  readonly by: string;
  /** Nothing where leaving it costs nothing. */
  readonly ifLeft: string;
}

/** A row of the work for now, as its cells. */
export function sayWorkRow(row: WorkRow, speech: Speech): WorkWords {
  return {
    who: sayWho(row),
    what: sayWhat(row),
    effort: sayEffort(row),
    by: row.beginBy === null ? "any time" : `begin by ${sayClock(row.beginBy, speech)}`,
    // Asked for of the marked row alone on a screen: found out only then.
    get ifLeft() {
      return sayIfLeft(row.ifLeft, row, speech);
    },
  };
}

/** Whose work a row is. `14 smelt walker`, `1 2`, `a new one` */
export function sayWho({ tags, name }: Pick<WorkRow | HeldRow, "tags" | "name">): string {
  if (tags.length === 0) return "a new one";
  return plainText(name === null ? rowTags(tags) : `${rowTags(tags)} ${name}`);
}

/** Hands-on and the set-up that comes first, or that it stands ready. */
export function sayEffort({ minutes, setUp }: Pick<WorkRow | HeldRow, "minutes" | "setUp">): string {
  const worked = sayWait(minutes);
  if (setUp === null) return worked;
  if (setUp.standing) {
    const ready = setUp.minutes === 0 ? "stands ready" : `is ready in ${sayWait(setUp.minutes)}`;
    return plainText(`${worked}, ${setUp.what} ${ready}`);
  }
  return plainText(`${worked} + ${setUp.what} ${sayWait(setUp.minutes)}`);
}

/**
 * What leaving it for the rest of the bench session brings; an empty text where it costs nothing. That it is then finished
 * sooner is told beside what the others pay for that: a gain nobody pays for was a luckier search's, or leaves less slack.
 *
 * @example sayIfLeft(ifLeft, row, speech) // "if left: scuff 5 min for 2 from Tue 12:30, finished Fri 19:10, not Thu 19:02"
 */
export function sayIfLeft(ifLeft: IfLeft, row: Pick<WorkRow, "tags">, speech: Speech): string {
  const { mend, preparation, preparationFrom, shut, finishNow, finishLeft, others } = ifLeft;
  const whom =
    shut.length > 0 && shut.length < row.tags.length ? ` for ${sayTags(shut.map(({ tag }) => tag))}` : "";
  const costs: string[] = [];
  if (mend) {
    const from = shut.length === 0 ? "" : ` from ${sayClock(Math.min(...shut.map(({ at }) => at)), speech)}`;
    costs.push(`only a mend helps${whom}${from}`);
  } else if (preparation !== null) {
    const from = preparationFrom === null ? "" : ` from ${sayClock(preparationFrom, speech)}`;
    costs.push(`${sayPreparation(preparation)}${whom}${from}`);
  }
  const paid = others === null ? [] : sayOthers(others, ifLeft);
  if (finishNow !== null && finishLeft !== null) {
    const finished = (than: string) =>
      `finished ${sayClock(finishLeft, speech)}, ${than} ${sayClock(finishNow, speech)}`;
    if (finishLeft > finishNow) costs.push(finished("not"));
    else if (paid.length > 0 && finishNow - finishLeft >= WORTH_TELLING * MINUTE)
      costs.push(finished("sooner than"));
  }
  costs.push(...paid);
  return costs.length === 0 ? "" : plainText(`if left: ${costs.join(", ")}`);
}

/** Minutes. A delay of others, or a gain, that is shorter is none: a plan found is never that exact. */
const WORTH_TELLING = 60;

/** What it does to the rest of the shop: promises first, then work it makes, then how much later the others are. */
function sayOthers({ amends, broken, delay }: LeftOthers, { mend, preparation }: IfLeft): string[] {
  const said: string[] = [];
  if (broken.length > 0)
    said.push(`${sayTags([...broken].sort((a, b) => a - b))} too late for the day promised`);
  if (amends > 0 && !mend && preparation === null) said.push(`${sayWait(amends)} more of preparation`);
  if (delay >= WORTH_TELLING) said.push(`the others ${sayWait(inHours(delay))} later in all`);
  return said;
}

/** Whole hours where minutes would only seem exact. */
function inHours(minutes: Minutes): Minutes {
  return minutes < 10 * 60 ? minutes : Math.round(minutes / 60) * 60;
}

/** Why a row stands where it stands. `shuts Tue 12:30, before the bench opens again` */
export function sayWhy(why: Why, speech: Speech): string {
  switch (why.because) {
    case "left half-done":
      return "lies half-done";
    case "in the order of finishing":
      return "what is nearest to finished goes first";
    case "due":
      return "it is due";
    case "this one first":
      return "you said this one first";
    case "nothing else to do":
      return "nothing else can be begun now";
    case "aim":
      return "your aim needs one more begun";
    case "shuts tonight":
      return `shuts ${sayClock(why.at, speech)}`;
    case "shuts before the bench opens again":
      return `shuts ${sayClock(why.at, speech)}, before the bench opens again`;
    case "planned":
      return why.at - speech.now < MINUTE
        ? "the plan begins with it"
        : `planned for ${sayClock(why.at, speech)}`;
    case "set-up keeps":
      return plainText(`${why.what} keeps till ${sayClock(why.until, speech)}`);
    case "would be held after":
      return plainText(`once a coat is laid it waits for the ${why.what}`);
    case "cure starts sooner":
      return "the sooner it hangs, the sooner it is dry";
  }
}

/**
 * What is in hand, or the question about a step begun and never said done.
 *
 * @example sayHandRow(row, speech) // "14 first clear in hand since 19:02, usually 8 min"
 * @example sayHandRow(old, speech) // "1 first clear in hand since Tue 20:30: hung Tue 20:38, as usual?"
 */
export function sayHandRow(row: HandRow, speech: Speech): string {
  const since = sayClock(row.since, speech);
  const work = row.part === "preparation" ? `preparation for ${row.step}` : row.step;
  const who = plainText(`${sayTags(row.tags)} ${work}`);
  if (row.left) return `${who} half-done since ${since}`;
  if (row.forgotten !== null) {
    return `${who} in hand since ${since}: hung ${sayClock(row.forgotten.usual, speech)}, as usual?`;
  }
  return `${who} in hand since ${since}, usually ${sayWait(row.usualMinutes)}`;
}

/** The step with its colour; a late window's preparation stands before it. */
function sayWhat({ part, preparation, step, colour }: WorkRow): string {
  const work = colour === null ? step : `${step}, ${colour}`;
  return plainText(part === "step" ? work : preparedFirst(work, preparation));
}

/** The step of a row that is held; what a late window asks for stands before it. `scuff, then first clear` */
export function sayHeldWhat({ step, preparation }: HeldRow): string {
  return plainText(preparation === undefined ? step : preparedFirst(step, preparation));
}

const preparedFirst = (work: string, preparation: Preparation | null): string =>
  `${preparation?.do ?? "prepare"}, then ${work}`;
